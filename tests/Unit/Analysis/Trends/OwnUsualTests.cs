using HealthNotes.Analysis;
using HealthNotes.Analysis.Findings;
using HealthNotes.Analysis.Trends;
using HealthNotes.Record.Courses;
using static HealthNotes.Tests.Analysis.Trends.Drawn;

namespace HealthNotes.Tests.Analysis.Trends;

public class OwnUsualTests
{
    private static readonly CourseKey Asleep = new("rr", "asleep");

    private static string[] Slept(params int[] perHalfMinute) => [.. perHalfMinute.Select(count => $"rr {count}/30s asleep")];

    [Fact]
    public void A_single_high_count_asleep_asks_for_a_repeat()
    {
        NoteFinding found = One("own-usual", Dog + Every(3, Slept(9, 9, 8, 9, 9, 12)));
        Assert.Equal(FindingLevel.Watch, found.Level);
        Assert.Contains("33% above this pet's own usual of 18 a minute (5 readings since 2026-11-05)", found.Message, StringComparison.Ordinal);
        Assert.Contains("Count again in 4 to 6 hours", found.Message, StringComparison.Ordinal);
        Assert.Equal(6, found.Evidence.Length);
    }

    [Fact]
    public void A_repeated_one_is_a_reason_to_call() =>
        Assert.Equal(["2026-11-20 call"], By("own-usual", Dog + Every(1, Slept(9, 9, 8, 9, 9, 12, 12))));

    [Theory]
    [InlineData("08:00 rr 12/30s asleep|12:00 rr 12/30s asleep", "call")] // exactly four hours apart
    [InlineData("08:00 rr 12/30s asleep|11:59 rr 12/30s asleep", "watch")]
    [InlineData("rr 12/30s asleep|rr 12/30s asleep", "watch")] // no times: they may be minutes apart
    [InlineData("08:00 rr 12/30s asleep|10:00 rr 9/30s asleep|14:00 rr 12/30s asleep", "watch")] // calm in between
    [InlineData("08:00 rr 12/30s asleep|10:00 rr 12/30s asleep|12:30 rr 12/30s asleep", "call")]
    public void A_repeat_counts_when_it_is_four_hours_later_and_nothing_calm_lies_between(string day, string last)
    {
        NoteAnalysis analysis = MarkedFindings.Read(Dog + Every(1, [.. Slept(9, 9, 8, 9, 9), day]));
        Assert.Equal(last, analysis.Findings.Last(finding => finding.Rule == "own-usual").Level.ToString().ToLowerInvariant());
    }

    [Fact]
    public void A_high_count_three_months_before_is_no_repeat() =>
        Assert.Equal(["2026-08-20 watch", "2026-11-20 watch"], By("own-usual", Dog
            + string.Concat(Enumerable.Range(1, 6).Select(n => Day(new DateOnly(2026, 8, n), "rr 9/30s asleep")))
            + Day(new DateOnly(2026, 8, 20), "rr 12/30s asleep") + Day(new DateOnly(2026, 11, 20), "rr 12/30s asleep")));

    [Theory]
    [InlineData("four earlier readings are too few", 9, 9, 8, 9, 12)]
    [InlineData("a fifth over the usual is not reached", 10, 10, 10, 10, 10, 11)]
    [InlineData("below 20 a minute nothing is reported", 7, 7, 7, 7, 7, 9)]
    [InlineData("slower is not spoken of", 12, 12, 12, 12, 12, 6)]
    [InlineData("a pet whose counts scatter", 8, 9, 10, 11, 12, 12, 13)]
    [InlineData("nothing changed", 9, 9, 9, 9, 9, 9, 9)]
    public void Silent_where(string why, params int[] counts) => Assert.True(By("own-usual", Dog + Every(3, Slept(counts))).Length == 0, why);

    [Fact]
    public void A_short_count_that_one_breath_less_would_make_usual_is_silent()
    {
        string[] before = Slept(10, 10, 10, 10, 10);
        Assert.Empty(By("own-usual", Cat + Every(3, [.. before, "rr 6/15s asleep"])));
        Assert.Empty(By("own-usual", Cat + Every(3, [.. before, "rr 12/30s asleep"])));
        Assert.Single(By("own-usual", Cat + Every(3, [.. before, "rr 13/30s asleep"])));
        Assert.Single(By("own-usual", Cat + Every(3, [.. before, "rr 24 asleep"]))); // counted over a full minute
    }

