namespace HealthNotes.Rendering;

/// <summary>What every file that is made here carries, so that a later run knows its own files and writes over no others.</summary>
public static class PageMark
{
    /// <summary>In the head of an HTML file.</summary>
    public const string Html = "<meta name=\"generator\" content=\"hnote\">";

    /// <summary>At the end of a Markdown file.</summary>
    public const string Markdown = "\n<!-- made by hnote -->\n";
}
