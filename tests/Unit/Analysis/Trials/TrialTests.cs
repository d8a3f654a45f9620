using HealthNotes.Trials;

namespace HealthNotes.Tests.Analysis.Trials;

/// <summary>
/// The goals for false alarms and delays on notes with known truth, at a size for every build. A few notes miss a rate by chance:
/// three standard errors are allowed. `tests/trials.sh` runs the full size without.
/// </summary>
public class TrialTests
{
    private const int Notes = 20;
    private const int Seed = 20261130;
    private const double StandardErrors = 3;

    /// <summary>So few percent found can't be told from none by so few notes.</summary>
    private const double TooFew = 31;

    public static TheoryData<string> Asked => [.. AllSeries.Table.Where(series => !(series.Found?.Asked < TooFew)).Select(series => series.Name)];

    [Theory]
    [MemberData(nameof(Asked))]
    public void A_series_meets_its_goals(string name)
    {
        var outcome = Outcome.Of(AllSeries.Table.Single(series => series.Name == name), Notes, Seed);
        Assert.True(!outcome.Missed(StandardErrors).Any(), string.Join("; ", outcome.Missed(StandardErrors)) + $" [{outcome.Rules}]");
    }

    [Fact]
    public void The_same_seed_gives_the_same_notes() =>
        Assert.Equal(AllSeries.Table.Select(series => Text(series.Make(new Draw(Seed)))), AllSeries.Table.Select(series => Text(series.Make(new Draw(Seed)))));

    private static string Text(TrialNote note) => note.Opening + string.Concat(note.Entries.Select(entry => entry.Text));
}
