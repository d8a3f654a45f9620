using System.Text;
using HealthNotes.Rendering.Markdown;

namespace HealthNotes.Rendering.Html;

/// <summary>Plain text as HTML.</summary>
internal static class HtmlText
{
    /// <summary>The text with every character that acts in HTML, also inside attributes, written as a reference.</summary>
    public static string Escape(ReadOnlySpan<char> text)
    {
        var html = new StringBuilder(text.Length + 16);
        Append(html, text);
        return html.ToString();
    }

    /// <summary>The same, with the isolates that <see cref="Md"/> puts around right-to-left text turned into elements.</summary>
    public static string EscapeIsolated(ReadOnlySpan<char> text)
    {
        var html = new StringBuilder(text.Length + 16);
        while (text.IndexOfAny(Md.IsolateStart, Md.IsolateEnd) is >= 0 and int at)
        {
            Append(html, text[..at]);
            html.Append(text[at] == Md.IsolateStart ? "<bdi>" : "</bdi>");
            text = text[(at + 1)..];
        }

        Append(html, text);
        return html.ToString();
    }

    private static void Append(StringBuilder html, ReadOnlySpan<char> text)
    {
        foreach (char c in text)
        {
            _ = c switch
            {
                '&' => html.Append("&amp;"),
                '<' => html.Append("&lt;"),
                '>' => html.Append("&gt;"),
                '"' => html.Append("&quot;"),
                '\'' => html.Append("&#39;"),
                _ => html.Append(c),
            };
        }
    }
}
