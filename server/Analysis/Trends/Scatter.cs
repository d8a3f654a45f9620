namespace HealthNotes.Analysis.Trends;

/// <summary>How far one reading of a pet scatters about its usual value, on the scale of the row.</summary>
/// <param name="Counting">By the way of counting alone, one standard deviation.</param>
/// <param name="Own">By the earlier readings of this pet, one standard deviation.</param>
/// <param name="Both">By those and by what is ordinary, each for as many readings as it counts for, one standard deviation.</param>
/// <param name="Count">How many earlier readings there are.</param>
/// <param name="CountOfBoth">For how many readings <paramref name="Both"/> counts.</param>
public readonly record struct Scatter(decimal Counting, decimal Own, decimal Both, int Count, int CountOfBoth)
{
    /// <summary>
    /// Where a regular count starts decides whether one more falls into its time: at most half a count is the standard
    /// deviation of that.
    /// </summary>
    private const decimal OfCount = 0.5m;

    /// <summary>The scatter of readings about their median.</summary>
    /// <param name="row">Whose scale is used.</param>
    /// <param name="readings">The readings and their weights, at least two.</param>
    /// <param name="median">Their median.</param>
    /// <param name="step">What one count more or less makes of a reading; 0 for what is not counted.</param>
    public static Scatter Of(UsualRow row, IReadOnlyCollection<(decimal Value, double Weight)> readings, decimal median, decimal step)
    {
        decimal middle = row.OnScale(median);
        decimal counting = row.OnScale(median + (OfCount * step)) - middle;
        decimal own = Robust.WiderSpread([.. readings.Select(one => (row.OnScale(one.Value), one.Weight))], counting);
        decimal ordinary = row.OnScale(median * (1 + (row.Ordinary / 100))) - middle;
        int both = row.OrdinaryCount + readings.Count;
        return new Scatter(counting, own, (decimal)Math.Sqrt((double)((row.OrdinaryCount * ordinary * ordinary) + (readings.Count * own * own)) / both), readings.Count, both);
    }

    /// <summary>
    /// How far the mean of some readings lies from the median of the earlier ones at so many standard errors; further where the
    /// scatter is from few readings. Few readings that agree by chance are not taken for less scatter than is ordinary.
    /// </summary>
    /// <param name="deviations">How many standard errors.</param>
    /// <param name="together">Of how many readings the mean is.</param>
    public decimal Times(double deviations, int together = 1) =>
        Math.Max(
            (decimal)deviations * Counting / (decimal)Math.Sqrt(together),
            Math.Max((decimal)Robust.OfFew(deviations, Count) * Own, (decimal)Robust.OfFew(deviations, CountOfBoth) * Both) * Error(together));

    /// <summary>The same by the pet's own scatter alone, without room for what few readings leave open: what lies nearer is surely usual.</summary>
    public decimal Least(double deviations, int together = 1) => (decimal)deviations * Math.Max(Counting, Own) * Error(together);

    private decimal Error(int together) => (decimal)Math.Sqrt((1.0 / together) + (Robust.OfMedian / Count));
}
