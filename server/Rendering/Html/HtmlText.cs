using System.Text;

namespace HealthNotes.Rendering.Html;

/// <summary>Plain text as HTML.</summary>
internal static class HtmlText
{
    /// <summary>The text with every character that acts in HTML, also inside attributes, written as a reference.</summary>
    public static string Escape(ReadOnlySpan<char> text)
    {
        var html = new StringBuilder(text.Length + 16);
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

        return html.ToString();
    }

    /// <summary>True when some character belongs to a script written from right to left, or is a right-to-left mark.</summary>
    public static bool RunsRightToLeft(ReadOnlySpan<char> text)
    {
        foreach (char c in text)
        {
            if (c is (>= '\u0590' and <= '\u08FF') or '\u200F' or (>= '\uFB1D' and <= '\uFDFF') or (>= '\uFE70' and <= '\uFEFE')
                or '\uD802' or '\uD803' or '\uD83A' or '\uD83B')
            {
                return true;
            }
        }

        return false;
    }
}
