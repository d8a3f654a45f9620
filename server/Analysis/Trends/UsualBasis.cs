using HealthNotes.Grammar.Items;
using HealthNotes.Record.Courses;
using HealthNotes.Record.Readings;

namespace HealthNotes.Analysis.Trends;

/// <summary>The readings that a usual value is worked out from. Most readings are so near to them that it need not be.</summary>
internal sealed class UsualBasis
{
    private readonly UsualRow row;
    private readonly List<(NoteReading Reading, double Weight)> readings;
    private readonly double half;

    private UsualBasis(UsualRow row, List<(NoteReading Reading, double Weight)> readings)
    {
        this.row = row;
        this.readings = readings;
        half = readings.Sum(reading => reading.Weight) / 2;
    }

    /// <summary>Collects them; null when there are too few.</summary>
    public static UsualBasis? Of(Course course, UsualRow row, DateOnly before, DateOnly? grown)
    {
        if (before == DateOnly.MinValue)
        {
            return null;
        }

        DateOnly from = DayValue.Before(before, row.Days);
        from = grown > from ? grown.Value : from;
        var readings = new List<(NoteReading, double)>(row.Last);
        int days = 0;
        DateOnly since = before;
        for (int index = course.CountUpTo(before.Plus(-1)) - 1; index >= 0 && readings.Count < row.Last; index--)
        {
            Noted line = course.Lines[index];
            DateOnly day = line.Day;
            if (day < from)
            {
                break;
            }

            if (line.Reading is { Value.Bound: Bound.Exact or Bound.About } reading && (row.AtVisits || !line.AtVisit))
            {
                days += day == since ? 0 : 1;
                since = day;
                readings.Add((reading, row.WeightAfter(before.DayNumber - day.DayNumber)));
            }
        }

        return readings.Count < row.Least || days < row.OnDays ? null : new UsualBasis(row, readings);
    }

    /// <summary>False when a number is surely as usual: less than half of the weight lies far enough from it for the median to do so.</summary>
    public bool CouldBeFar(decimal number)
    {
        decimal part = row.Percent / 100;
        decimal below = Math.Min(number - row.Floor, number / (1 + part));
        decimal above = Math.Max(number + row.Floor, part < 1 ? number / (1 - part) : decimal.MaxValue);
        double lower = 0;
        double higher = 0;
        foreach ((NoteReading reading, double weight) in readings)
        {
            lower += reading.Value.Number <= below ? weight : 0;
            higher += reading.Value.Number >= above ? weight : 0;
        }

        // a hair less than half, so that rounding never silences a reading
        double enough = half * 0.999;
        return lower >= enough || (row.BothSides && higher >= enough);
    }

    /// <summary>The usual value.</summary>
    public OwnUsual ToUsual()
    {
        (decimal Value, double Weight)[] values = [.. readings.Select(one => (one.Reading.Value.Number, one.Weight))];
        decimal median = Robust.Median(values);
        decimal step = Robust.Median(readings.Select(one => one.Reading.Value.Number - (one.Reading.Value.Low ?? one.Reading.Value.Number)));
        var scatter = Scatter.Of(row, values, median, step);
        decimal far = scatter.Times((double)row.Times);
        decimal least = Math.Max(row.Floor, row.Percent * median / 100);
        decimal high = Math.Max(row.From ?? 0, Math.Max(median + least, row.Away(median, far)));
        return new OwnUsual(
            median, Math.Max(0, Math.Min(median - least, row.Away(median, -far))), high, scatter, step, readings[0].Reading.Value.Unit, readings.Count,
            readings[^1].Reading.Day!.Value, [.. readings.Select(one => one.Reading.Line)]);
    }
}
