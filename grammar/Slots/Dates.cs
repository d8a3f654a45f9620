using System.Globalization;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Scanning;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Text;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Grammar.Slots;

/// <summary>Dates inside a line: a day, a month or a year, in figures or with the month in words.</summary>
internal static class Dates
{
    private const int Century = 2000;
    private const int EarliestYear = 1900;
    private const int LatestYear = 2199;
    private static readonly string[] Months = CultureInfo.InvariantCulture.DateTimeFormat.MonthNames;

    /// <summary>True where a date starts, right or wrong as a day: in figures, or with the month in words.</summary>
    public static bool Starts(Cursor at, int index, bool yearless = false)
    {
        // 25/10 pipettes are an amount
        bool unit = at.IsWord(index + 1) && at.Vocabulary.Units.Find(at.TextAt(index + 1)) is not null;
        return InWords(at, index, yearless, out _) is not null
            || (index < at.Parts.Count && at.Parts[index] is NumberPart part && !Numbers.UnitFollows(at, part, index) && (IsIso(at, part) || InFigures(at, part, yearless && !unit) is { Count: 1 }));
    }

    /// <summary>Reports a day in figures that can be read two ways (<c>4/10/2026</c>) or is not in the calendar (<c>40/10/2026</c>); false for anything else.</summary>
    public static bool Refuse(Cursor at, NumberPart part) => InFigures(at, part, yearless: false) is { Count: not 1 and var count }
        && at.Refuse(part.Span, ProblemRules.BadDate, $"`{at.TextOf(part)}` {(count == 0 ? "is not in the calendar" : "can be read two ways")}. Write year-month-day, such as 2026-10-20.");

    /// <summary>Takes the date at the cursor, which <see cref="Starts"/> there; null, after a report, where the calendar has none.</summary>
    public static PartialDate? Take(Cursor at, bool yearless = false)
    {
        if (InWords(at, at.At, yearless, out int count) is { } written)
        {
            at.Mark(TokenKind.Date, written.Span);
            at.At += count;
            return written;
        }

        var part = (NumberPart)at.Part;
        at.At++;
        (int Year, int? Month, int? Day) date = IsIso(at, part)
            ? (Whole(at, part.First.Digits), part.Second.Exists ? Whole(at, part.Second.Digits) : null, part.Third.Exists ? Whole(at, part.Third.Digits) : null)
            : InFigures(at, part, yearless)![0];
        if (Exists(date.Year, date.Month, date.Day))
        {
            at.Mark(TokenKind.Date, part.Span);
            return new PartialDate(part.Span, date.Year, date.Month, date.Day, at.BoundOf(part) == Bound.About);
        }

        at.Mark(TokenKind.Unknown, part.Span);
        at.Report(new Problem(ProblemRules.BadDate, part.Span, $"`{part.Span.In(at.Line)}` is not in the calendar. Write year-month-day, such as 2026-10-20."));
        return null;
    }

    /// <summary>
    /// The days that figures in another order than year-month-day can mean. With dots the day comes first: no country that writes dots
    /// puts the month there (Unicode CLDR, short date formats). With a slash or a hyphen only a number above 12 settles it. Two figures
    /// of a year are of this century: no pet is older.
    /// </summary>
    public static List<(int Year, int Month, int Day)> Days(ReadOnlySpan<char> written)
    {
        List<(int Year, int Month, int Day)> found = [];
        if (written.IndexOfAny("./-") is not (> 0 and var first) || written[(first + 1)..].IndexOf(written[first]) is not (> 0 and var next))
        {
            return found;
        }

        char mark = written[first];
        ReadOnlySpan<char> last = written[(first + next + 2)..];
        if (!Figures(written[..first], out int one) || !Figures(written.Slice(first + 1, next), out int two) || !Figures(last, out int three))
        {
            return found;
        }

        if (first == 4)
        {
            Add(found, one, two, three);
        }
        else if (first <= 2 && last.Length is 2 or 4)
        {
            int year = last.Length == 2 ? Century + three : three;
            Add(found, year, two, one);
            if (mark != '.')
            {
                Add(found, year, one, two);
            }
        }

        return found;
    }

