using System.Collections.Immutable;
using HealthNotes.Analysis.Rules;
using HealthNotes.Analysis.Trends;
using HealthNotes.Grammar.Notes;
using HealthNotes.Record.Courses;
using HealthNotes.Record.HomeCare;
using HealthNotes.Record.Lumps;
using HealthNotes.Record.Ranges;
using HealthNotes.Record.Readings;
using HealthNotes.Rendering.Model;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Drawing.Charts;

/// <summary>Chooses what is drawn over time: each vital, water, and each lump that was measured twice.</summary>
internal sealed class ChartsBuilder
{
    /// <summary>How far back the charts go; what is older is in the notes (common practice, no source).</summary>
    private const int MostDays = 730;

    private const int MostCharts = 14;
    private const int MostMedicines = 4;
    private const int LeastMarks = 2;

    private static readonly string[] Places = ["lump", "wound", "node"];

    private readonly PageContext context;
    private readonly DateOnly from;
    private readonly DateOnly to;

    private ChartsBuilder(PageContext context, DateOnly from, DateOnly to)
    {
        this.context = context;
        this.from = from;
        this.to = to;
    }

    /// <summary>The charts; null when nothing was measured twice.</summary>
    public static ChartSet? Build(PageContext context)
    {
        DateOnly[] days = [.. context.Analysis.Record.Readings.Select(reading => reading.Day).OfType<DateOnly>().Where(day => day <= context.Analysis.Today)];
        if (days.Length == 0)
        {
            return null;
        }

        DateOnly to = days.Max();
        var earliest = DateOnly.FromDayNumber(Math.Max(0, to.DayNumber - MostDays));
        DateOnly first = days.Min();
        return new ChartsBuilder(context, first > earliest ? first : earliest, to).Build(first < earliest);
    }

    private ChartSet? Build(bool earlier)
    {
        List<Chart> charts = [.. Vitals().Concat(Water()).Concat(Lumps()).Where(chart => chart.Marks.Count >= LeastMarks)];
        if (charts.Count == 0)
        {
            return null;
        }

        MedicineOrder[] orders = [.. MedicineOrder.All(context.Analysis.Record).Where(order => order.From > DateOnly.MinValue && order.From <= to && !(order.EndDay < from)).OrderBy(order => order.From)];
        return new ChartSet(
            Start, End, [.. charts.Take(MostCharts)], Math.Max(0, charts.Count - MostCharts),
            [.. context.Analysis.Record.Of(CourseKey.Visits).Lines.Select(line => line.Day).Where(day => day >= from && day <= to).Distinct()],
            [.. orders.TakeLast(MostMedicines).Select((order, index) => new MedicineBar($"{(char)('A' + index)}", NoteText.Field(PetCardBuilder.Plan(order.Plan)), order.From < from ? from : order.From, order.EndDay))],
            Math.Max(0, orders.Length - MostMedicines), earlier);
    }

    private DateTime Start => from.ToDateTime(TimeOnly.MinValue);

    private DateTime End => to == DateOnly.MaxValue ? DateTime.MaxValue : to.Plus(1).ToDateTime(TimeOnly.MinValue);

    private IEnumerable<Chart> Vitals()
    {
        (string Word, string? State, bool FromZero, double LeastSpan)[] wanted =
        [
            ("weight", null, false, 0), ("hr", "rest", false, 60), ("rr", "asleep", true, 0), ("rr", "rest", true, 0), ("temp", null, false, 3), ("glucose", null, true, 0),
        ];
        foreach ((string word, string? state, bool fromZero, double leastSpan) in wanted)
        {
            foreach (Course course in context.Analysis.Record.All(word).Select(course => SameVital.Of(course, context.Analysis.Record.All)).DistinctBy(course => course.Key)
                .Where(course => state is null || course.Key.Detail.Split(' ')[0] == state))
            {
                NoteReading[] readings = [.. course.Lines.Select(line => line.Reading).OfType<NoteReading>().Where(IsInTime)];
                if (readings.Length >= LeastMarks)
                {
                    yield return Vital(course, readings, fromZero, leastSpan);
                }
            }
        }
    }

    private Chart Vital(Course course, NoteReading[] readings, bool fromZero, double leastSpan)
    {
        string unit = readings[^1].Value.Unit;
        string name = PageWords.ChartOf(course.Key.Word, course.Key.Detail);
        (Band? usual, string says) = Usual(course, unit);

        // a weight has no range to be held against: its axis spans at least a fifth of it
        double span = course.Key.Word == "weight" ? Shown((double)readings.Max(reading => reading.Value.Number), unit) / 5 : unit == "Cel" ? context.Units.Degrees(leastSpan) : leastSpan;
        return Make(name, unit, [.. readings.Select(Marked)], Normal(readings), usual, says, fromZero, span);
    }

