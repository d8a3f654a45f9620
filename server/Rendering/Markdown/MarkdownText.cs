using System.Text;
using HealthNotes.Rendering.Html;

namespace HealthNotes.Rendering.Markdown;

/// <summary>Text as Markdown that shows exactly this text and nothing else. Escapes only where a mark could act, so that the source reads well.</summary>
internal static class MarkdownText
{
    /// <summary>First Strong Isolate and its end: what runs right to left inside cannot reorder what is around it.</summary>
    private const char IsolateStart = '\u2068';

    /// <summary>Pop Directional Isolate.</summary>
    private const char IsolateEnd = '\u2069';

    /// <summary>Plain text within a line or a table cell.</summary>
    public static string Of(string text) => Isolated(text, Escaped(text));

    /// <summary>Plain text at the start of a paragraph or list item, where more marks act.</summary>
    public static string AtStart(string text)
    {
        string escaped = Escaped(text.TrimStart());
        int digits = 0;
        while (digits < escaped.Length && char.IsAsciiDigit(escaped[digits]))
        {
            digits++;
        }

        bool numbered = digits > 0 && digits < escaped.Length && escaped[digits] is '.' or ')';
        bool marked = escaped.Length > 0 && escaped[0] is '#' or '+' or '-' or '=' or '~' or ':';
        return Isolated(text, numbered ? escaped.Insert(digits, "\\") : marked ? "\\" + escaped : escaped);
    }

    /// <summary>A line of the note as it was written.</summary>
    public static string Code(string text)
    {
        if (text.Length == 0)
        {
            return "";
        }

        int run = LongestRun(text, '`');
        string fence = new('`', run + 1);
        string pad = text[0] is '`' or ' ' || text[^1] is '`' or ' ' ? " " : "";
        return Isolated(text, fence + pad + text + pad + fence);
    }

    /// <summary>The fence of a block of code that holds this text.</summary>
    public static string Fence(string text) => new('`', Math.Max(3, LongestRun(text, '`') + 1));

    /// <summary>Free text keeps its own marks, but a tag in it stays text for readers that would run it.</summary>
    public static string Inert(string line)
    {
        if (!line.Contains('<', StringComparison.Ordinal))
        {
            return line;
        }

        var inert = new StringBuilder(line.Length + 8);
        bool escaped = false;
        for (int i = 0; i < line.Length; i++)
        {
            bool tag = line[i] == '<' && i + 1 < line.Length && (char.IsAsciiLetter(line[i + 1]) || line[i + 1] is '/' or '!' or '?');
            inert.Append(tag && !escaped ? "\\" : "").Append(line[i]);
            escaped = line[i] == '\\' && !escaped;
        }

        return inert.ToString();
    }

    private static string Escaped(string text)
    {
        var escaped = new StringBuilder(text.Length + 8);
        for (int i = 0; i < text.Length; i++)
        {
            if (Acts(text, i))
            {
                escaped.Append('\\');
            }

            escaped.Append(text[i]);
        }

        return escaped.ToString();
    }

    private static bool Acts(string text, int at) => text[at] switch
    {
        '\\' or '`' or '*' or '[' or ']' or '|' => true,
        '<' => at + 1 < text.Length && text[at + 1] is not (' ' or (>= '0' and <= '9')),
        '>' => at == 0,
        '_' => at == 0 || at == text.Length - 1 || !char.IsLetterOrDigit(text[at - 1]) || !char.IsLetterOrDigit(text[at + 1]),
        '#' => at == 0 || text[at - 1] == ' ',
        '&' => at + 1 < text.Length && (char.IsAsciiLetterOrDigit(text[at + 1]) || text[at + 1] == '#'),
        _ => false,
    };

    private static string Isolated(string text, string marked) => HtmlText.RunsRightToLeft(text) ? IsolateStart + marked + IsolateEnd : marked;

    private static int LongestRun(string text, char of)
    {
        int longest = 0;
        int run = 0;
        foreach (char c in text)
        {
            run = c == of ? run + 1 : 0;
            longest = Math.Max(longest, run);
        }

        return longest;
    }
}
