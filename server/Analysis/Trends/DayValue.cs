using System.Collections.Immutable;
using HealthNotes.Grammar.Items;
using HealthNotes.Record.Courses;
using HealthNotes.Record.Readings;

namespace HealthNotes.Analysis.Trends;

/// <summary>
/// What one day says of one thing. Readings of one day are not independent of each other, so that comparisons over time take
/// one value a day: the median of its points; a bound only where the day has no point.
/// </summary>
/// <param name="Day">The day.</param>
/// <param name="Value">The value, in the canonical unit.</param>
/// <param name="Bound">Whether it is a point, or only a bound.</param>
/// <param name="At">The last reading of the day.</param>
public readonly record struct DayValue(DateOnly Day, decimal Value, Bound Bound, NoteReading At)
{
    /// <summary>True for a point; an approximation is one, a bound is not.</summary>
    public bool IsPoint => Bound is Bound.Exact or Bound.About;

    /// <summary>
    /// The values of a course up to the end of <paramref name="until"/>, in the order of their days: of the last
    /// <paramref name="days"/> days before the last reading, at most the last <paramref name="most"/> ones.
    /// </summary>
    /// <param name="course">The course.</param>
    /// <param name="until">The last day that counts.</param>
    /// <param name="days">How many days before the last reading count.</param>
    /// <param name="most">How many days with a value there are at most.</param>
    /// <param name="visits">False to leave out what was read at the clinic.</param>
    public static ImmutableArray<DayValue> Of(Course course, DateOnly until, int days, int most, bool visits = true)
    {
        var values = new List<DayValue>();
        int end = course.CountUpTo(until);
        DateOnly from = DateOnly.MinValue;
        while (end > 0 && values.Count < most)
        {
            DateOnly day = course.Lines[end - 1].Day;
            if (day < from)
            {
                break;
            }

            int start = end - 1;
            while (start > 0 && course.Lines[start - 1].Day == day)
            {
                start--;
            }

            if (OfDay(course.Lines.AsSpan()[start..end], visits) is { } value)
            {
                from = values.Count == 0 ? Before(day, days) : from;
                values.Add(value);
            }

            end = start;
        }

        values.Reverse();
        return [.. values];
    }

    /// <summary>So many days earlier; the beginning of time stops it.</summary>
    public static DateOnly Before(DateOnly day, int days) => DateOnly.FromDayNumber(Math.Max(0, day.DayNumber - days));

    private static DayValue? OfDay(ReadOnlySpan<Noted> lines, bool visits)
    {
        NoteReading? last = null;
        ReadValue? bound = null;
        var points = new List<decimal>();
        foreach (Noted line in lines)
        {
            if (line.Reading is not { } reading || (line.AtVisit && !visits))
            {
                continue;
            }

            ReadValue value = reading.Value.OnScaleOfNine();
            if (value.Bound is Bound.Exact or Bound.About)
            {
                points.Add(value.Number);
                last = reading;
            }
            else if (points.Count == 0)
            {
                // of several bounds of a day the last stays: which is the truest is not known
                bound = value;
                last = reading;
            }
        }

        return last is null ? null
            : points.Count > 0 ? new DayValue(last.Day!.Value, Robust.Median(points), Bound.Exact, last)
            : new DayValue(last.Day!.Value, bound!.Number, bound.Bound, last);
    }
}
