using System.Security.Cryptography;
using System.Text;

namespace HealthNotes.Rendering.Html;

/// <summary>A style sheet (or the one script) and its hash: the content security policy of a page allows this one and nothing else.</summary>
/// <param name="Text">Its text, exactly as it stands in the page.</param>
internal sealed record Stylesheet(string Text)
{
    /// <summary>The style of the visit page.</summary>
    public static Stylesheet VisitPage { get; } = Of("page.css", "charts.css", "day-grid.css", "body-map.css");

    /// <summary>The style of the visit page on a paper, with a line at the foot of each sheet; a null paper leaves it to the printer.</summary>
    public static Stylesheet VisitPageOn(Paper? paper, string footer) => new(
        $"{VisitPage.Text}\n@page {{ {(paper is { } size ? $"size: {size}; " : "")}@bottom-left {{ content: \"{Quoted(footer)}\"; }} @bottom-right {{ content: counter(page) \" / \" counter(pages); }} }}\n");

    /// <summary>Text inside a string of a style sheet: all but letters, digits and blanks by their numbers, so that nothing in it can act.</summary>
    private static string Quoted(string text) => string.Concat(text.EnumerateRunes().Select(rune => rune.Value < 128 && (char.IsAsciiLetterOrDigit((char)rune.Value) || rune.Value == ' ') ? rune.ToString() : $"\\{rune.Value:X6}"));

    /// <summary>Its hash, as a content security policy names it.</summary>
    public string Hash { get; } = "sha256-" + Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(Text)));

    /// <summary>The style of these embedded files, one after the other.</summary>
    public static Stylesheet Of(params ReadOnlySpan<string> files)
    {
        var text = new StringBuilder("\n");
        foreach (string file in files)
        {
            using Stream stream = typeof(Stylesheet).Assembly.GetManifestResourceStream(file)
                ?? throw new InvalidOperationException($"{file} is not embedded");
            using var reader = new StreamReader(stream);
            text.Append(reader.ReadToEnd().ReplaceLineEndings("\n"));
        }

        return new Stylesheet(text.ToString());
    }
}