    /// <summary>Thousands of counts of 8, 9 or 10 in 30 seconds are the same breathing.</summary>
    [Fact]
    public void Years_of_ordinary_counts_are_silent()
    {
        var random = new Random(1);
        string note = Dog + string.Concat(Enumerable.Range(0, 1500).Select(day => Day(new DateOnly(2022, 1, 1).AddDays(day),
            $"rr {random.Next(8, 11)}/30s asleep|hr {random.Next(18, 22)}/15s|temp 38.{random.Next(3, 8)}C rectal")));
        Assert.Empty(By("own-usual", note));
        Assert.Empty(MarkedFindings.Read(note).Findings.Where(finding => finding.Rule.EndsWith("-trend", StringComparison.Ordinal)));
    }

    /// <summary>Most counts are equal, so that their middle distance is nothing; the others still tell that they scatter.</summary>
    [Fact]
    public void Counts_that_are_mostly_equal_scatter_nevertheless() =>
        Assert.DoesNotContain(By("own-usual", Dog + Every(9, Slept(9, 9, 9, 9, 10, 9, 8, 9, 10, 9, 8, 9, 11, 11))), found => found.EndsWith("call", StringComparison.Ordinal));

    /// <summary>By chance alone the higher counts scatter more: three standard deviations of the counts themselves would be passed here.</summary>
    [Fact]
    public void Counts_that_scatter_by_chance_are_compared_by_their_roots() =>
        Assert.Empty(By("own-usual", Dog + Every(3, Slept(9, 12, 6, 8, 11, 7, 10, 13, 5, 9, 8, 12, 10, 6, 9, 18))));

    [Fact]
    public void A_few_high_counts_do_not_become_usual_quickly() =>
        Assert.Contains("own usual of 18 a minute", One("own-usual", Dog + Every(7, Slept(9, 9, 9, 9, 9, 9, 9, 9, 12, 12, 12, 12))).Message, StringComparison.Ordinal);

    [Fact]
    public void Readings_of_the_same_day_are_no_usual_for_it() =>
        Assert.Empty(By("own-usual", Dog + Every(1, "rr 9/30s asleep|rr 9/30s asleep|rr 9/30s asleep", "rr 9/30s asleep|rr 9/30s asleep|rr 12/30s asleep")));

    [Fact]
    public void What_the_vet_wrote_goes_before() =>
        Assert.Empty(By("own-usual", Dog + "usual rr 16-26 asleep per vet 2026-01-20\n" + Every(3, Slept(9, 9, 8, 9, 9, 12))));

    [Fact]
    public void Awake_counts_are_not_mixed_with_sleeping_ones() =>
        Assert.Empty(By("own-usual", Dog + Every(3, [.. Slept(8, 8, 8, 8, 8), "rr 13/30s rest"])));

    [Fact]
    public void Ear_and_rectal_are_apart()
    {
        string[] rectal = [.. Enumerable.Repeat("temp 38.6C rectal", 6)];
        Assert.Empty(By("own-usual", Dog + Every(3, [.. rectal, "temp 37.8C ear"])));
        Assert.Equal(["2026-11-20 info"], By("own-usual", Dog + Every(3, [.. rectal, "temp 37.9C rectal"])));
        Assert.Empty(By("own-usual", Dog + Every(3, [.. rectal, "temp 38.0C rectal"])));
    }

    [Fact]
    public void A_pulse_is_compared_wherever_it_was_felt()
    {
        string[] pulses = ["hr 20/15s", "hr 20/15s chest", "hr 20/15s thigh", "hr 21/15s", "hr 20/15s chest"];
        Assert.Equal(["2026-11-20 info"], By("own-usual", Dog + Every(9, [.. pulses, "hr 27/15s thigh"])));
        Assert.Equal(["2026-11-20 watch"], By("own-usual", Dog + Every(9, [.. pulses, "hr 34/15s thigh"])));
        Assert.Empty(By("own-usual", Dog + Every(9, [.. pulses, "hr 24/15s thigh"])));
        Assert.Empty(By("own-usual", Dog + Every(9, [.. pulses, "hr 40/15s excited"])));
    }