    private Chart Make(string title, string unit, ImmutableArray<Mark> marks, IReadOnlyList<Band> normal, Band? usual, string says, bool fromZero, double leastSpan)
    {
        marks = [.. marks.OrderBy(mark => mark.At)];
        IReadOnlyList<Mark> thin = Thinning.Of(marks, new TimeAxis(Start, End));
        string shown = context.Units.NameOf(unit);
        return new Chart(title, shown, thin, normal, usual, says, fromZero, leastSpan, PageWords.ChartInWords(marks, shown), thin.Count < marks.Length);
    }

    private Mark Marked(NoteReading reading) => Marked(reading.Day!.Value.ToDateTime(reading.Time ?? new TimeOnly(12, 0)), reading.Value);

    private Mark Marked(DateTime at, ReadValue value) => new(
        at, Shown((double)value.Number, value.Unit), Shown(value.Low, value.Unit), Shown(value.High, value.Unit),
        value.Bound switch { Bound.About => MarkKind.About, Bound.Below => MarkKind.Below, Bound.Above => MarkKind.Above, _ => MarkKind.Point });

    /// <summary>The range of each reading, from it to the next reading with another range; the first from the start on.</summary>
    private List<Band> Normal(NoteReading[] readings)
    {
        var bands = new List<Band>();
        NormalRange? before = null;
        foreach (NoteReading reading in readings)
        {
            NormalRange? range = context.Analysis.Record.NormalFor(reading);
            DateTime at = bands.Count == 0 ? Start : reading.Day!.Value.ToDateTime(TimeOnly.MinValue);
            if ((range?.Low, range?.High) == (before?.Low, before?.High))
            {
                continue;
            }

            if (bands.Count > 0)
            {
                bands[^1] = bands[^1] with { To = at };
            }

            before = range;
            bands.Add(new Band(at, End, Shown(range?.Low, range?.Unit), Shown(range?.High, range?.Unit)));
        }

        bands.RemoveAll(band => band.Low is null && band.High is null);
        return bands;
    }

    /// <summary>What the vet calls usual; else what is usual by the earlier readings.</summary>
    private (Band? Band, string Says) Usual(Course course, string unit) =>
        UsualNow.Of(context.Analysis.Record, course) is { } usual && !(usual.Since > to)
            ? (Between(usual.Since ?? from, usual.Low, usual.High, unit), usual.Readings is { } count ? PageWords.UsualByReadings(count) : PageWords.UsualByVet)
            : (null, "");

    private Band Between(DateOnly since, decimal low, decimal high, string unit) =>
        new(since < from ? Start : since.ToDateTime(TimeOnly.MinValue), End, Shown(low, unit), Shown(high, unit));

    private IEnumerable<Chart> Water()
    {
        Course water = context.Analysis.Record.Of(new CourseKey("water", ""));
        if (TrendRow.For("water") is not { } row || water.Lines.IsEmpty)
        {
            yield break;
        }

        ImmutableArray<DayValue> days = [.. WaterPerDay.Of(water, to, context.Analysis.Pet.WeightOn, row with { Days = MostDays, Last = MostDays }).Where(day => day.Day >= from)];
        if (days.Length >= LeastMarks)
        {
            List<Band> normal = Normal([.. days.Select(day => day.At with { Value = new ReadValue(day.Value, "mL/kg/d", null, null, Bound.Exact) })]);
            yield return Make(PageWords.WaterChart, "mL/kg/d", [.. days.Select(day => new Mark(Noon(day.Day), (double)day.Value, null, null, MarkKind.Point))], normal, null, "", fromZero: true, 0);
        }
    }

    private IEnumerable<Chart> Lumps() =>
        Places.SelectMany(word => context.Analysis.Record.All(word)).Select(LumpLife.Of).OfType<LumpLife>()
            .Select(life => (Life: life, Sizes: life.Sizes.Where(size => size.Day >= from && size.Day <= to).ToArray()))
            .Where(lump => lump.Sizes.Length >= LeastMarks)
            .OrderBy(lump => lump.Life.Ended is not null).ThenByDescending(lump => lump.Life.Last.Day).ThenByDescending(lump => lump.Life.LastSize!.High ?? lump.Life.LastSize.Low)
            .Select(lump => Make(
                PageWords.LumpChart(Wording.NameOf(lump.Life.Key.Word), SiteWords.Of(lump.Life)), "mm",
                [.. lump.Sizes.Select(size => Marked(size.Noted.Moment, size.Noted.Reading!.Value with { Low = size.HandLow, High = size.HandHigh ?? size.Low }))], [], null, "", fromZero: true, 0));

    private bool IsInTime(NoteReading reading) => reading.Day is { } day && day >= from && day <= to;

    private static DateTime Noon(DateOnly day) => day.ToDateTime(new TimeOnly(12, 0));

    private double Shown(double number, string unit) => (double)context.Units.Number((decimal)number, unit);

    private double? Shown(decimal? number, string? unit) => number is { } value && unit is not null ? (double)context.Units.Number(value, unit) : null;
}
