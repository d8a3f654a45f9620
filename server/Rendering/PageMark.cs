namespace HealthNotes.Rendering;

/// <summary>What every file that is made here carries, so that a later run knows its own files and writes over no others.</summary>
public static class PageMark
{
    /// <summary>In the head of an HTML file.</summary>
    public const string Html = "<meta name=\"generator\" content=\"hnote\">";

    /// <summary>At the end of a Markdown file.</summary>
    public const string Markdown = "\n<!-- made by hnote -->\n";

    /// <summary>Behind the end of a PDF, where a comment may stand.</summary>
    public const string Pdf = "\n% made by hnote\n";

    /// <summary>In the first line of plain text.</summary>
    public const string Text = "(made by hnote)";

    /// <summary>The product that a calendar names.</summary>
    public const string Calendar = "-//Health Notes//hnote//EN";

    /// <summary>The first line of a log.</summary>
    public const string Log = "# log of hnote lsp";

    /// <summary>Each of them.</summary>
    public static IReadOnlyList<string> All { get; } = [Html, Markdown, Pdf, Text, "PRODID:" + Calendar, Log];
}
