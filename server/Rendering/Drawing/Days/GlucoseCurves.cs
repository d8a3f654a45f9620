using HealthNotes.Record.Courses;
using HealthNotes.Rendering.Model;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Drawing.Days;

/// <summary>Glucose curves: of each day with three readings or more the value before, the lowest, and the hour of the lowest.</summary>
internal static class GlucoseCurves
{
    private const int LeastReadings = 3;
    private const int MostCurves = 12;
    private const string Unit = "mmol/L";

    /// <summary>The latest curves, in order.</summary>
    public static IEnumerable<CurveRow> Of(PageContext context)
    {
        ILookup<DateOnly, Noted> insulin = context.Analysis.Record.All("gave").Where(course => course.Key.Detail.Contains("insulin", StringComparison.Ordinal)).SelectMany(course => course.Lines).ToLookup(line => line.Day);
        return context.Analysis.Record.All("glucose").SelectMany(course => course.Lines).Where(line => line is { Reading: not null, AtVisit: false, Time: not null })
            .GroupBy(line => line.Day).OrderBy(day => day.Key).Where(day => day.Count() >= LeastReadings)
            .TakeLast(MostCurves).Select(day => Curve(context, day.Key, [.. day.OrderBy(line => line.Moment).ThenBy(line => line.Line)], [.. insulin[day.Key].OrderBy(line => line.Moment)]));
    }

    private static CurveRow Curve(PageContext context, DateOnly day, Noted[] readings, Noted[] insulin)
    {
        Noted lowest = readings.MinBy(line => line.Reading!.Value.Number)!;
        Noted? dose = insulin.LastOrDefault(line => line.Time is not null && line.Moment <= lowest.Moment);
        return new CurveRow(
            day, string.Join("; ", insulin.Select(line => PageWords.DoseAt(PageWords.AmountInWords(line.Item!.Value), line.Time))),
            Show(readings.FirstOrDefault(line => line.Reading!.Comparable == "before-food") ?? readings[0]), Show(lowest), PageWords.LowestAt(lowest.Time!.Value, dose is null ? null : lowest.Moment - dose.Moment),
            Show(readings.MaxBy(line => line.Reading!.Value.Number)!), readings.Length);

        string Show(Noted line) => context.Units.Show(line.Reading!.Value);
    }
}
