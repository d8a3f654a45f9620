using System.Globalization;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Text;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Grammar.Parsing;

/// <summary>Reads the head of an entry: <c>2026-10-04 08:15 check by owner</c>.</summary>
internal static class EntryHeadReader
{
    /// <summary>True when the line starts with three numbers joined by <c>-</c>, <c>/</c> or <c>.</c>, right or wrong as a date.</summary>
    public static bool LooksLikeDate(ReadOnlySpan<char> content)
    {
        if (!Scanners.IsDigit(content[0]))
        {
            return false;
        }

        int length = 1;
        while (length < content.Length && !Scanners.IsBlank(content[length]) && !Scanners.IsSeparator(content[length]))
        {
            length++;
        }

        ReadOnlySpan<char> first = content[..length];
        int joins = 0;
        for (int i = 0; i < first.Length; i++)
        {
            if (first[i] is '-' or '/' or '.')
            {
                joins++;
            }
            else if (!Scanners.IsDigit(first[i]))
            {
                return joins == 2 && first[i] is 'T' or 't' or ':';
            }
        }

        return joins == 2;
    }

    public static LineSyntax Read(NoteVocabulary vocabulary, string text, string ending, int start, int end)
    {
        var tokens = new List<Token>(5);
        var problems = new List<Problem>();
        int at = start;
        TextSpan dateSpan = TakeRun(text, end, ref at);
        if (dateSpan.In(text).IndexOfAny('T', 't') is > 0 and var mark)
        {
            dateSpan = dateSpan with { Length = mark };
            at = dateSpan.End + 1;
        }
        else if (dateSpan.In(text)[^1] == ':')
        {
            dateSpan = dateSpan with { Length = dateSpan.Length - 1 };
        }

        tokens.Add(new Token(TokenKind.Date, dateSpan));
        DateOnly? date = ReadDate(text, dateSpan, problems);

        TimeOnly? time = null;
        bool timed = false;
        string? kind = null;
        string? by = null;
        Scope<FixedWord> kinds = vocabulary.Fixed("entry");
        while (SkipBlanks(text, end, ref at))
        {
            if (!timed && TimeReader.TryTake(text, at, end, out time, out int timeEnd, out Problem? badTime))
            {
                timed = true;
                tokens.Add(new Token(TokenKind.Time, TextSpan.Between(at, timeEnd)));
                at = timeEnd;
                if (badTime is not null)
                {
                    problems.Add(badTime);
                }

                continue;
            }

            TextSpan word = TakeRun(text, end, ref at);
            if (kinds.Find(word.In(text).TrimEnd(':')) is { } known)
            {
                if (kind is not null)
                {
                    problems.Add(new Problem(ProblemRules.SaidTwice, word, $"`{word.In(text)}`: this entry is a {kind} already; one date, one kind"));
                }

                kind ??= known.Word;
                tokens.Add(new Token(TokenKind.EntryKind, word));
            }
            else if (word.In(text).Equals("by", StringComparison.OrdinalIgnoreCase))
            {
                tokens.Add(new Token(TokenKind.Keyword, word));
                if (SkipBlanks(text, end, ref at))
                {
                    at = text[at] == '#' ? at - 1 : at;
                    tokens.Add(new Token(TokenKind.Name, TextSpan.Between(at, end)));
                    by = text[at..end];
                    at = end;
                }
                else
                {
                    problems.Add(new Problem(ProblemRules.Missing, word, "something is missing after `by`; expected who wrote this, such as by technician"));
                }
            }
            else
            {
                tokens.Add(new Token(TokenKind.Unknown, TextSpan.Between(word.Start, end)));
                problems.Add(UnknownKind(text, word, kinds));
                at = end;
            }
        }

        LineReader.AddComment(text, end, tokens);
        var head = new EntryHead(dateSpan, date, time, kind ?? "log", by);
        return new LineSyntax(LineKind.EntryHead, text, ending, [.. tokens], null, head, [.. problems]);
    }

    private static DateOnly? ReadDate(string text, TextSpan span, List<Problem> problems)
    {
        ReadOnlySpan<char> written = span.In(text);
        if (DateOnly.TryParseExact(written, "yyyy-M-d", CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly date) && date.Year >= 1900)
        {
            return date;
        }

        bool iso = written.IndexOf('-') == 4;
        string hint = iso ? "there is no such day; the order is year-month-day" : "dates are written year-month-day, " + OtherReadings(written);
        problems.Add(new Problem(ProblemRules.BadDate, span, $"`{written}` is not a date here: {hint}"));
        return null;
    }

    /// <summary>What a date written another way may mean, never guessed silently.</summary>
    private static string OtherReadings(ReadOnlySpan<char> written)
    {
        string[] formats = ["d/M/yyyy", "M/d/yyyy", "d.M.yyyy", "M.d.yyyy", "d-M-yyyy", "M-d-yyyy", "yyyy/M/d", "yyyy.M.d"];
        var found = new SortedSet<string>(StringComparer.Ordinal);
        foreach (string format in formats)
        {
            if (DateOnly.TryParseExact(written, format, CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly date))
            {
                found.Add(date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture));
            }
        }

        return found.Count == 0 ? "such as 2026-10-04" : "so " + string.Join(" or ", found);
    }

    private static Problem UnknownKind(string text, TextSpan word, Scope<FixedWord> kinds)
    {
        string typed = word.In(text).ToString();
        string? nearest = NearestWord.Find(typed, kinds.Spellings.Append("by"));
        return new Problem(ProblemRules.UnknownWord, word,
            $"`{typed}` is not expected after a date; expected a time, check, log or visit, or by WHO" + (nearest is null ? "" : $"; did you mean `{nearest}`?"),
            nearest);
    }

    private static bool SkipBlanks(string text, int end, ref int at)
    {
        while (at < end && (Scanners.IsBlank(text[at]) || Scanners.IsSeparator(text[at])))
        {
            at++;
        }

        return at < end;
    }

    private static TextSpan TakeRun(string text, int end, ref int at)
    {
        int start = at;
        while (at < end && !Scanners.IsBlank(text[at]) && !Scanners.IsSeparator(text[at]))
        {
            at++;
        }

        return TextSpan.Between(start, at);
    }
}
