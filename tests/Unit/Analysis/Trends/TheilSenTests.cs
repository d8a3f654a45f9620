using CsCheck;
using HealthNotes.Analysis.Trends;
using HealthNotes.Grammar.Items;
using HealthNotes.Tests.Support;
using MathNet.Numerics.Statistics;

namespace HealthNotes.Tests.Analysis.Trends;

public class TheilSenTests
{
    private static readonly Gen<TrendPoint[]> Points = Gen.Select(Gen.Int[0, 300], Gen.Int[-100, 100]).Array[6, 30]
        .Select(pairs => pairs.DistinctBy(pair => pair.Item1).Select(pair => new TrendPoint(pair.Item1, pair.Item2)).ToArray())
        .Where(points => points.Length > 5);

    /// <summary>Example of the documentation of the R package statpsych, ci.theil: estimate 0.5, limits 0.3243243 and 0.75. Ties in both.</summary>
    [Fact]
    public void The_example_of_statpsych()
    {
        double[] y = [21, 4, 9, 12, 35, 18, 10, 22, 24, 1, 6, 8, 13, 16, 19];
        double[] x = [67, 28, 30, 28, 52, 40, 25, 37, 44, 10, 14, 20, 28, 40, 51];
        TheilSen line = TheilSen.Of([.. x.Zip(y, (time, value) => new TrendPoint(time, value))])!;
        Assert.Equal(0.5, line.Slope, 1e-9);
        Assert.Equal(0.3243243, line.Low!.Value, 1e-7);
        Assert.Equal(0.75, line.High!.Value, 1e-9);
    }

    /// <summary>Sen, J Am Stat Assoc 1968;63:1379-1389, the example there: slope 4, 93% limits 26/7 and 35/8 (from memory).</summary>
    [Fact]
    public void The_example_of_Sen()
    {
        double[] x = [1, 2, 3, 4, 10, 12, 18];
        double[] y = [9, 15, 19, 20, 45, 55, 78];
        TheilSen line = TheilSen.Of([.. x.Zip(y, (time, value) => new TrendPoint(time, value))], 0.93)!;
        Assert.Equal(4, line.Slope, 1e-9);
        Assert.Equal(26.0 / 7, line.Low!.Value, 1e-9);
        Assert.Equal(35.0 / 8, line.High!.Value, 1e-9);
    }

    [Fact]
    public void The_slope_is_the_median_of_all_slopes() => Points.ForAll(points =>
    {
        var slopes = from a in points from b in points where a.Time < b.Time select (b.Value - a.Value) / (b.Time - a.Time);
        Assert.Equal(slopes.Median(), TheilSen.Of(points)!.Slope, 1e-9);
    });

    [Fact]
    public void A_shift_moves_only_the_intercept_and_a_scale_scales() => Gen.Select(Points, Gen.Int[-50, 50], Gen.Int[1, 9]).ForAll((points, shift, scale) =>
    {
        TheilSen line = TheilSen.Of(points)!;
        TheilSen moved = TheilSen.Of([.. points.Select(point => point with { Value = (point.Value * scale) + shift })])!;
        Assert.Equal(line.Slope * scale, moved.Slope, 1e-6);
        Assert.Equal(line.Low!.Value * scale, moved.Low!.Value, 1e-6);
        Assert.Equal(line.High!.Value * scale, moved.High!.Value, 1e-6);
        Assert.Equal((line.Intercept * scale) + shift, moved.Intercept, 1e-6);
    });

    [Fact]
    public void Negating_the_values_negates_the_line() => Points.ForAll(points =>
    {
        TheilSen line = TheilSen.Of(points)!;
        TheilSen mirrored = TheilSen.Of([.. points.Select(point => point with { Value = -point.Value })])!;
        Assert.Equal(-line.Slope, mirrored.Slope, 1e-9);
        Assert.InRange(line.Slope, line.Low!.Value, line.High!.Value);
    });

    [Fact]
    public void A_wild_value_hardly_moves_it()
    {
        TrendPoint[] points = MannKendallTests.Series(10, 11, 12, 13, 14, 15, 16, 17, 18, 19);
        points[4] = points[4] with { Value = 900 };
        Assert.Equal(1, TheilSen.Of(points)!.Slope, 0.01);
    }

    [Fact]
    public void Bounds_give_no_slope()
    {
        TrendPoint[] points = MannKendallTests.Series(10, 11, 12, 13, 14, 15);
        TheilSen line = TheilSen.Of(points)!;
        Assert.Equal(line, TheilSen.Of([.. points, new TrendPoint(9, 500, Bound.Above), new TrendPoint(10, 1, Bound.Below)]));
        Assert.Null(TheilSen.Of([new TrendPoint(0, 1, Bound.Below), new TrendPoint(5, 3)]));
    }

    [Fact]
    public void Too_few_points_have_no_interval()
    {
        TheilSen line = TheilSen.Of(MannKendallTests.Series(1, 2, 3, 4))!;
        Assert.Equal((1.0, null, null), (line.Slope, line.Low, line.High));
    }

    [Fact]
    public void Points_of_one_time_alone_have_no_slope() => Assert.Null(TheilSen.Of([new TrendPoint(3, 1), new TrendPoint(3, 2)]));
}
