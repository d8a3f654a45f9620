namespace HealthNotes.Analysis.Trends;

/// <summary>How far one reading of a pet scatters about its usual value, on the scale of the row.</summary>
/// <param name="Counting">By the way of counting alone, one standard deviation.</param>
/// <param name="Own">By the earlier readings of this pet, one standard deviation.</param>
/// <param name="Count">How many those are.</param>
public readonly record struct Scatter(decimal Counting, decimal Own, int Count)
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
        decimal counting = row.OnScale(median + (OfCount * step)) - row.OnScale(median);
        return new Scatter(counting, Robust.WiderSpread([.. readings.Select(one => (row.OnScale(one.Value), one.Weight))], counting), readings.Count);
    }

    /// <summary>How far so many standard deviations are; further where the pet's own scatter is from few readings.</summary>
    public decimal Times(double deviations) => Math.Max((decimal)deviations * Counting, (decimal)Robust.OfFew(deviations, Count) * Own);
}
