using System.Collections.Immutable;
using HealthNotes.Analysis.Courses;
using HealthNotes.Grammar.Notes;

namespace HealthNotes.Analysis.Trends;

/// <summary>
/// What is usual for this pet: the weighted median of its earlier comparable readings and how far they scatter. The weights
/// and numbers are in <c>usual-values.tsv</c>. Bounds are left out; what was read once does not become usual.
/// </summary>
/// <param name="Median">The usual value, in the canonical unit.</param>
/// <param name="Low">From here down a reading is not as usual.</param>
/// <param name="High">From here up a reading is not as usual.</param>
/// <param name="Unit">The canonical unit.</param>
/// <param name="Count">How many readings it is from.</param>
/// <param name="Since">The day of the first of them.</param>
/// <param name="Lines">Their lines.</param>
public sealed record OwnUsual(decimal Median, decimal Low, decimal High, string Unit, int Count, DateOnly Since, ImmutableArray<int> Lines)
{
    /// <summary>The usual value before a day; null when there are too few readings, or no row of the table is for the course.</summary>
    /// <param name="course">The course; pulses are best taken together first (<see cref="SameVital"/>).</param>
    /// <param name="before">Readings of the days before this one count.</param>
    /// <param name="grown">The day from which the pet is grown (<see cref="Growth"/>); earlier readings are left out. Null when all count.</param>
    public static OwnUsual? For(Course course, DateOnly before, DateOnly? grown = null) =>
        UsualRow.For(course.Key) is { } row && before > DateOnly.MinValue ? For(course, row, before, grown) : null;

    private static OwnUsual? For(Course course, UsualRow row, DateOnly before, DateOnly? grown)
    {
        DateOnly from = DayValue.Before(before, row.Days);
        from = grown > from ? grown.Value : from;
        var values = new List<(decimal Value, double Weight)>(row.Last);
        ImmutableArray<int>.Builder lines = ImmutableArray.CreateBuilder<int>(row.Last);
        string? unit = null;
        int days = 0;
        DateOnly since = before;
        for (int index = course.CountUpTo(before.AddDays(-1)) - 1; index >= 0 && values.Count < row.Last && course.Lines[index].Day >= from; index--)
        {
            if (course.Lines[index].Reading is not { Value.Bound: Bound.Exact or Bound.About } reading || (course.Lines[index].AtVisit && !row.AtVisits))
            {
                continue;
            }

            DateOnly day = course.Lines[index].Day;
            days += day == since ? 0 : 1;
            since = day;
            unit ??= reading.Value.Unit;
            values.Add((reading.Value.Number, Math.Pow(0.5, (before.DayNumber - day.DayNumber) / row.HalfLife)));
            lines.Add(reading.Line);
        }

        if (unit is null || values.Count < row.Least || days < row.OnDays)
        {
            return null;
        }

        decimal median = Robust.Median(values);
        decimal away = Math.Max(row.Floor, Math.Max(row.Times * Robust.Spread(values), row.Percent * median / 100));
        decimal high = row.From is { } least ? Math.Max(least, median + away) : median + away;
        return new OwnUsual(median, Math.Max(0, median - away), high, unit, values.Count, since, lines.DrainToImmutable());
    }
}
