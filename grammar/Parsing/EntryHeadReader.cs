using System.Globalization;
using HealthNotes.Grammar.Scanning;
using HealthNotes.Grammar.Slots;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Text;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Grammar.Parsing;

/// <summary>Reads the head of an entry: <c>2026-10-04 08:15 check by owner</c>.</summary>
internal static class EntryHeadReader
{
    private const int MonthDayYear = 3;

    /// <summary>Four figures below it are a time of day: <c>27 Mar 1900</c>.</summary>
    private const int EarliestEntry = 1980;

    /// <summary>A year that has every day.</summary>
    private const int LeapYear = 2000;

    /// <summary>True when the line reads like the head of an entry: three numbers joined by <c>-</c>, <c>/</c> or <c>.</c>, a month in words, today.</summary>
    public static bool LooksLikeHead(NoteVocabulary vocabulary, ReadOnlySpan<char> content)
    {
        int length = RunLength(content);
        ReadOnlySpan<char> first = content[..length];
        if (!Scanners.IsDigit(content[0]))
        {
            if (Dates.Month(first.TrimEnd(',')) is null && !IsWeekday(first) && vocabulary.Fixed("day").Find(first.TrimEnd(':')) is null)
            {
                return false;
            }

            if (IsDateInWords(vocabulary, content))
            {
                return true;
            }
        }

        if (vocabulary.Fixed("day").Find(first.TrimEnd(':')) is not null)
        {
            return OnlyHeadWords(vocabulary, content[length..]);
        }

        if (!Scanners.IsDigit(content[0]))
        {
            return Dates.Month(first.TrimEnd(',')) is not null && OnlyHeadWords(vocabulary, content[length..]);
        }

        int joins = 0;
        for (int i = 0; i < first.Length; i++)
        {
            if (first[i] is '-' or '/' or '.')
            {
                joins++;
            }
            else if (!Scanners.IsDigit(first[i]))
            {
                return (joins == 2 && first[i] is 'T' or 't' or ':') || IsDateInWords(vocabulary, content);
            }
        }

        return joins == 2 || IsDateInWords(vocabulary, content) || (joins == 1 && first.Contains('/') && DayAndMonth(first) is not null && OnlyHeadWords(vocabulary, content[length..]));
    }

