using HealthNotes.Trials;

namespace HealthNotes.Tests.Analysis.Trials;

/// <summary>The best possible test, beside a computation that goes through every outcome.</summary>
public class BoundTests
{
    [Theory]
    [InlineData(0.1)]
    [InlineData(0.5)]
    [InlineData(5)]
    public void A_step_is_found_as_often_as_its_outcomes_say(double callsPer100) =>
        Assert.Equal(Plain([9, 9], [17, 17], callsPer100), Bound.Percent([9, 9], [17, 17], callsPer100), 4);

    [Theory]
    [InlineData(0.1)]
    [InlineData(2)]
    public void A_drift_is_found_as_often_as_its_outcomes_say(double callsPer100) =>
        Assert.Equal(Plain([4, 4, 4], [5, 7, 9], callsPer100), Bound.Percent([4, 4, 4], [5, 7, 9], callsPer100), 0.3);

    [Fact]
    public void More_false_calls_more_counts_and_a_larger_change_find_more()
    {
        double two = Bound.Percent([9, 9], [17, 17], 0.1);
        Assert.InRange(two, 59, 63); // the sum of two counts alone: 59 %
        Assert.True(Bound.Percent([9, 9], [17, 17], 0.2) > two);
        Assert.True(Bound.Percent([9, 9, 9], [17, 17, 17], 0.1) > two);
        Assert.True(Bound.Percent([9, 9], [18, 18], 0.1) > two);
    }

    [Fact]
    public void Where_nothing_changes_nothing_is_found() => Assert.Equal(0, Bound.Percent([9, 9], [9, 9], 0.1));

    /// <summary>Counts of a seeded run against the lines, one after another.</summary>
    [Fact]
    public void Published_lines_alone_call_as_often_as_counts_that_are_drawn()
    {
        var draw = new Draw(5);
        const int Counts = 1_000_000;
        int calls = 0;
        int before = 0;
        for (int index = 0; index < Counts; index++)
        {
            int now = draw.Poisson(9);
            calls += now > 20 || (now > 15 && before > 15) ? 1 : 0;
            before = now;
        }

        Assert.Equal(calls * 100.0 / Counts, Bound.LinesPer100(18, 30), 0.01);
    }

    [Fact]
    public void A_goal_beyond_the_best_possible_asks_for_a_part_of_that()
    {
        FoundGoal within = new(true, "counts", 0, 2) { Best = 61, PartOfBest = 0.5 };
        Assert.Equal(50, within.Asked);
        FoundGoal beyond = within with { Best = 40 };
        Assert.Equal(20, beyond.Asked);
        Assert.Contains("beyond 40 %", beyond.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void No_series_asks_for_more_than_is_possible() => Assert.All(AllSeries.Table, series =>
    {
        Assert.True(!(series.Found?.Asked > series.Found?.Best));
        Assert.True(!(series.Quiet?.Call < series.Quiet?.BestCall));
    });

    /// <summary>All outcomes with their likelihood ratios, sorted: the highest are called on each entry until the rate is used up.</summary>
    private static double Plain(double[] flat, double[] changed, double callsPer100)
    {
        List<(double Ratio, double Still, double NotFound)> outcomes = [(0, 1, 1)];
        double found = 0;
        for (int entry = 0; entry < flat.Length; entry++)
        {
            double[] still = Bound.Counts(flat[entry]);
            double[] now = Bound.Counts(changed[entry]);
            double each = Math.Log(changed[entry] / flat[entry]);
            outcomes = [.. outcomes.SelectMany(outcome => still.Take(45).Select((chance, count) =>
                (outcome.Ratio + (count * each), outcome.Still * chance, outcome.NotFound * now[count])))];

            // outcomes of one ratio are called alike
            var groups = outcomes.GroupBy(outcome => Math.Round(outcome.Ratio, 6)).OrderByDescending(group => group.Key).ToList();
            outcomes = [];
            double left = callsPer100 / 100;
            foreach (var group in groups)
            {
                double chance = group.Sum(outcome => outcome.Still);
                double part = left <= 0 ? 0 : chance <= left ? 1 : left / chance;
                left -= chance * part;
                found += group.Sum(outcome => outcome.NotFound) * part;
                outcomes.Add((group.First().Ratio, chance, group.Sum(outcome => outcome.NotFound) * (1 - part)));
            }
        }

        return found * 100;
    }
}
