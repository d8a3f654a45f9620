using System.Text;

namespace HealthNotes.Features.Hover;

/// <summary>Markdown of a hover: what comes from the note is escaped, so that it is shown and never acted upon.</summary>
internal static class Md
{
    private const string Special = "\\`*_{}[]<>()#+!|~&@:$";
    private const int Longest = 200;

    /// <summary>Text of the note, cut where it is very long.</summary>
    public static string Escape(string text)
    {
        var escaped = new StringBuilder(text.Length + 8);
        foreach (Rune rune in text.EnumerateRunes())
        {
            if (escaped.Length >= Longest)
            {
                return escaped.Append('…').ToString();
            }

            if (Rune.IsControl(rune) || Rune.GetUnicodeCategory(rune) is System.Globalization.UnicodeCategory.Format)
            {
                escaped.Append(' ');
                continue;
            }

            // a dot or a colon could make a link of what was only text
            if (rune.IsAscii && (Special.Contains((char)rune.Value) || rune.Value == '.'))
            {
                escaped.Append('\\');
            }

            escaped.Append(rune.ToString());
        }

        return escaped.ToString();
    }

    /// <summary>A sentence of a table, without its last full stop.</summary>
    public static string Sentence(string text) => text.TrimEnd('.', ' ') + ".";

    /// <summary>Where something comes from.</summary>
    public static string Source(string source) => source.Length == 0 ? "" : $" *Source: {source.TrimEnd('.')}.*";

    /// <summary>Paragraphs; empty ones are left out.</summary>
    public static string Join(IEnumerable<string> paragraphs) => string.Join("\n\n", paragraphs.Where(paragraph => paragraph.Length > 0));
}
