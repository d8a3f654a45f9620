using HealthNotes.Record.Lumps;

namespace HealthNotes.Analysis.Rules;

/// <summary>Sizes, their days and their changes in plain words.</summary>
internal static class SizeWording
{
    /// <summary>A size as exact as it was written: <c>12 mm</c>, <c>about 12 mm</c>, <c>like pea (7 to 10 mm)</c>, <c>below 5 mm</c>.</summary>
    public static string Show(LumpSize size, bool us) => size switch
    {
        { IsMeasured: false, High: { } high } => $"{size.Written} ({Wording.Show(size.Low, high, "mm", us)})",
        { Typical: { } typical } => (size.IsPoint ? "" : "about ") + Wording.Show(typical, "mm", us),
        { High: { } high } => "below " + Wording.Show(high, "mm", us),
        _ => "above " + Wording.Show(size.Low, "mm", us),
    };

    /// <summary>A size and its day: <c>12 mm on 2026-10-01</c>.</summary>
    public static string WithDay(LumpSize size, bool us) => $"{Show(size, us)} on {size.Day:yyyy-MM-dd}";

    /// <summary>By how much it grew: <c>25 % more, about 2 times the volume</c>; the least where one of them is not exact.</summary>
    public static string Percent(SizeChange change) => change is { Before.IsPoint: true, After.IsPoint: true, Percent: { } percent }
        ? $"{Wording.Round(percent, 0)} % more{Volume(change)}"
        : $"at least {Wording.Round((change.After.Low - change.Before.High!.Value) * 100 / change.Before.High!.Value, 0)} % more";

    private static string Volume(SizeChange change) => change.VolumeRatio is { } ratio and < 1_000 ? $", about {Wording.Round((decimal)ratio, 1)} times the volume" : "";

    /// <summary>The doubling time with what the hand leaves open; empty when it cannot be told.</summary>
    public static string Doubling(SizeChange change) => change.Doubling is not { } doubling ? ""
        : $" At that rate its volume doubles in about {Days(doubling.Days)} days ({Days(doubling.Quickest)} {(doubling.Slowest is { } slowest ? "to " + Days(slowest) : "or more")}, by the error of the hand).";

    private static string Days(double days) => Wording.Round((decimal)Math.Clamp(days, 0, 99_999), 0);
}
