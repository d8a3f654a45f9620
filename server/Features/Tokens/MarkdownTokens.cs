using System.Collections.Immutable;
using HealthNotes.Grammar.Syntax;

namespace HealthNotes.Features.Tokens;

/// <summary>
/// The tokens of a line of free text: its mark, and its words with what Markdown makes of them within one line: emphasis,
/// strong, code, links. Colouring only; the page reads Markdown in full.
/// </summary>
internal static class MarkdownTokens
{
    /// <summary>Longer runs of one mark mean nothing; looking for their ends would only cost time.</summary>
    private const int LongestMark = 3;

    /// <summary>Adds the tokens of a line.</summary>
    public static void Add(LineSyntax line, int index, ImmutableArray<SemanticToken>.Builder tokens)
    {
        int mark = line.Indent;
        tokens.Add(new SemanticToken(index, mark, 1, TokenType.Operator, TokenModifiers.None));
        ReadOnlySpan<char> text = line.Text;
        int plain = mark + 1;
        int at = plain;

        // Where nothing closed a mark once, nothing further on does: each kind is looked for in vain only once.
        var inVain = new HashSet<(char Mark, int Count)>();
        while (at < text.Length)
        {
            if (text[at] == '\\')
            {
                at += 2;
                continue;
            }

            (int end, TokenModifiers modifiers) = SpanAt(text, at, mark + 1, inVain, out int skip);
            if (end > at)
            {
                AddWords(text, plain, at, index, TokenModifiers.None, tokens);
                AddWords(text, at, end, index, modifiers, tokens);
                at = plain = end;
            }
            else
            {
                at += skip;
            }
        }

        AddWords(text, plain, text.Length, index, TokenModifiers.None, tokens);
    }

    private static void AddWords(ReadOnlySpan<char> text, int start, int end, int line, TokenModifiers modifiers, ImmutableArray<SemanticToken>.Builder tokens)
    {
        ReadOnlySpan<char> words = text[start..end].TrimEnd();
        int length = words.TrimStart().Length;
        if (length > 0)
        {
            tokens.Add(new SemanticToken(line, start + words.Length - length, length, TokenType.String, modifiers));
        }
    }

    /// <summary>Where the span that starts here ends, and what it is; nothing where none does. <paramref name="skip"/> is how far to go on then.</summary>
    private static (int End, TokenModifiers Modifiers) SpanAt(ReadOnlySpan<char> text, int at, int first, HashSet<(char Mark, int Count)> inVain, out int skip)
    {
        skip = 1;
        switch (text[at])
        {
            case '[':
                return Delimited(text, at, "](", ')', inVain);
            case '<' when text[at..].StartsWith("<http", StringComparison.OrdinalIgnoreCase):
                return Delimited(text, at, "://", '>', inVain);
            case '`' or '*' or '_':
                break;
            default:
                return default;
        }

        char mark = text[at];
        int count = RunAt(text, at);
        skip = count;
        bool opens = at + count < text.Length
            && (mark == '`' || !char.IsWhiteSpace(text[at + count]))
            && !(mark == '_' && at > first && char.IsLetterOrDigit(text[at - 1]));
        if (!opens || count > LongestMark || inVain.Contains((mark, count)))
        {
            return default;
        }

        for (int close = at + count; close < text.Length;)
        {
            if (text[close] == '\\' && mark != '`')
            {
                close += 2;
                continue;
            }

            int run = text[close] == mark ? RunAt(text, close) : 0;
            if (run == count && Closes(text, close, mark, count))
            {
                return (close + run, mark == '`' ? TokenModifiers.Code : count switch
                {
                    1 => TokenModifiers.Emphasis,
                    2 => TokenModifiers.Strong,
                    _ => TokenModifiers.Emphasis | TokenModifiers.Strong,
                });
            }

            close += Math.Max(1, run);
        }

        inVain.Add((mark, count));
        return default;
    }

    private static bool Closes(ReadOnlySpan<char> text, int at, char mark, int count) =>
        mark == '`' || (!char.IsWhiteSpace(text[at - 1]) && !(mark == '_' && at + count < text.Length && char.IsLetterOrDigit(text[at + count])));

    private static int RunAt(ReadOnlySpan<char> text, int at)
    {
        int run = text[at..].IndexOfAnyExcept(text[at]);
        return run < 0 ? text.Length - at : run;
    }

    /// <summary>A link: <c>[words](address)</c> or <c>&lt;https://…&gt;</c>.</summary>
    private static (int End, TokenModifiers Modifiers) Delimited(ReadOnlySpan<char> text, int at, string middle, char end, HashSet<(char Mark, int Count)> inVain)
    {
        if (inVain.Contains((end, 0)))
        {
            return default;
        }

        int half = text[at..].IndexOf(middle, StringComparison.Ordinal);
        int close = half < 0 ? -1 : text[(at + half)..].IndexOf(end);
        if (close < 0)
        {
            inVain.Add((end, 0));
            return default;
        }

        return (at + half + close + 1, TokenModifiers.Link);
    }
}
