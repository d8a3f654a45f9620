using System.Collections.Immutable;
using HealthNotes.Record.Courses;
using HealthNotes.Record.Readings;

namespace HealthNotes.Analysis.Trends;

/// <summary>How one thing changed over time: a line through it, and how sure that is. For rules, and for drawing.</summary>
/// <param name="Row">What it was compared with.</param>
/// <param name="PerDay">The change in a day, in the row's unit (Theil-Sen).</param>
/// <param name="LowPerDay">The lower end of its 95% interval.</param>
/// <param name="HighPerDay">The upper end of its 95% interval.</param>
/// <param name="Start">The line's value on the first day.</param>
/// <param name="End">The line's value on the last day.</param>
/// <param name="Since">The first day.</param>
/// <param name="Until">The last day.</param>
/// <param name="Count">On how many days there is a value; bounds are among them.</param>
/// <param name="Test">The Mann-Kendall test of the same values.</param>
/// <param name="Last">The last reading.</param>
/// <param name="Lines">The lines it rests on: the last reading of each day.</param>
public sealed record Trend(
    TrendRow Row,
    double PerDay,
    double LowPerDay,
    double HighPerDay,
    double Start,
    double End,
    DateOnly Since,
    DateOnly Until,
    int Count,
    MannKendall Test,
    NoteReading Last,
    ImmutableArray<int> Lines)
{
    /// <summary>Days in a month, on average.</summary>
    private const double Month = 365.25 / 12;

    /// <summary>The change in a month.</summary>
    public double PerMonth => PerDay * Month;

    /// <summary>The lower end of its 95% interval.</summary>
    public double LowPerMonth => LowPerDay * Month;

    /// <summary>The upper end of its 95% interval.</summary>
    public double HighPerMonth => HighPerDay * Month;

    /// <summary>The change from the first to the last day.</summary>
    public double Change => End - Start;

    /// <summary>True when it rises.</summary>
    public bool Rises => PerDay > 0;

    /// <summary>True when chance is an unlikely reason, the interval lies on one side of nothing (scores in whole points tie so often that touching it counts), and the change is large enough to matter: then it is spoken of.</summary>
    public bool IsClear => Test.P <= Row.P
        && (LowPerDay >= 0 || HighPerDay <= 0)
        && Math.Sign(Test.S) == Math.Sign(PerDay)
        && Math.Abs(Change) >= Row.Change
        && Math.Abs(Change) >= Row.Percent / 100 * Math.Abs((Start + End) / 2);

    /// <summary>The trend of a course as it stood on <paramref name="today"/>; null when there are too few values or too little time, or none is looked for.</summary>
    /// <param name="course">The course; pulses are best taken together first (<see cref="SameVital"/>). For water see <see cref="WaterPerDay"/>.</param>
    /// <param name="today">The last day that counts.</param>
    /// <param name="grown">The day from which the pet is grown (<see cref="HealthNotes.Record.Pet.PetProfile.GrownOn"/>): earlier values are left out. Null when all count.</param>
    public static Trend? Of(Course course, DateOnly today, DateOnly? grown = null) =>
        TrendRow.For(course.Key.Word) is { } row ? Of(row, DayValue.Of(course, today, row.Days, row.Last, row.AtVisits), grown) : null;

    /// <summary>The trend of values in the order of their days.</summary>
    public static Trend? Of(TrendRow row, ImmutableArray<DayValue> values, DateOnly? grown = null)
    {
        values = grown is { } day ? values.RemoveAll(value => value.Day < day) : values;
        if (values.Length < row.Least || values[^1].Day.DayNumber - values[0].Day.DayNumber < row.Span)
        {
            return null;
        }

        DateOnly since = values[0].Day;
        TrendPoint[] points = [.. values.Select(value => new TrendPoint(value.Day.DayNumber - since.DayNumber, (double)value.Value, value.Bound))];
        return points.Count(point => point.IsPoint) >= row.Least && TheilSen.Of(points) is { Low: { } low, High: { } high } line
            ? new Trend(row, line.Slope, low, high, line.Intercept, line.Intercept + (line.Slope * points[^1].Time), since, values[^1].Day,
                values.Length, MannKendall.Of(points), values[^1].At, [.. values.Select(value => value.At.Line)])
            : null;
    }

    /// <summary>The line's value on a day.</summary>
    public double At(DateOnly day) => Start + (PerDay * (day.DayNumber - Since.DayNumber));
}
