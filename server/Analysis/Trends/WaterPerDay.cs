using System.Collections.Immutable;
using HealthNotes.Grammar.Items;
using HealthNotes.Record.Courses;
using HealthNotes.Record.Readings;

namespace HealthNotes.Analysis.Trends;

/// <summary>Water drunk in a day for each kilogram: the amounts written on a day added up, over the weight of that day.</summary>
public static class WaterPerDay
{
    /// <summary>The values in mL/kg a day, in the order of their days; days with a bound among the amounts, or before the first weighing, are left out.</summary>
    /// <param name="water">The course of water drunk.</param>
    /// <param name="until">The last day that counts.</param>
    /// <param name="weightOn">The last weighing up to a day.</param>
    /// <param name="row">How far back they go.</param>
    public static ImmutableArray<DayValue> Of(Course water, DateOnly until, Func<DateOnly, NoteReading?> weightOn, TrendRow row)
    {
        var values = new List<DayValue>();
        DateOnly from = water.LastUpTo(until) is { } last ? DayValue.Before(last.Day, row.Days) : until;
        int end = water.CountUpTo(until);
        while (end > 0 && values.Count < row.Last && water.Lines[end - 1].Day >= from)
        {
            DateOnly day = water.Lines[end - 1].Day;
            decimal sum = 0;
            bool known = true;
            NoteReading? at = null;
            for (; end > 0 && water.Lines[end - 1].Day == day; end--)
            {
                if (water.Lines[end - 1].Reading is { } amount)
                {
                    at ??= amount;
                    sum += amount.Value.Number;
                    known &= amount.Value.Bound is Bound.Exact or Bound.About;
                }
            }

            if (at is not null && known && weightOn(day) is { Value.Number: > 0 and var weight })
            {
                values.Add(new DayValue(day, sum / weight, Bound.Exact, at));
            }
        }

        values.Reverse();
        return [.. values];
    }
}
