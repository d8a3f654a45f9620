using System.Numerics;

namespace HealthNotes.Analysis.Trends;

/// <summary>Middle and spread that a single odd value hardly moves.</summary>
public static class Robust
{
    /// <summary>The variance of a median is so many times that of a mean, for many values.</summary>
    public const double OfMedian = Math.PI / 2;

    /// <summary>What the median distance from the median is multiplied by, so that it equals the standard deviation of a normal distribution.</summary>
    private const decimal ToStandardDeviation = 1.4826m;

    /// <summary>The same for the mean distance: the root of half of pi.</summary>
    private const decimal OfMeanDistance = 1.2533m;

    /// <summary>The median; of an even number of values the mean of the two in the middle.</summary>
    public static T Median<T>(IEnumerable<T> values)
        where T : INumber<T>
    {
        T[] sorted = [.. values];
        Array.Sort(sorted);
        int half = sorted.Length / 2;
        return sorted.Length % 2 == 1 ? sorted[half] : (sorted[half - 1] + sorted[half]) / (T.One + T.One);
    }

    /// <summary>The median absolute deviation from the median, times 1.4826.</summary>
    public static decimal Spread(IReadOnlyCollection<decimal> values)
    {
        decimal median = Median(values);
        return ToStandardDeviation * Median(values.Select(value => Math.Abs(value - median)));
    }

    /// <summary>
    /// The weighted median: the value at which half of the weight lies on either side; where it falls exactly between two
    /// values, their mean. With equal weights it is the median.
    /// </summary>
    public static decimal Median(IEnumerable<(decimal Value, double Weight)> values)
    {
        (decimal Value, double Weight)[] sorted = [.. values];
        Array.Sort(sorted, (a, b) => a.Value.CompareTo(b.Value));
        double half = sorted.Sum(value => value.Weight) / 2;
        double slack = half * 1e-9;
        double sum = 0;
        for (int index = 0; index < sorted.Length - 1; index++)
        {
            sum += sorted[index].Weight;
            if (Math.Abs(sum - half) <= slack)
            {
                return (sorted[index].Value + sorted[index + 1].Value) / 2;
            }

            if (sum > half)
            {
                return sorted[index].Value;
            }
        }

        return sorted[^1].Value;
    }

    /// <summary>The same spread with weights.</summary>
    public static decimal Spread(IReadOnlyCollection<(decimal Value, double Weight)> values)
    {
        decimal median = Median(values);
        return ToStandardDeviation * Median(values.Select(value => (Math.Abs(value.Value - median), value.Weight)));
    }

    /// <summary>
    /// What a limit of so many standard deviations becomes where the deviation itself is worked out from a few values: the first
    /// term by which Student's t differs from the normal distribution (Abramowitz and Stegun, Handbook of Mathematical Functions, 26.7.5, from memory).
    /// </summary>
    /// <param name="deviations">The limit for many values.</param>
    /// <param name="count">From how many values the deviation is, at least two.</param>
    public static double OfFew(double deviations, int count) => deviations * (1 + (((deviations * deviations) + 1) / (4 * (count - 1))));

    /// <summary>
    /// The wider of two estimates of the standard deviation: by the median distance, which may be nothing by chance where values
    /// are whole counts, and by the mean distance, to which no value counts for more than three usual ones.
    /// </summary>
    /// <param name="values">The values and their weights.</param>
    /// <param name="least">A deviation that the values have at the least.</param>
    public static decimal WiderSpread(IReadOnlyCollection<(decimal Value, double Weight)> values, decimal least)
    {
        decimal median = Median(values);
        decimal spread = Spread(values);
        decimal most = 3 * Math.Max(spread, least) / ToStandardDeviation;
        decimal mean = values.Sum(value => Math.Min(Math.Abs(value.Value - median), most) * (decimal)value.Weight) / (decimal)values.Sum(value => value.Weight);
        return Math.Max(spread, mean * OfMeanDistance);
    }
}
