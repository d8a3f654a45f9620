using System.Collections.Immutable;
using HealthNotes.Analysis.Problems;
using HealthNotes.Analysis.Rules;
using HealthNotes.Analysis.Trends;
using HealthNotes.Grammar.Items;
using HealthNotes.Record;
using HealthNotes.Record.Courses;
using HealthNotes.Record.HomeCare;
using HealthNotes.Record.Lumps;
using HealthNotes.Record.Ranges;
using HealthNotes.Record.Readings;
using HealthNotes.Rendering.Model;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Drawing.Charts;

/// <summary>Chooses what is drawn over time: each vital, water, and each lump, where three days or more have a value.</summary>
internal sealed class ChartsBuilder
{
    /// <summary>How far back the charts go; what is older is in the notes (common practice, no source).</summary>
    private const int MostDays = 730;

    private const int MostCharts = 14;
    private const int MostMedicines = 3;

    /// <summary>A medicine given for less than one part in so many of the time is a dot beneath a chart, and is named below (common practice, no source).</summary>
    private const int LeastPart = 25;

    /// <summary>Two values are a sentence, not a chart.</summary>
    private const int LeastMarks = 3;

    /// <summary>On a chart with more lumps nobody tells them apart.</summary>
    private const int MostLumpsTogether = 5;

    private readonly PageContext context;
    private readonly PetRecord record;
    private readonly DateOnly from;
    private readonly DateOnly to;

    private ChartsBuilder(PageContext context, DateOnly from, DateOnly to)
    {
        this.context = context;
        record = context.Analysis.Record;
        this.from = from;
        this.to = to;
    }

    /// <summary>The charts; null when nothing was measured three times.</summary>
    public static ChartSet? Build(PageContext context)
    {
        DateOnly[] days = [.. context.Analysis.Record.Readings.Select(reading => reading.Day).OfType<DateOnly>().Where(day => day <= context.Analysis.Today)];
        if (days.Length == 0)
        {
            return null;
        }

        DateOnly to = days.Max();
        DateOnly earliest = DayValue.Before(to, MostDays);
        DateOnly first = days.Min();
        return new ChartsBuilder(context, first > earliest ? first : earliest, to).Build(first < earliest);
    }

    private ChartSet? Build(bool earlier)
    {
        List<Chart> charts = [.. Vitals().Concat(Water()).Concat(Lumps())];
        if (charts.Count == 0)
        {
            return null;
        }

        MedicineBar[] drawn = [.. Medicines().Where(IsDrawn).OrderByDescending(medicine => medicine.Doses[^1].From).Take(MostMedicines).OrderBy(medicine => medicine.Doses[0].From)];
        return new ChartSet(
            Start, End, [.. charts.Take(MostCharts)], Math.Max(0, charts.Count - MostCharts), [.. Events()], drawn, earlier);
    }

    /// <summary>True for a medicine that began, changed or ended in that time, and was given for long enough to be seen there.</summary>
    private bool IsDrawn(MedicineBar medicine)
    {
        (DateOnly first, DateOnly last) = (medicine.Doses[0].From, medicine.Doses[^1].To is { } end && end < to ? end : to);
        return (medicine.Doses.Count > 1 || first > from || last < to) && (last.DayNumber - first.DayNumber + 1) * LeastPart >= to.DayNumber - from.DayNumber;
    }

    private DateTime Start => from.ToDateTime(TimeOnly.MinValue);

    private DateTime End => to == DateOnly.MaxValue ? DateTime.MaxValue : to.Plus(1).ToDateTime(TimeOnly.MinValue);

    /// <summary>What happened, one mark a day: several things of a day stand together.</summary>
    private IEnumerable<ChartEvent> Events() =>
        record.Of(CourseKey.Visits).Lines.Select(line => (line.Day, Words: PageWords.EventVisit))
            .Concat(SettledUsual.Surgeries(record).Select(surgery => (surgery.Day, Words: PageWords.EventSurgery)))
            .Concat(record.All("vaccine").SelectMany(course => course.Lines).Where(line => line.Item is Act).Select(line => (line.Day, Words: PageWords.EventVaccine)))
            .Where(one => one.Day >= from && one.Day <= to).Distinct().GroupBy(one => one.Day).OrderBy(day => day.Key)
            .Select(day => new ChartEvent(day.Key, string.Join(", ", day.Select(one => one.Words).Order(StringComparer.Ordinal))));

