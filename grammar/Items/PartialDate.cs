using System.Globalization;
using HealthNotes.Grammar.Text;

namespace HealthNotes.Grammar.Items;

/// <summary>A day, a month or a year: <c>2017-03-08</c>, <c>2017-03</c>, <c>2017</c>, or about one of them (<c>~2017</c>).</summary>
public sealed record PartialDate(TextSpan Span, int Year, int? Month, int? Day, bool About)
{
    /// <summary>The year of a day that is written without one, until its entry says which is meant: a leap year, so that it holds every day.</summary>
    public const int NoYear = 4;

    private const int LongestWait = 8;

    /// <summary>The same day with its year: the first one from <paramref name="day"/> on, or the last one up to it.</summary>
    public PartialDate Near(DateOnly day, bool after)
    {
        if (Year == NoYear && Day is null)
        {
            // a month alone: this one or the next of its name, or the last
            return this with { Year = day.Year + (after ? (Month < day.Month ? 1 : 0) : (Month > day.Month ? -1 : 0)) };
        }

        for (int years = 0; Year == NoYear && years <= LongestWait; years++)
        {
            int year = day.Year + (after ? years : -years);
            if (year is >= 1 and <= 9999 && Day <= DateTime.DaysInMonth(year, Month!.Value) && (after ? new DateOnly(year, Month.Value, Day!.Value) >= day : new DateOnly(year, Month.Value, Day!.Value) <= day))
            {
                return this with { Year = year };
            }
        }

        return this;
    }

    /// <summary>The day itself, or null when only a month or a year is written.</summary>
    public DateOnly? Exact => Month is { } month && Day is { } day ? new DateOnly(Year, month, day) : null;

    /// <summary>The first day it can mean.</summary>
    public DateOnly Earliest => new(Year, Month ?? 1, Day ?? 1);

    /// <summary>The last day it can mean.</summary>
    public DateOnly Latest => Exact ?? (Month is null ? new DateOnly(Year, 12, 31) : Earliest.PlusMonths(1).Plus(-1));

    /// <inheritdoc/>
    public override string ToString() =>
        (About ? "~" : "") + (Year == NoYear ? new DateOnly(Year, Month!.Value, Day ?? 1).ToString(Day is null ? "MMMM" : "d MMM", CultureInfo.InvariantCulture) : Day is not null ? $"{Year:0000}-{Month:00}-{Day:00}" : Month is not null ? $"{Year:0000}-{Month:00}" : $"{Year:0000}");
}
