using System.Globalization;
using HealthNotes.Analysis.Rules;
using HealthNotes.Rendering.Drawing.Charts;

namespace HealthNotes.Rendering.Text;

/// <content>The words of the charts.</content>
internal static partial class PageWords
{
    public const string OverTime = "Over time";
    public const string WaterChart = "Water drunk in a day";
    public const string UsualByVet = "usual as the vet sees it";
    public const string KeyPoint = "measured";
    public const string KeyDoubt = "what it may really be, by how it was measured";
    public const string KeyAbout = "about";
    public const string KeyBound = "below (arrow down) or above (arrow up) this";
    public const string KeyNormal = "shown as normal";
    public const string KeyUsual = "usual for this pet";
    public const string KeyVisit = "visit to the clinic";
    public const string KeyMedicine = "medicine, by its letter";

    public static string UsualByReadings(int count) => $"usual by {count} earlier readings";

    public static string ChartTitle(string title, string unit) => $"{title}, {unit}";

    public static string LumpChart(string kind, string place) => place.Length == 0 ? kind : $"{kind}, {place}";

    /// <summary>What a chart of a vital is called.</summary>
    public static string ChartOf(string word, string detail) => (word, detail.Split(' ')) switch
    {
        ("rr", ["asleep", ..]) => "Breathing asleep",
        ("rr", _) => "Breathing awake, at rest",
        ("hr", _) => "Pulse at rest",
        ("temp", [_, var place]) => $"Temperature, {place}",
        _ => Wording.NameOf(word),
    };

    public static string ChartCaption(Chart chart)
    {
        Mark last = chart.Marks[^1];
        string usual = chart.UsualFrom.Length == 0 ? "" : $"; {chart.UsualFrom}";
        return $"last {Short(last)} on {Iso(DateOnly.FromDateTime(last.At))}{usual}{(chart.Thinned ? "; of each stretch the lowest, highest and last" : "")}";
    }

    /// <summary>The same for those who do not see it: first, last, lowest, highest.</summary>
    public static string ChartInWords(IReadOnlyList<Mark> marks, string unit)
    {
        Mark[] values = [.. marks.Where(mark => mark.IsValue)];
        string ends = $"{Told(marks[0], unit)} to {Told(marks[^1], unit)}";
        string extremes = values.Length < 3 ? "" : $"; lowest {Told(values.MinBy(mark => mark.Value)!, unit)}, highest {Told(values.MaxBy(mark => mark.Value)!, unit)}";
        int bounds = marks.Count - values.Length;
        string open = bounds == 0 ? "" : bounds == 1 ? ", one of them only below or above a value" : $", {bounds:N0} of them only below or above a value";
        return $"{ends}{extremes}; {marks.Count:N0} readings{open}.";
    }

    public static string ChartSpan(ChartSet set) =>
        $"All on one time axis, {Iso(DateOnly.FromDateTime(set.From))} to {Iso(DateOnly.FromDateTime(set.To.AddDays(set.To.TimeOfDay == TimeSpan.Zero ? -1 : 0)))}{(set.Earlier ? "; earlier readings are in the notes" : "")}. Points far apart in time are not joined: nothing is known of what lies between.";

    public static string MedicinesLeftOut(int count) => count == 1 ? "One earlier medicine is not drawn." : $"{count:N0} earlier medicines are not drawn.";

    public static string ChartsLeftOut(int count) => count == 1 ? "One more chart could be drawn; its values are in the notes." : $"{count:N0} more charts could be drawn; their values are in the notes.";

    private static string Told(Mark mark, string unit) => $"{Short(mark)} {unit} ({Iso(DateOnly.FromDateTime(mark.At))})";

    private static string Short(Mark mark)
    {
        string number = Math.Round(mark.Value, mark.Value >= 20 ? 1 : 2).ToString("0.##", CultureInfo.InvariantCulture);
        return mark.Kind switch { MarkKind.About => $"about {number}", MarkKind.Below => $"below {number}", MarkKind.Above => $"above {number}", _ => number };
    }
}
