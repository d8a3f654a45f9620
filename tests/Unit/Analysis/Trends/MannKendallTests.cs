using CsCheck;
using HealthNotes.Analysis.Trends;
using HealthNotes.Grammar.Items;
using HealthNotes.Tests.Support;

namespace HealthNotes.Tests.Analysis.Trends;

public class MannKendallTests
{
    private static readonly Gen<double[]> Values = Gen.Int[0, 30].Select(n => (double)n).Array[2, 25];

    internal static TrendPoint[] Series(params double[] values) => [.. values.Select((value, day) => new TrendPoint(day, value))];

    /// <summary>Little, College of the Holy Cross, Mann-Kendall by hand: 72 pairs rise, 18 fall, 1 ties.</summary>
    [Fact]
    public void Little_worked_by_hand()
    {
        var test = MannKendall.Of(Series(12.9, 14.8, 13.2, 15.7, 13.8, 15.6, 12.9, 11.0, 17.3, 15.9, 19.0, 18.3, 20.1, 21.7));
        Assert.Equal(54, test.S);
        Assert.Equal(332.667, test.Variance, 0.001);
        Assert.Equal(2.9058, test.Z, 0.0001);
        Assert.Equal(0.0018, test.P / 2, 0.00005);
        Assert.False(test.IsExact);
    }

    /// <summary>Counted by hand: of the 24 orders of four values one rises throughout and one falls throughout; of the 6 of three values likewise.</summary>
    [Theory]
    [InlineData(new double[] { 1, 2, 3, 4 }, 2.0 / 24)]
    [InlineData(new double[] { 4, 3, 2, 1 }, 2.0 / 24)]
    [InlineData(new double[] { 1, 2, 4, 3 }, 8.0 / 24)]
    [InlineData(new double[] { 3, 2, 1 }, 2.0 / 6)]
    [InlineData(new double[] { 1, 3, 2 }, 1.0)]
    public void Few_values_are_counted_out(double[] values, double p)
    {
        var test = MannKendall.Of(Series(values));
        Assert.True(test.IsExact);
        Assert.Equal(p, test.P, 1e-12);
    }

    [Fact]
    public void Eleven_values_or_a_tie_are_not_counted_out()
    {
        Assert.True(MannKendall.Of(Series([.. Enumerable.Range(0, 10).Select(n => (double)n)])).IsExact);
        Assert.False(MannKendall.Of(Series([.. Enumerable.Range(0, 11).Select(n => (double)n)])).IsExact);
        Assert.False(MannKendall.Of(Series(1, 2, 2, 4)).IsExact);
    }

    [Fact]
    public void Reversing_negates() => Values.ForAll(values =>
    {
        var test = MannKendall.Of(Series(values));
        var reversed = MannKendall.Of(Series([.. values.Reverse()]));
        Assert.Equal(-test.S, reversed.S);
        Assert.Equal(-test.Z, reversed.Z, 1e-12);
        Assert.Equal(test.P, reversed.P, 1e-12);
    });

    [Fact]
    public void Shift_and_scale_change_nothing() => Gen.Select(Values, Gen.Int[-50, 50], Gen.Int[1, 9]).ForAll((values, shift, scale) =>
        Assert.Equal(MannKendall.Of(Series(values)), MannKendall.Of(Series([.. values.Select(value => (value * scale) + shift)]))));

    [Fact]
    public void The_order_in_which_they_are_given_changes_nothing() => Gen.Select(Values, Gen.Int).ForAll((values, seed) =>
    {
        TrendPoint[] points = Series(values);
        TrendPoint[] shuffled = [.. points];
        new Random(seed).Shuffle(shuffled);
        Assert.Equal(MannKendall.Of(points), MannKendall.Of(shuffled));
    });

    [Theory]
    [InlineData(2, Bound.Below, 3, Bound.Exact, 1)]
    [InlineData(2, Bound.Below, 2, Bound.Exact, 1)]
    [InlineData(2, Bound.Below, 1.5, Bound.Exact, 0)]
    [InlineData(2, Bound.Below, 2, Bound.Below, 0)]
    [InlineData(30, Bound.Above, 28, Bound.Exact, -1)]
    [InlineData(30, Bound.Above, 40, Bound.Exact, 0)]
    [InlineData(2, Bound.Below, 30, Bound.Above, 1)]
    [InlineData(12, Bound.About, 12, Bound.Exact, 0)]
    [InlineData(12, Bound.About, 13, Bound.About, 1)]
    public void Bounds_are_ordered_only_where_it_is_sure(double first, Bound firstBound, double second, Bound secondBound, int order)
    {
        Assert.Equal(order, TrendPoint.Order(new(0, first, firstBound), new(1, second, secondBound)));
        Assert.Equal(-order, TrendPoint.Order(new(0, second, secondBound), new(1, first, firstBound)));
    }

    [Fact]
    public void A_bound_makes_a_rise_less_sure_never_more() => Gen.Select(Gen.Int[0, 14], Gen.Int[15, 40]).ForAll((which, n) =>
    {
        TrendPoint[] points = Series([.. Enumerable.Range(0, n).Select(day => (double)day)]);
        double before = MannKendall.Of(points).P;
        points[which] = points[which] with { Bound = Bound.Above };
        Assert.True(MannKendall.Of(points).P >= before);
    });

    [Fact]
    public void Values_of_one_time_are_not_ordered() =>
        Assert.Equal(0, MannKendall.Of([new TrendPoint(1, 1), new TrendPoint(1, 2)]).S);

    [Fact]
    public void What_never_changes_has_no_trend()
    {
        var test = MannKendall.Of(Series(5, 5, 5, 5, 5, 5));
        Assert.Equal((0, 0.0, 0.0, 1.0), (test.S, test.Variance, test.Z, test.P));
    }
}