    [Fact]
    public void Fright_at_the_clinic_is_neither_usual_nor_judged()
    {
        string home = Every(9, "hr 30/15s", "hr 31/15s", "hr 30/15s", "hr 30/15s", "hr 31/15s");
        string clinic = Day(new DateOnly(2026, 11, 22), "hr 44/15s");
        Assert.Single(By("own-usual", Cat + home + clinic));
        Assert.Empty(By("own-usual", Cat + home + clinic.Replace("log", "visit", StringComparison.Ordinal)));
        Assert.Empty(By("own-usual", Cat + home.Replace("log", "visit", StringComparison.Ordinal) + clinic));
    }

    [Fact]
    public void Bounds_are_no_part_of_the_usual_but_can_be_past_it()
    {
        Assert.Empty(By("own-usual", Dog + Every(3, [.. Slept(9, 9, 8, 9), "rr <20 asleep", "rr 12/30s asleep"])));
        Assert.Equal(["2026-11-20 watch"], By("own-usual", Dog + Every(3, [.. Slept(9, 9, 8, 9, 9), "rr >24 asleep"])));
        Assert.Empty(By("own-usual", Dog + Every(3, [.. Slept(9, 9, 8, 9, 9), "rr <40 asleep"])));
    }

    [Fact]
    public void A_puppy_s_pulse_is_no_usual() =>
        Assert.Empty(By("own-usual", Dog.Replace("2020-05-01", "2026-02-01", StringComparison.Ordinal) + Every(14, "hr 40/15s", "hr 39/15s", "hr 40/15s", "hr 40/15s", "hr 39/15s", "hr 24/15s")));

    [Fact]
    public void Units_change_no_level()
    {
        string[] celsius = ["temp 37.7C rectal", "temp 37.7C rectal", "temp 37.8C rectal", "temp 37.7C rectal", "temp 37.6C rectal", "temp 38.9C rectal"];
        string[] fahrenheit = ["temp 99.86F rectal", "temp 99.86F rectal", "temp 100.04F rectal", "temp 99.86F rectal", "temp 99.68F rectal", "temp 102.02F rectal"];
        string[] found = By("own-usual", Dog + Every(3, celsius));
        Assert.Equal(["2026-11-20 watch"], found);
        Assert.Equal(found, By("own-usual", Dog + Every(3, fahrenheit)));
    }

    [Fact]
    public void The_usual_of_a_day_can_be_asked_for()
    {
        NoteAnalysis analysis = MarkedFindings.Read(Dog + Every(3, Slept(9, 9, 8, 9, 10, 9)));
        OwnUsual usual = OwnUsual.For(analysis.Record.Of(Asleep), new DateOnly(2026, 11, 25))!;
        Assert.Equal((18m, 6, new DateOnly(2026, 11, 5)), (usual.Median, usual.Count, usual.Since));
        Assert.Equal(24.14m, decimal.Round(usual.High, 2)); // readings a count apart: 3.6 deviations, and more as six readings hardly tell them
        Assert.Null(OwnUsual.For(analysis.Record.Of(Asleep), new DateOnly(2026, 11, 17)));
        Assert.Null(OwnUsual.For(analysis.Record.Of(CourseKey.Weight), new DateOnly(2026, 11, 25)));
        Assert.Null(OwnUsual.For(analysis.Record.Of(Asleep), DateOnly.MinValue));
    }

    [Fact]
    public void Recent_readings_weigh_more()
    {
        string old = string.Concat(Enumerable.Range(1, 9).Select(n => Day(new DateOnly(2025, 12, n), "rr 8/30s asleep")));
        string now = string.Concat(Enumerable.Range(1, 6).Select(n => Day(new DateOnly(2026, 11, n), "rr 9/30s asleep")));
        Assert.Equal(18m, OwnUsual.For(MarkedFindings.Read(Dog + old + now).Record.Of(Asleep), new DateOnly(2026, 11, 25))!.Median);
    }
}
