namespace HealthNotes.Analysis.Trends;

/// <summary>An estimate of a grown animal's ideal weight from its weight and body condition.</summary>
/// <param name="LowKg">With the larger excess for each point.</param>
/// <param name="HighKg">With the smaller excess for each point.</param>
public sealed record IdealWeight(decimal LowKg, decimal HighKg)
{
    private const decimal Ideal = 5;

    /// <summary>The estimate: weight over one and the excess, so much percent for each point of nine above five.</summary>
    /// <param name="weightKg">The weight.</param>
    /// <param name="points">Body condition out of nine, above five.</param>
    /// <param name="leastPercent">The smaller excess for each point: 10, AAHA weight management toolkit.</param>
    /// <param name="mostPercent">The larger excess for each point: 15, Vet Times 2015.</param>
    public static IdealWeight Of(decimal weightKg, decimal points, decimal leastPercent, decimal mostPercent) =>
        new(weightKg / (1 + ExcessOf(points, mostPercent)), weightKg / (1 + ExcessOf(points, leastPercent)));

    /// <summary>The excess over the ideal weight, as a part of it.</summary>
    public static decimal ExcessOf(decimal points, decimal percent) => (points - Ideal) * percent / 100;
}