    private IEnumerable<MedicineBar> Medicines() =>
        MedicineOrder.All(record).Where(order => order.From > DateOnly.MinValue && order.From <= to && !(order.EndDay < from))
            .GroupBy(order => order.Medicine)
            .Select(medicine => new MedicineBar(
                NoteText.Field(medicine.Last().Plan.Medicine.Text),
                [.. medicine.OrderBy(order => order.From).Select(order => new DoseBar(order.From < from ? from : order.From, order.EndDay, PageWords.AmountInWords(order.Plan.Dose), PageWords.DoseInWords(order.Plan), order.From))]));

    private IEnumerable<Chart> Vitals()
    {
        (string Word, string? State, bool FromZero, double LeastSpan)[] wanted =
        [
            ("weight", null, false, 0), ("hr", "rest", false, 60), ("rr", "asleep", true, 0), ("rr", "rest", true, 0), ("temp", null, false, 3), ("glucose", null, true, 0),
        ];
        return from row in wanted
               from course in record.All(row.Word).Select(course => SameVital.OnPage(course, record.All)).DistinctBy(course => course.Key)
               where row.State is null || course.Key.Detail.Split(' ')[0] == row.State
               let lines = course.Lines.Where(line => line.Reading is not null && line.Day >= @from && line.Day <= to).ToArray()
               where IsEnough(lines.Select(line => line.Day))
               select Vital(course, lines, row.FromZero, row.LeastSpan);
    }

    private static bool IsEnough(IEnumerable<DateOnly> days) => days.Distinct().Count() >= LeastMarks;

    private Chart Vital(Course course, Noted[] lines, bool fromZero, double leastSpan)
    {
        NoteReading[] readings = [.. lines.Select(line => line.Reading!)];
        string unit = readings[^1].Value.Unit;
        UsualNow? usual = SettledUsual.Of(record, course);
        LimitLine[] limits = [.. ClinicWords.Limits(record, course).Select(limit => new LimitLine(
            limit.Since > from ? limit.Since.Value.ToDateTime(TimeOnly.MinValue) : Start, Shown(limit.Limit, unit), limit.Above, ClinicLimit.Words(context.Units, course, limit.Limit, limit.Above, unit, limit.InARow)))];

        // where the clinic drew a limit or a range, it stands in the place of the general one
        bool clinics = limits.Length > 0 || usual is { Readings: null };
        // a weight is compared with no range: its axis spans at least a fifth of it
        double span = course.Key.Word == "weight" ? Shown(readings.Max(reading => reading.Value.Number), unit) / 5 : unit == "Cel" ? context.Units.Degrees(leastSpan) : leastSpan;
        return Make(
            PageWords.ChartOf(course.Key.Word, course.Key.Detail), unit, [.. lines.Select(Marked)], clinics ? [] : Normal(readings),
            usual is null || usual.Since > to ? null : Between(usual.Since ?? from, usual.Low, usual.High, unit),
            usual is null ? "" : usual.Readings is { } count ? PageWords.UsualByReadings(count) : PageWords.UsualByVet,
            limits, fromZero, span, readings.Any(reading => reading.Value.Low is not null));
    }

    private Chart Make(
        string title, string unit, ImmutableArray<Mark> marks, IReadOnlyList<Band> normal, Band? usual, string usualFrom, IReadOnlyList<LimitLine> limits, bool fromZero, double leastSpan, bool counted)
    {
        marks = [.. marks.OrderBy(mark => mark.At)];
        IReadOnlyList<Mark> thin = Thinning.Of(marks, new TimeAxis(Start, End));
        string shown = context.Units.NameOf(unit);
        return new Chart(
            title, shown, [new Series("", thin)], normal, usual, usualFrom, limits, fromZero, leastSpan, counted ? PageWords.KeyCounting : PageWords.KeyMeasuring,
            "", ChartText.InWords(marks, shown), thin.Count < marks.Length);
    }

    private Mark Marked(Noted line)
    {
        NoteReading reading = line.Reading!;
        (decimal Low, decimal High)? error = MeasuringError.Of(reading);
        return new Mark(
            line.Moment, Shown(reading.Value.Number, reading.Value.Unit), Shown(error?.Low, reading.Value.Unit), Shown(error?.High, reading.Value.Unit),
            reading.Value.Bound switch { Bound.About => MarkKind.About, Bound.Below => MarkKind.Below, Bound.Above => MarkKind.Above, _ => MarkKind.Point }, line.AtVisit);
    }

