using System.Security.Cryptography;
using System.Text;

namespace HealthNotes.Rendering.Html;

/// <summary>A style sheet and its hash: the content security policy of a page allows this one style and nothing else.</summary>
/// <param name="Text">The style, exactly as it stands in the page.</param>
internal sealed record Stylesheet(string Text)
{
    /// <summary>The style of the visit page.</summary>
    public static Stylesheet VisitPage { get; } = Of("page.css", "charts.css", "day-grid.css", "body-map.css");

    /// <summary>The style of the visit page on a paper; null leaves it to the printer.</summary>
    public static Stylesheet VisitPageOn(Paper? paper) => paper is { } size ? new($"{VisitPage.Text}\n@page {{ size: {size}; }}\n") : VisitPage;

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
