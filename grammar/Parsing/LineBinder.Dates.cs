using System.Globalization;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Text;

namespace HealthNotes.Grammar.Parsing;

/// <content>Dates inside a line: a day, a month or a year.</content>
internal sealed partial class LineBinder
{
    private const int EarliestYear = 1900;
    private const int LatestYear = 2199;

    /// <summary>True for <c>2026-10-20</c>, <c>2017-03</c>, <c>2017</c> and about one of them, right or wrong as days.</summary>
    private bool LooksLikeDate(NumberPart part)
    {
        ReadOnlySpan<char> year = part.First.Digits.In(line);
        bool bare = part.First.Unit.Length + part.Second.Unit.Length + part.Third.Unit.Length == 0 && BoundOf(part) is Bound.Exact or Bound.About;
        return bare && year.Length == 4 && year.IndexOfAnyExceptInRange('0', '9') < 0
            && (!part.Second.Exists || (part.Second.Sign(line) == '-' && part.Second.Digits.Length <= 2))
            && (!part.Third.Exists || (part.Third.Sign(line) == '-' && part.Third.Digits.Length <= 2));
    }

    /// <summary>A day written the other way round (<c>4/10/2026</c>), which is refused with a hint.</summary>
    private bool LooksLikeForeignDate(NumberPart part) =>
        part.Third.Exists && part.Third.Digits.Length == 4 && part.Second.Sign(line) is '/' or '-' && part.Third.Sign(line) is '/' or '-';

    private PartialDate? TakeDate(NumberPart part)
    {
        at++;
        int year = Whole(part.First.Digits);
        int? month = part.Second.Exists ? Whole(part.Second.Digits) : null;
        int? day = part.Third.Exists ? Whole(part.Third.Digits) : null;
        bool exists = year is >= EarliestYear and <= LatestYear && month is null or (>= 1 and <= 12)
            && (day is null || (day >= 1 && day <= DateTime.DaysInMonth(year, month ?? 1)));
        if (!exists || year is < EarliestYear or > LatestYear)
        {
            Mark(TokenKind.Unknown, part.Span);
            Report(new Problem(ProblemRules.BadDate, part.Span, $"`{part.Span.In(line)}` is not in the calendar; dates are written year-month-day, such as 2026-10-20"));
            return null;
        }

        Mark(TokenKind.Date, part.Span);
        return new PartialDate(part.Span, year, month, day, part.BoundSpan.Length > 0);
    }

    private int Whole(TextSpan digits) =>
        int.TryParse(digits.In(line), NumberStyles.None, CultureInfo.InvariantCulture, out int number) ? number : -1;
}
