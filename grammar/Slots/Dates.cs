using System.Globalization;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Parsing;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Text;

namespace HealthNotes.Grammar.Slots;

/// <summary>Dates inside a line: a day, a month or a year, in figures or with the month in words.</summary>
internal static class Dates
{
    private const int EarliestYear = 1900;
    private const int LatestYear = 2199;
    private static readonly string[] Months = CultureInfo.InvariantCulture.DateTimeFormat.MonthNames;

    /// <summary>True for <c>2026-10-20</c>, <c>2017-03</c>, <c>2017</c> and about one of them, right or wrong as days.</summary>
    public static bool LooksLikeDate(Cursor at, NumberPart part)
    {
        ReadOnlySpan<char> year = part.First.Digits.In(at.Line);
        bool bare = part.First.Unit.Length + part.Second.Unit.Length + part.Third.Unit.Length == 0 && at.BoundOf(part) is Bound.Exact or Bound.About;
        return bare && year.Length == 4 && year.IndexOfAnyExceptInRange('0', '9') < 0
            && (!part.Second.Exists || (part.Second.Sign(at.Line) == '-' && part.Second.Digits.Length <= 2))
            && (!part.Third.Exists || (part.Third.Sign(at.Line) == '-' && part.Third.Digits.Length <= 2));
    }

    /// <summary>A day written the other way round (<c>4/10/2026</c>), which can be read two ways.</summary>
    public static bool LooksForeign(Cursor at, NumberPart part) =>
        part.Third.Exists && part.Third.Digits.Length is 4 or 2 && part.Second.Sign(at.Line) is '/' or '-' && part.Third.Sign(at.Line) is '/' or '-' && part.First.Digits.Length <= 2;

    /// <summary>Takes the date; null, after a report, where the calendar has none.</summary>
    public static PartialDate? Take(Cursor at, NumberPart part)
    {
        at.At++;
        int year = Whole(at, part.First.Digits);
        int? month = part.Second.Exists ? Whole(at, part.Second.Digits) : null;
        int? day = part.Third.Exists ? Whole(at, part.Third.Digits) : null;
        if (Exists(year, month, day))
        {
            at.Mark(TokenKind.Date, part.Span);
            return new PartialDate(part.Span, year, month, day, part.BoundSpan.Length > 0);
        }

        at.Mark(TokenKind.Unknown, part.Span);
        at.Report(new Problem(ProblemRules.BadDate, part.Span, $"`{part.Span.In(at.Line)}` is not in the calendar. Write year-month-day, such as 2026-10-20."));
        return null;
    }

    /// <summary><c>June 2016</c>, <c>3 June 2016</c>, <c>june 3, 2016</c>: only with a year, and only with the month in words.</summary>
    public static PartialDate? InWords(Cursor at, int index, out int count)
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

        if (index >= at.Parts.Count || at.Parts[index] is not NumberPart { BoundSpan.Length: 0, Second.Exists: false, First.Unit.Length: 0 } last
            || last.First.Digits.Length != 4 || !Exists(Whole(at, last.First.Digits), month, day))
        {
            return null;
        }

        count = index + 1 - first;
        return new PartialDate(at.SpanOf(first, count), Whole(at, last.First.Digits), month, day, false);
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

    public static bool Exists(int year, int? month, int? day) => year is >= EarliestYear and <= LatestYear && month is null or (>= 1 and <= 12)
        && (day is null || (day >= 1 && day <= DateTime.DaysInMonth(year, month ?? 1)));

    private static int? DayAt(Cursor at, int index) =>
        index < at.Parts.Count && at.Parts[index] is NumberPart { BoundSpan.Length: 0, Second.Exists: false } part && part.First.Digits.Length <= 2
            && part.First.Unit.In(at.Line) is "" or "st" or "nd" or "rd" or "th"
            ? Whole(at, part.First.Digits)
            : null;

    private static int Whole(Cursor at, TextSpan digits) =>
        int.TryParse(digits.In(at.Line), NumberStyles.None, CultureInfo.InvariantCulture, out int number) ? number : -1;
}
