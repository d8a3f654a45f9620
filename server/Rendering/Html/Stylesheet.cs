using System.Security.Cryptography;
using System.Text;

namespace HealthNotes.Rendering.Html;

/// <summary>The page's style sheet and its hash: the content security policy allows this one style and nothing else.</summary>
internal static class Stylesheet
{
    /// <summary>The style, exactly as it stands in the page.</summary>
    public static string Text { get; } = Load();

    /// <summary>Its hash, as a content security policy names it.</summary>
    public static string Hash { get; } = "sha256-" + Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(Text)));

    private static string Load()
    {
        using Stream stream = typeof(Stylesheet).Assembly.GetManifestResourceStream("page.css")
            ?? throw new InvalidOperationException("page.css is not embedded");
        using var reader = new StreamReader(stream);
        return "\n" + reader.ReadToEnd().ReplaceLineEndings("\n");
    }
}