    /// <summary>True for text that starts with a day without its year: <c>22 Oct missed …</c>, <c>Oct 22: …</c>.</summary>
    public static bool StartsWithDay(ReadOnlySpan<char> text)
    {
        Span<System.Range> words = stackalloc System.Range[3];
        if (text.SplitAny(words, " :,", StringSplitOptions.RemoveEmptyEntries) < 2)
        {
            return false;
        }

        ReadOnlySpan<char> one = text[words[0]];
        ReadOnlySpan<char> two = text[words[1]];
        return Month(one) is null ? Month(two) is not null && IsDay(one) : IsDay(two);
    }

    private static bool IsDay(ReadOnlySpan<char> word)
    {
        int digits = word.IndexOfAnyExceptInRange('0', '9');
        return (digits < 0 ? word.Length : digits) is 1 or 2 && (digits < 0 || word[digits..] is "st" or "nd" or "rd" or "th");
    }

    private static void Add(List<(int Year, int Month, int Day)> found, int year, int month, int day)
    {
        if (Exists(year, month, day) && !found.Contains((year, month, day)))
        {
            found.Add((year, month, day));
        }
    }

    private static bool Figures(ReadOnlySpan<char> text, out int number) => int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out number);

    /// <summary>True for <c>2026-10-20</c>, <c>2017-03</c>, <c>2017</c> and about one of them, right or wrong as days.</summary>
    private static bool IsIso(Cursor at, NumberPart part)
    {
        ReadOnlySpan<char> year = part.First.Digits.In(at.Line);
        return IsBare(at, part) && year.Length == 4 && year.IndexOfAnyExceptInRange('0', '9') < 0
            && (!part.Second.Exists || (part.Second.Sign(at.Line) == '-' && part.Second.Digits.Length <= 2))
            && (!part.Third.Exists || (part.Third.Sign(at.Line) == '-' && part.Third.Digits.Length <= 2));
    }

    private static bool IsBare(Cursor at, NumberPart part) =>
        part.First.Unit.Length + part.Second.Unit.Length + part.Third.Unit.Length == 0 && at.BoundOf(part) is Bound.Exact or Bound.About;

    /// <summary>The dates that other figures can mean: <c>20.10.2026</c>, <c>10/20/2026</c>, a month (<c>05.2013</c>), a day without its year (<c>4/27</c>); null for what has not their shape.</summary>
    private static List<(int Year, int? Month, int? Day)>? InFigures(Cursor at, NumberPart part, bool yearless)
    {
        ReadOnlySpan<char> text = at.Line.AsSpan(part.First.Digits.Start, part.Span.End - part.First.Digits.Start);
        if (!IsBare(at, part) || part.First.Digits.Length > 7)
        {
            return null;
        }

        if (part.Third.Exists)
        {
            return part.Second.Sign(at.Line) is '/' or '-' or '.' && part.Third.Digits.Length is 2 or 4 && part.First.Digits.Length <= 2
                ? Days(text).ConvertAll(day => (day.Year, (int?)day.Month, (int?)day.Day)) : null;
        }

        int mark = text.IndexOfAny('.', '/');
        if (mark is not (1 or 2) || !Figures(text[..mark], out int one) || !Figures(text[(mark + 1)..], out int two))
        {
            return null;
        }

        if (text.Length - mark == 5)
        {
            return Exists(two, one, null) ? [(two, one, null)] : [];
        }

        bool dotted = text[mark] == '.' && part.Span.End < at.Line.Length && at.Line[part.Span.End] == '.';
        if (!yearless || !(text[mark] == '/' || dotted) || text.Length - mark > 3)
        {
            return null;
        }

        List<(int Year, int Month, int Day)> days = [];
        Add(days, PartialDate.NoYear, two, one);
        if (!dotted)
        {
            Add(days, PartialDate.NoYear, one, two);
        }

        return days.ConvertAll(day => (day.Year, (int?)day.Month, (int?)day.Day));
    }

    /// <summary><c>June 2016</c>, <c>3 June 2016</c>, <c>june 3, 2016</c>: the month in words, and a year unless it may be a day without one.</summary>
    private static PartialDate? InWords(Cursor at, int index, bool yearless, out int count)
    {
        count = 0;
        int first = index;
        int? day = DayAt(at, index);
        index += day is null ? 0 : 1;
        if (!at.IsWord(index) || Month(at.TextAt(index)) is not { } month)
        {
            return null;
        }

        index++;
        if (day is null && DayAt(at, index) is { } behind)
        {
            day = behind;
            index++;
        }

        if (index < at.Parts.Count && at.Parts[index] is NumberPart { BoundSpan.Length: 0, Second.Exists: false, First.Unit.Length: 0 } last
            && last.First.Digits.Length == 4 && Exists(Whole(at, last.First.Digits), month, day))
        {
            count = index + 1 - first;
            return new PartialDate(at.SpanOf(first, count), Whole(at, last.First.Digits), month, day, IsAbout(at, first));
        }

        if (yearless && day is null && at.Word.Kind == WordKind.Task && at.Word.Has(SlotKind.Schedule) && index == first + 1 && (index == at.Parts.Count || at.StartsSegment(index)))
        {
            // "due January"
            count = 1;
            return new PartialDate(at.SpanOf(first, 1), PartialDate.NoYear, month, null, false);
        }

        if (!yearless || day is null || !Exists(PartialDate.NoYear, month, day) || (at.IsWord(index) && at.Vocabulary.Units.Find(at.TextAt(index)) is not null))
        {
            return null;
        }

        count = index - first;
        return new PartialDate(at.SpanOf(first, count), PartialDate.NoYear, month, day, IsAbout(at, first));
    }

    /// <summary>The month that is named so, in full or by its first three letters.</summary>
    public static int? Month(ReadOnlySpan<char> word)
    {
        ReadOnlySpan<char> bare = word.TrimEnd('.');
        if (bare.Length < 3 || bare[0] is not ('J' or 'F' or 'M' or 'A' or 'S' or 'O' or 'N' or 'D' or 'j' or 'f' or 'm' or 'a' or 's' or 'o' or 'n' or 'd'))
        {
            return null;
        }

        string[] names = Months;
        for (int month = 0; month < 12; month++)
        {
            if ((names[month][0] | ' ') != (bare[0] | ' '))
            {
                continue;
            }

            if (bare.Equals(names[month], StringComparison.OrdinalIgnoreCase) || bare.Equals(names[month].AsSpan(0, 3), StringComparison.OrdinalIgnoreCase)
                || (month == 8 && bare.Equals("sept", StringComparison.OrdinalIgnoreCase)))
            {
                return month + 1;
            }
        }

        return null;
    }

    public static bool Exists(int year, int? month, int? day) => year is PartialDate.NoYear or (>= EarliestYear and <= LatestYear) && month is null or (>= 1 and <= 12)
        && (day is null || (day >= 1 && day <= DateTime.DaysInMonth(year, month ?? 1)));

    private static bool IsAbout(Cursor at, int index) => at.Parts[index] is NumberPart { BoundSpan.Length: > 0 };

    private static int? DayAt(Cursor at, int index) =>
        index < at.Parts.Count && at.Parts[index] is NumberPart { Second.Exists: false } part && part.First.Digits.Length <= 2 && at.BoundOf(part) is Bound.Exact or Bound.About
            && part.First.Unit.In(at.Line) is "" or "st" or "nd" or "rd" or "th"
            ? Whole(at, part.First.Digits)
            : null;

    private static int Whole(Cursor at, TextSpan digits) =>
        int.TryParse(digits.In(at.Line), NumberStyles.None, CultureInfo.InvariantCulture, out int number) ? number : -1;
}
