using HealthNotes.Record.Courses;
using HealthNotes.Rendering.Model;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Drawing.Days;

/// <summary>The days with three glucose values or more, each value with its time.</summary>
internal static class GlucoseCurves
{
    private const int LeastReadings = 3;
    private const int MostCurves = 12;

    /// <summary>The latest of these days, in order.</summary>
    public static IEnumerable<CurveRow> Of(PageContext context)
    {
        ILookup<DateOnly, Noted> insulin = context.Analysis.Record.All("gave").Where(course => course.Key.Detail.Contains("insulin", StringComparison.Ordinal)).SelectMany(course => course.Lines).ToLookup(line => line.Day);
        return context.Analysis.Record.All("glucose").SelectMany(course => course.Lines).Where(line => line is { Reading: not null, AtVisit: false, Time: not null })
            .GroupBy(line => line.Day).OrderBy(day => day.Key).Where(day => day.Count() >= LeastReadings)
            .TakeLast(MostCurves).Select(day => new CurveRow(
                day.Key, string.Join("; ", insulin[day.Key].OrderBy(line => line.Moment).Select(line => PageWords.DoseAt(PageWords.AmountInWords(line.Item!.Value), line.Time))),
                string.Join("; ", day.OrderBy(line => line.Moment).ThenBy(line => line.Line).Select(line => PageWords.ValueAt(line.Time!.Value, context.Units.Show(line.Reading!.Value), line.Reading.Comparable?.Split(' ')[0] is { } state and not "any" ? state.Replace('-', ' ') : "")))));
    }
}
