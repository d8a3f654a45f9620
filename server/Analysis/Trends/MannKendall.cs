using MathNet.Numerics.Distributions;

namespace HealthNotes.Analysis.Trends;

/// <summary>The Mann-Kendall test for a change in one direction over time.</summary>
/// <param name="S">Pairs that rise less pairs that fall.</param>
/// <param name="Variance">The variance of S when nothing changes, with ties in value and in time.</param>
/// <param name="Z">S in standard deviations, one nearer to nothing (continuity); 0 where the variance is 0.</param>
/// <param name="P">How often chance alone gives an S as far from nothing (two-sided).</param>
/// <param name="IsExact">True when P was counted out: up to ten values without ties or bounds.</param>
/// <remarks>
/// Mann, Econometrica 1945;13:245-259; variance with ties: Kendall, Rank Correlation Methods (both from memory). Only equal points
/// make the variance smaller; bounds that cannot be ordered leave it as it is, which makes the test more careful, not less.
/// </remarks>
public sealed record MannKendall(int S, double Variance, double Z, double P, bool IsExact)
{
    private const int MostCountedOut = 10;

    /// <summary>Applies the test to values in any order.</summary>
    public static MannKendall Of(ReadOnlySpan<TrendPoint> points)
    {
        TrendPoint[] sorted = [.. points];
        Array.Sort(sorted, (a, b) => a.Time.CompareTo(b.Time));
        int s = 0;
        bool clear = true;
        for (int i = 0; i < sorted.Length; i++)
        {
            for (int j = i + 1; j < sorted.Length; j++)
            {
                int order = sorted[i].Time == sorted[j].Time ? 0 : TrendPoint.Order(sorted[i], sorted[j]);
                clear &= order != 0;
                s += order;
            }
        }

        double variance = VarianceOf(sorted);
        double z = variance > 0 ? (s - Math.Sign(s)) / Math.Sqrt(variance) : 0;
        bool exact = clear && sorted.Length is > 1 and <= MostCountedOut;
        double p = exact ? CountedOut(sorted.Length, s) : Math.Min(1, 2 * Normal.CDF(0, 1, -Math.Abs(z)));
        return new MannKendall(s, variance, z, p, exact);
    }

    /// <summary>The variance of S when nothing changes.</summary>
    public static double VarianceOf(ReadOnlySpan<TrendPoint> points)
    {
        double n = points.Length;
        if (n < 2)
        {
            return 0;
        }

        TrendPoint[] all = [.. points];
        double[] values = [.. all.Where(point => point.IsPoint).GroupBy(point => point.Value).Select(group => (double)group.Count())];
        double[] times = [.. all.GroupBy(point => point.Time).Select(group => (double)group.Count())];
        double first = (Weighed(n) - values.Sum(Weighed) - times.Sum(Weighed)) / 18;
        double second = n < 3 ? 0 : values.Sum(Triples) * times.Sum(Triples) / (9 * Triples(n));
        double third = values.Sum(Pairs) * times.Sum(Pairs) / (2 * Pairs(n));
        return Math.Max(0, first + second + third);

        static double Weighed(double t) => t * (t - 1) * ((2 * t) + 5);
        static double Triples(double t) => t * (t - 1) * (t - 2);
        static double Pairs(double t) => t * (t - 1);
    }

    /// <summary>The part of all orders of n values whose S is as far from nothing.</summary>
    private static double CountedOut(int n, int s)
    {
        // orders[k]: how many orders of the values so far have k falling pairs
        double[] orders = [1];
        for (int size = 2; size <= n; size++)
        {
            var next = new double[(size * (size - 1) / 2) + 1];
            for (int falling = 0; falling < orders.Length; falling++)
            {
                for (int more = 0; more < size; more++)
                {
                    next[falling + more] += orders[falling];
                }
            }

            orders = next;
        }

        int pairs = n * (n - 1) / 2;
        double far = orders.Where((_, falling) => Math.Abs(pairs - (2 * falling)) >= Math.Abs(s)).Sum();
        return far / orders.Sum();
    }
}
