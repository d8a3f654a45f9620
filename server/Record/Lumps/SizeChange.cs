namespace HealthNotes.Record.Lumps;

/// <summary>What can be said of two sizes measured by hand.</summary>
public enum ChangeVerdict
{
    /// <summary>The difference is within what measuring by hand can be off by.</summary>
    CannotTell,

    /// <summary>Larger, past the error of the hand.</summary>
    Larger,

    /// <summary>Smaller, past the error of the hand.</summary>
    Smaller,
}

/// <summary>The change of the longest diameter, and of the volume, from one size to a later one.</summary>
/// <param name="Before">The earlier size.</param>
/// <param name="After">The later size.</param>
public sealed record SizeChange(LumpSize Before, LumpSize After)
{
    /// <summary>Days between them.</summary>
    public int Days => After.Day.DayNumber - Before.Day.DayNumber;

    /// <summary>The change of the longest diameter in mm; null where one is only a bound.</summary>
    public decimal? Millimetres => After.Typical - Before.Typical;

    /// <summary>The change of the longest diameter in percent of the earlier one; null where one is only a bound.</summary>
    public decimal? Percent => Before.Typical is > 0 ? Millimetres * 100 / Before.Typical : null;

    /// <summary>
    /// The later volume over the earlier one; null where one is only a bound. Volumes worked out in different ways are not
    /// compared: then the longest diameters alone are, as balls.
    /// </summary>
    public double? VolumeRatio => Before.Volume is { } before && After.Volume is { } after && before.Shape == after.Shape
        ? after.CubicMillimetres / before.CubicMillimetres
        : Before.Typical is > 0 && After.Typical is { } now ? Math.Pow((double)(now / Before.Typical.Value), 3) : null;

    /// <summary>Whether the hand that measured can tell the two apart: what they may really be does not overlap.</summary>
    public ChangeVerdict Verdict => Before.HandHigh < After.HandLow ? ChangeVerdict.Larger
        : After.HandHigh < Before.HandLow ? ChangeVerdict.Smaller
        : ChangeVerdict.CannotTell;

    /// <summary>
    /// The doubling time in days, and the quickest and slowest it may really be by the error of the hand; null when it cannot
    /// be told: no growth past the error, a bound, or one day.
    /// </summary>
    public (double Days, double Quickest, double? Slowest)? Doubling =>
        Verdict == ChangeVerdict.Larger && VolumeRatio is { } ratio && DoublingTime.Days(1, ratio, Days) is { } days
        && Before.HandHigh is { } high && After.HandHigh is { } most
            ? (days,
                Math.Min(days, DoublingTime.OfDiameters(Math.Max(Before.HandLow, 0.1m), most, Days) ?? days),
                DoublingTime.OfDiameters(high, After.HandLow, Days) is { } slowest ? Math.Max(days, slowest) : null)
            : null;

    /// <summary>
    /// True for growth worth saying: the longest diameter is larger by <c>growth-percent</c> and by <c>growth-mm</c> of
    /// <c>lumps.tsv</c>, exactly so much included, whatever the two sizes can mean.
    /// </summary>
    public bool IsGrowth => IsLarger(LumpNumbers.Default["growth-percent"], LumpNumbers.Default["growth-mm"]);

    /// <summary>True when it is larger by so many percent, and so many mm, at the least.</summary>
    public bool IsLarger(decimal percent, decimal millimetres) =>
        Before.High is { } high && After.Low - high >= millimetres && After.Low * 100 >= high * (100 + percent);
}
