using MathNet.Numerics.Distributions;

namespace HealthNotes.Analysis.Trends;

/// <summary>A straight line through points that a few odd ones hardly move: the median of the slopes of all pairs.</summary>
/// <param name="Slope">The slope, for each unit of time.</param>
/// <param name="Low">The lower end of its confidence interval; null where there are too few points for one.</param>
/// <param name="High">The upper end; null where there are too few points for one.</param>
/// <param name="Intercept">The line's value at time 0: the median of what each point leaves over.</param>
/// <remarks>Sen, J Am Stat Assoc 1968;63:1379-1389; the interval after Hollander and Wolfe, from Kendall's variance with ties.</remarks>
public sealed record TheilSen(double Slope, double? Low, double? High, double Intercept)
{
    /// <summary>The line through the points among <paramref name="points"/>; null when no two lie apart in time.</summary>
    /// <param name="points">The points; bounds among them are left out.</param>
    /// <param name="confidence">The part of such intervals that hold the true slope.</param>
    public static TheilSen? Of(ReadOnlySpan<TrendPoint> points, double confidence = 0.95)
    {
        TrendPoint[] exact = [.. points];
        exact = Array.FindAll(exact, point => point.IsPoint);
        List<double> slopes = [];
        for (int i = 0; i < exact.Length; i++)
        {
            for (int j = i + 1; j < exact.Length; j++)
            {
                if (exact[i].Time != exact[j].Time)
                {
                    slopes.Add((exact[j].Value - exact[i].Value) / (exact[j].Time - exact[i].Time));
                }
            }
        }

        if (slopes.Count == 0)
        {
            return null;
        }

        slopes.Sort();
        double slope = Robust.Median(slopes);
        double half = Normal.InvCDF(0, 1, (1 + confidence) / 2) * Math.Sqrt(MannKendall.VarianceOf(exact));
        int low = (int)Math.Round((slopes.Count - half) / 2) - 1;
        int high = (int)Math.Round((slopes.Count + half) / 2);
        double intercept = Robust.Median(exact.Select(point => point.Value - (slope * point.Time)));
        return low >= 0 && high < slopes.Count
            ? new TheilSen(slope, slopes[low], slopes[high], intercept)
            : new TheilSen(slope, null, null, intercept);
    }
}
