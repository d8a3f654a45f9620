using CsCheck;
using HealthNotes.Analysis.Trends;
using HealthNotes.Tests.Support;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.Statistics;

namespace HealthNotes.Tests.Analysis.Trends;

/// <summary>Median and spread, against MathNet.Numerics 5.0.0 as an independent reference.</summary>
public class RobustTests
{
    private static readonly Gen<double[]> Numbers = Gen.Int[-10_000, 10_000].Select(n => n / 10.0).Array[1, 40];

    [Fact]
    public void The_median_is_that_of_the_reference() => Numbers.ForAll(values =>
        Assert.Equal(values.Median(), Robust.Median(values), 1e-9));

    [Fact]
    public void The_spread_is_that_of_the_reference() => Numbers.ForAll(values =>
    {
        double median = values.Median();
        double expected = 1.4826 * values.Select(value => Math.Abs(value - median)).Median();
        Assert.Equal(expected, (double)Robust.Spread(values.Select(value => (decimal)value).ToArray()), 1e-9);
    });

    [Fact]
    public void With_equal_weights_the_weighted_median_and_spread_are_the_plain_ones() => Gen.Select(Numbers, Gen.Double[0.1, 5]).ForAll((values, weight) =>
    {
        decimal[] plain = [.. values.Select(value => (decimal)value)];
        (decimal, double)[] weighted = [.. plain.Select(value => (value, weight))];
        Assert.Equal(Robust.Median(plain), Robust.Median(weighted));
        Assert.Equal(Robust.Spread(plain), Robust.Spread(weighted));
    });

    [Fact]
    public void A_weight_of_two_is_the_value_twice() => Gen.Int[-50, 50].Array[1, 20].ForAll(values =>
        Assert.Equal(
            Robust.Median(values.Select(value => (decimal)value).Concat(values.Take(3).Select(value => (decimal)value))),
            Robust.Median(values.Select((value, index) => ((decimal)value, index < 3 ? 2.0 : 1.0)))));

    [Fact]
    public void One_heavy_value_is_the_median() => Assert.Equal(7m, Robust.Median([(1m, 1.0), (7m, 9.0), (100m, 2.0)]));

    [Theory]
    [InlineData(2.58, 12)]
    [InlineData(3, 30)]
    [InlineData(3.9, 90)]
    public void A_limit_from_few_values_is_that_of_student_s_t(double deviations, int count) =>
        Assert.Equal(StudentT.InvCDF(0, 1, count - 1, Normal.CDF(0, 1, deviations)), Robust.OfFew(deviations, count), 0.1);

    [Fact]
    public void Values_that_are_mostly_equal_have_a_spread() =>
        Assert.Equal(1.2533 * 2 / 6, (double)Robust.WiderSpread([.. new[] { 9m, 9, 9, 9, 10, 8 }.Select(value => (value, 1.0))], 0.5m), 1e-9);
}
