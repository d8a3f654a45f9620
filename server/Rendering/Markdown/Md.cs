using System.Text;

namespace HealthNotes.Rendering.Markdown;

/// <summary>Text as Markdown that shows exactly this text and nothing else. Escapes only where a mark could act, so that the source reads well.</summary>
internal static class Md
{
    /// <summary>First Strong Isolate and its end: what runs right to left inside cannot reorder what is around it.</summary>
    public const char IsolateStart = '\u2068';

    /// <summary>Pop Directional Isolate.</summary>
    public const char IsolateEnd = '\u2069';

    /// <summary>Plain text within a line or a table cell.</summary>
    public static string Text(string text) => Isolated(text, Escaped(text));

    /// <summary>Plain text at the start of a paragraph or list item, where more marks act.</summary>
    public static string Start(string text)
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

    /// <summary>The same in a table cell, where a bar inside code means different things to different readers.</summary>
    public static string CellCode(string text) => text.AsSpan().IndexOfAny('|', '`', '\\') >= 0 ? Text(text) : Code(text);

    /// <summary>A label or a level.</summary>
    public static string Strong(string text) => text.Length == 0 ? "" : $"**{Escaped(text)}**";

    /// <summary>Small print.</summary>
    public static string Small(string text) => text.Length == 0 ? "" : $"*{Text(text)}*";

    /// <summary>A message that may quote the note between backticks; what is not a closed pair of them is plain text.</summary>
    public static string Message(string message)
    {
        string[] pieces = message.Split('`');
        if (pieces.Length % 2 == 0)
        {
            return Text(message);
        }

        var text = new StringBuilder();
        for (int i = 0; i < pieces.Length; i++)
        {
            text.Append(i % 2 == 0 ? Text(pieces[i]) : Code(pieces[i]));
        }

        return text.ToString();
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

    private static string Isolated(string text, string marked) => RunsRightToLeft(text) ? IsolateStart + marked + IsolateEnd : marked;

    /// <summary>True when some character belongs to a script written from right to left, or is a right-to-left mark.</summary>
    private static bool RunsRightToLeft(string text)
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
