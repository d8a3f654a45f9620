using System.Globalization;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Drawing.Charts;

/// <summary>Charts in words, for those who do not see them.</summary>
internal static class ChartText
{
    /// <summary>A time without a reading that is named, in days (common practice, no source).</summary>
    private const int LongGap = 90;

    /// <summary>Of fewer readings no gap is named: they are few anyway.</summary>
    private const int LeastForGap = 8;

    /// <summary>What a chart adds to the values that are told elsewhere, for those who do not see it: how many readings, since when, and a long time without any.</summary>
    /// <param name="marks">All values, in the order of time.</param>
    /// <param name="unit">The unit.</param>
    public static string InWords(IReadOnlyList<Mark> marks, string unit)
    {
        Mark[] values = [.. marks.Where(mark => mark.IsValue).OrderBy(mark => mark.Value)];
        string between = values.Length == 0 ? "" : Short(values[0]) == Short(values[^1]) ? $", all {Short(values[0])} {unit}" : $", {Short(values[0])} to {Short(values[^1])} {unit}";
        int bounds = marks.Count(mark => !mark.IsValue);
        string open = bounds == 0 ? "" : bounds == 1 ? ", one of them only below or above a value" : $", {bounds:N0} of them only below or above a value";
        (DateOnly before, DateOnly after) = marks.Zip(marks.Skip(1), (one, next) => (one.Day, next.Day)).MaxBy(gap => gap.Item2.DayNumber - gap.Item1.DayNumber);
        int days = after.DayNumber - before.DayNumber;
        string gap = marks.Count >= LeastForGap && days >= LongGap && days * 2 > marks[^1].Day.DayNumber - marks[0].Day.DayNumber ? $", none between {PageWords.DayAndYear(before)} and {PageWords.DayAndYear(after)}" : "";
        return $"{PageWords.Count(marks.Count, "reading")} since {PageWords.DayAndYear(marks[0].Day)}{between}{gap}{open}.";
    }

    public static string Span(ChartSet set) =>
        $"All charts share one time axis, {PageWords.DayAndYear(DateOnly.FromDateTime(set.From))} to {PageWords.DayAndYear(DateOnly.FromDateTime(set.To.AddDays(set.To.TimeOfDay == TimeSpan.Zero ? -1 : 0)))}{(set.Earlier ? "; earlier readings are in the notes" : "")}. Values far apart in time are not joined.{(set.Charts.Any(chart => chart.Thinned) ? " Of long series each stretch shows its lowest, highest and last value." : "")}";

    /// <summary>A medicine with every dose and its days.</summary>
    public static string Of(MedicineBar medicine) =>
        $"{medicine.Name}: {string.Join("; ", medicine.Doses.Select(dose => $"{(dose.Words.Length == 0 ? "" : dose.Words + ", ")}{(dose.To is { } to ? $"{PageWords.DayAndYear(dose.Began)} to {PageWords.DayAndYear(to)}" : $"since {PageWords.DayAndYear(dose.Began)}")}"))}";

    private static string Short(Mark mark)
    {
        string number = Math.Round(mark.Value, mark.Value >= 20 ? 1 : 2).ToString("0.##", CultureInfo.InvariantCulture);
        return mark.Kind switch { MarkKind.About => $"about {number}", MarkKind.Below => $"below {number}", MarkKind.Above => $"above {number}", _ => number };
    }
}