    /// <summary>True when nothing but numbers, times and the words of a head stand in the text.</summary>
    private static bool OnlyHeadWords(NoteVocabulary vocabulary, ReadOnlySpan<char> text)
    {
        foreach (System.Range range in text.SplitAny(' ', ',', ':', '-', '\t'))
        {
            ReadOnlySpan<char> word = text[range];
            if (word.Equals("by", StringComparison.OrdinalIgnoreCase))
            {
                // who wrote it ends the head
                return true;
            }

            if (word.Length > 0 && !Scanners.IsDigit(word[0]) && vocabulary.Fixed("entry").Find(word) is null && vocabulary.Fixed("day").Find(word) is null)
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>True for a date in words; without its year only where nothing but the words of a head stands behind it.</summary>
    private static bool IsDateInWords(NoteVocabulary vocabulary, ReadOnlySpan<char> content) =>
        DateInWords(content) is { } date && (date.Day is not null || OnlyHeadWords(vocabulary, content[date.Length..])
            || content[date.Length..].TrimStart() is var behind && behind.IndexOf(' ') is > 0 and var word && vocabulary.Fixed("entry").Find(behind[..word]) is not null);

    /// <summary><c>Nov 22 2026</c>, <c>22 Nov 2026</c>, <c>Sunday 22nd November, 2026</c>, <c>3 nov</c>: the day, null without its year, and how long its text is.</summary>
    private static (DateOnly? Day, (int Month, int Day) NoYear, int Length)? DateInWords(ReadOnlySpan<char> content)
    {
        int end = 0;
        int? month = null;
        int? day = null;
        int at = 0;
        for (int words = 0; words < MonthDayYear + 1 && at < content.Length; words++)
        {
            int length = RunLength(content[at..]);
            ReadOnlySpan<char> word = content.Slice(at, length).TrimEnd(".:");
            if (word.IndexOfAnyExceptInRange('0', '9') is > 0 and var letter && Dates.Month(word[letter..]) is not null)
            {
                // "3nov" is two words
                word = word[..letter];
                length = letter;
            }

            int digits = word.Length - word.TrimStart("0123456789").Length;
            if (digits == 4 && word.Length == 4 && month is { } m && day is { } d)
            {
                int year = int.Parse(word, CultureInfo.InvariantCulture);
                if (year < EarliestEntry)
                {
                    break;
                }

                return Dates.Exists(year, m, d) ? (new DateOnly(year, m, d), (m, d), at + length) : null;
            }

            if (digits is 1 or 2 && day is null && word[digits..] is "" or "st" or "nd" or "rd" or "th")
            {
                day = int.Parse(word[..digits], CultureInfo.InvariantCulture);
            }
            else if (month is null && Dates.Month(word) is { } named)
            {
                month = named;
            }
            else if (words > 0 || !IsWeekday(word))
            {
                break;
            }

            at += length;
            end = at;
            while (at < content.Length && (Scanners.IsBlank(content[at]) || Scanners.IsSeparator(content[at])))
            {
                at++;
            }
        }

        return month is { } name && day is { } number && Dates.Exists(LeapYear, name, number) ? (null, (name, number), end) : null;
    }

    private static bool IsWeekday(ReadOnlySpan<char> word)
    {
        if (word.Length < 3 || (word[0] | ' ') is not ('m' or 't' or 'w' or 'f' or 's'))
        {
            return false;
        }

        foreach (string name in CultureInfo.InvariantCulture.DateTimeFormat.DayNames)
        {
            if (word.Equals(name, StringComparison.OrdinalIgnoreCase) || word.Equals(name.AsSpan(0, 3), StringComparison.OrdinalIgnoreCase))
            {
                return true;
            }
        }

        return false;
    }

    private static int RunLength(ReadOnlySpan<char> content)
    {
        int length = 1;
        while (length < content.Length && !Scanners.IsBlank(content[length]) && !Scanners.IsSeparator(content[length]))
        {
            length++;
        }

        return length;
    }

    public static LineSyntax Read(NoteVocabulary vocabulary, string text, string ending, int start, int end)
    {
        var tokens = new List<Token>(5);
        var problems = new List<Problem>();
        int at = start;
        DateOnly? written = null;
        (int Month, int Day)? noYear = null;
        TextSpan dateSpan;
        if (DateInWords(text.AsSpan(start, end - start)) is { } inWords)
        {
            (written, noYear, at) = (inWords.Day, inWords.Day is null ? inWords.NoYear : null, start + inWords.Length);
            dateSpan = TextSpan.Between(start, at);
        }
        else
        {
            dateSpan = TakeRun(text, end, ref at);
            if (dateSpan.In(text).IndexOfAny('T', 't') is > 0 and var mark && Scanners.IsDigit(text[start]))
            {
                dateSpan = dateSpan with { Length = mark };
                at = dateSpan.End + 1;
            }
            else if (dateSpan.In(text)[^1] == ':')
            {
                dateSpan = dateSpan with { Length = dateSpan.Length - 1 };
            }
        }

        noYear ??= DayAndMonth(dateSpan.In(text));
        tokens.Add(new Token(TokenKind.Date, dateSpan));
        DateOnly? date = written ?? (noYear is null ? ReadDate(text, dateSpan, problems) : null);

        TimeOnly? time = null;
        bool timed = false;
        string? kind = null;
        string? by = null;
        string? partOfDay = null;
        Scope<FixedWord> kinds = vocabulary.Fixed("entry");
        while (SkipBlanks(text, end, ref at))
        {
            Problem? badTime = null;
            if (!timed && (TimeReader.TryTake(text, at, end, out time, out int timeEnd, out badTime) || TimeReader.TryTakeBare(text, at, end, out time, out timeEnd, last: true)))
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

            int before = at;
            if (!timed && ShortTime(text, end, ref at) is { } brief)
            {
                (time, timed) = (brief, true);
                tokens.Add(new Token(TokenKind.Time, TextSpan.Between(before, at)));
                continue;
            }

            TextSpan word = TakeRun(text, end, ref at);
            int two = at;
            if (SkipBlanks(text, end, ref two) && TakeRun(text, end, ref two) is var second && kinds.Find($"{word.In(text)} {second.In(text)}") is not null)
            {
                (word, at) = (TextSpan.Between(word.Start, second.End), two);
            }

            ReadOnlySpan<char> plain = word.In(text).TrimEnd(':');
            if (plain is "-" or "–" or "—" || plain is "to" or "at" || vocabulary.Small.Find(plain) is not null)
            {
                tokens.Add(new Token(TokenKind.Filler, word));
            }
            else if (vocabulary.Fixed("day").Find(plain) is { } dayWord && (date is not null || noYear is not null))
            {
                tokens.Add(new Token(TokenKind.Filler, word));
                partOfDay = dayWord.Word == "morning" ? plain.ToString() : partOfDay;
                if (date is not null && IsWeekday(plain) && !date.Value.DayOfWeek.ToString().StartsWith(dayWord.Word, StringComparison.OrdinalIgnoreCase))
                {
                    problems.Add(new Problem(ProblemRules.BadDate, word, $"{date.Value.ToString("d MMM yyyy", CultureInfo.InvariantCulture)} is a {date.Value.DayOfWeek}, not a {plain}."));
                }
            }
            else if (kinds.Find(plain) is { } known)
            {
                if (kind is not null && kind != known.Word)
                {
                    problems.Add(new Problem(ProblemRules.SaidTwice, word, $"`{word.In(text)}`: this entry is a {kind} already. Write one kind."));
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
                    problems.Add(new Problem(ProblemRules.Missing, word, "Something is missing behind `by`: who wrote this, such as by technician"));
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
        var head = new EntryHead(dateSpan, date, time, kind ?? "log", by) { NoYear = noYear, PartOfDay = partOfDay };
        return new LineSyntax(LineKind.EntryHead, text, ending, [.. tokens], [], head, problems.Count == 0 ? [] : [problems[0]]);
    }

    /// <summary><c>21.12.</c>, as it is written where the day comes first, and <c>9/20</c>, where only one of them can be the day; null for all else.</summary>
    private static (int Month, int Day)? DayAndMonth(ReadOnlySpan<char> written)
    {
        if (written.IndexOf('/') is (1 or 2) and var slash && int.TryParse(written[..slash], NumberStyles.None, CultureInfo.InvariantCulture, out int one) && int.TryParse(written[(slash + 1)..], NumberStyles.None, CultureInfo.InvariantCulture, out int two))
        {
            return (Dates.Exists(LeapYear, one, two), Dates.Exists(LeapYear, two, one)) switch { (true, false) => (one, two), (false, true) => (two, one), _ => null };
        }

        int dot = written.IndexOf('.');
        return dot is 1 or 2 && written.Length > dot + 2 && written[^1] == '.' && int.TryParse(written[..dot], NumberStyles.None, CultureInfo.InvariantCulture, out int day)
            && int.TryParse(written[(dot + 1)..^1], NumberStyles.None, CultureInfo.InvariantCulture, out int month) && Dates.Exists(LeapYear, month, day) ? (month, day) : null;
    }

    private static DateOnly? ReadDate(string text, TextSpan span, List<Problem> problems)
    {
        ReadOnlySpan<char> written = span.In(text);
        if (DateOnly.TryParseExact(written, "yyyy-M-d", CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly date) && date.Year >= 1900)
        {
            return date;
        }

        bool day = char.IsLetter(written[0]);
        if (!day && written.IndexOf('-') != 4 && Readings(written) is [var only])
        {
            return only;
        }

        bool iso = written.IndexOf('-') == 4;
        string hint = day ? "Write the date itself, such as 2026-10-04, so that it stays true."
            : iso ? "There is no such day. The order is year-month-day."
            : "Write year-month-day, " + (Readings(written) is { Count: > 0 } found ? "so " + string.Join(" or ", found.Select(one => one.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture))) : "such as 2026-10-04") + ".";
        problems.Add(new Problem(ProblemRules.BadDate, span, $"`{written}` is not a date here. {hint}"));
        return null;
    }

    /// <summary>The days that a date written another way may mean: one where a dot or a number above 12 settles it, else two.</summary>
    private static List<DateOnly> Readings(ReadOnlySpan<char> written) => [.. Dates.Days(written).Select(day => new DateOnly(day.Year, day.Month, day.Day)).Order()];

    /// <summary><c>9am</c>, <c>8:15 pm</c>.</summary>
    private static TimeOnly? ShortTime(string text, int end, ref int at)
    {
        int from = at;
        if (!Scanners.IsDigit(text[at]))
        {
            return null;
        }

        TextSpan run = TakeRun(text, end, ref at);
        run = TextSpan.Between(from, TimeReader.EndOfHalf(text, run.End, end));
        TimeOnly? time = TimeReader.Read(run.In(text));
        at = time is null ? from : run.End;
        return time;
    }

    private static Problem UnknownKind(string text, TextSpan word, Scope<FixedWord> kinds)
    {
        string typed = word.In(text).ToString();
        string? nearest = NearestWord.Find(typed, kinds.Spellings.Append("by"));
        return new Problem(ProblemRules.UnknownWord, word,
            $"`{typed}` does not go with a date. Write a time, check, log or visit, or by and who wrote it." + (nearest is null ? " What happened goes on the lines below." : $" Did you mean `{nearest}`?"),
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