    /// <summary>The range of each reading, from it to the next reading with another range; the first from the start on.</summary>
    private List<Band> Normal(NoteReading[] readings)
    {
        var bands = new List<Band>();
        NormalRange? before = null;
        foreach (NoteReading reading in readings)
        {
            NormalRange? range = record.NormalFor(reading);
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

    private Band Between(DateOnly since, decimal low, decimal high, string unit) =>
        new(since < from ? Start : since.ToDateTime(TimeOnly.MinValue), End, Shown(low, unit), Shown(high, unit));

    private IEnumerable<Chart> Water()
    {
        Course water = record.Of(new CourseKey("water", ""));
        if (TrendRow.For("water") is not { } row || water.Lines.IsEmpty)
        {
            yield break;
        }

        ImmutableArray<DayValue> days = [.. WaterPerDay.Of(water, to, record.Pet.WeightOn, row with { Days = MostDays, Last = MostDays }).Where(day => day.Day >= from)];
        if (days.Length >= LeastMarks)
        {
            List<Band> normal = Normal([.. days.Select(day => day.At with { Value = new ReadValue(day.Value, "mL/kg/d", null, null, Bound.Exact) })]);
            yield return Make(PageWords.WaterChart, "mL/kg/d", [.. days.Select(day => WaterOf(day))], normal, null, "", [], fromZero: true, 0, counted: false);
        }
    }

    private static Mark WaterOf(DayValue day)
    {
        (decimal Low, decimal High)? error = MeasuringError.Of("water", day.Value);
        return new Mark(day.Day.ToDateTime(new TimeOnly(12, 0)), (double)day.Value, (double?)error?.Low, (double?)error?.High, MarkKind.Point);
    }

    /// <summary>A lump that changed has a chart; those without a clear change share one.</summary>
    private IEnumerable<Chart> Lumps()
    {
        (int Number, LumpLife Life, LumpSize[] Sizes)[] lumps = [.. LumpNumbering.Of(record).Where(lump => lump.Life.Key.Word is "lump" or "wound" or "node")
            .Select(lump => (lump.Number, lump.Life, Sizes: lump.Life.Sizes.Where(size => size.Day >= from && size.Day <= to).ToArray()))
            .Where(lump => IsEnough(lump.Sizes.Select(size => size.Day)))
            .OrderBy(lump => lump.Life.Ended is not null).ThenByDescending(lump => lump.Life.Last.Day).ThenBy(lump => lump.Number)];
        ILookup<bool, (int Number, LumpLife Life, LumpSize[] Sizes)> changed = lumps.ToLookup(lump => lump.Sizes.Any(size => new SizeChange(lump.Sizes[0], size).Verdict != ChangeVerdict.CannotTell));
        IEnumerable<Chart> single = changed[true].Select(lump => Lump(lump.Number, lump.Life, lump.Sizes));
        return single.Concat(changed[false].Chunk(MostLumpsTogether).Select(same => same is [var one] ? Lump(one.Number, one.Life, one.Sizes) : Together(same)));
    }

    private Chart Lump(int number, LumpLife life, LumpSize[] sizes) => Make(
        PageWords.LumpChart(number, Wording.NameOf(life.Key.Word), SiteWords.Of(life)), "mm", [.. sizes.Select(Marked)], [], null, "", [], fromZero: true, 0, counted: false);

    private Chart Together((int Number, LumpLife Life, LumpSize[] Sizes)[] lumps)
    {
        string unit = context.Units.NameOf("mm");
        Series[] series = [.. lumps.Select(lump => new Series($"{lump.Number}", Thinning.Of([.. lump.Sizes.Select(Marked)], new TimeAxis(Start, End))))];
        return new Chart(
            PageWords.LumpsTogether, unit, series, [], null, "", [], FromZero: true, 0, PageWords.KeyMeasuring,
            string.Join("; ", lumps.Select(lump => PageWords.LumpOfSeveral(lump.Number, Wording.NameOf(lump.Life.Key.Word), SiteWords.Of(lump.Life)))),
            string.Join(" ", lumps.Select((lump, index) => $"{PageWords.LumpChart(lump.Number, Wording.NameOf(lump.Life.Key.Word), SiteWords.Of(lump.Life))}: {ChartText.InWords(series[index].Marks, unit)}")), Thinned: false);
    }

    /// <summary>What a size may really be: by the hand that measured, or by the thing that it was compared with.</summary>
    private Mark Marked(LumpSize size)
    {
        Mark mark = Marked(size.Noted);
        return mark with { Low = Shown(size.HandLow, "mm"), High = Shown(size.HandHigh ?? size.Low, "mm") };
    }

    private double Shown(decimal number, string unit) => (double)context.Units.Number(number, unit);

    private double? Shown(decimal? number, string? unit) => number is { } value && unit is not null ? Shown(value, unit) : null;
}
