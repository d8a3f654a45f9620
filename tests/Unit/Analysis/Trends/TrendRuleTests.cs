using System.Collections.Immutable;
using CsCheck;
using HealthNotes.Analysis;
using HealthNotes.Analysis.Findings;
using HealthNotes.Analysis.Trends;
using HealthNotes.Grammar.Notes;
using HealthNotes.Record.Courses;
using HealthNotes.Tests.Support;
using static HealthNotes.Tests.Analysis.Trends.Drawn;

namespace HealthNotes.Tests.Analysis.Trends;

public class TrendRuleTests
{
    private static readonly int[] Slow = [9, 9, 10, 10, 11, 11, 12, 13, 13, 14];

    private static string[] Slept(IEnumerable<int> perHalfMinute) => [.. perHalfMinute.Select(count => $"rr {count}/30s asleep")];

    [Fact]
    public void A_breathing_rate_that_climbs_slowly_is_said_once_at_its_last_count()
    {
        NoteFinding found = One("rr-trend", Dog + Every(30, Slept(Slow)));
        Assert.Equal(FindingLevel.Watch, found.Level);
        Assert.Matches("^Breathing rate asleep has been rising since 2026-02-23: about 1[.][12][0-9]? a minute each month \\(95% interval (0[.]9|1)[0-9.]* to 1[.][0-9]+\\), 10 days with readings, from about 1[78][0-9.]* to 2[78][0-9.]* a minute[.] Worth watching[.]$", found.Message);
        Assert.Equal(10, found.Evidence.Length);
    }

    [Fact]
    public void A_fall_is_only_to_know() => Assert.Equal(["2026-11-20 info"], By("rr-trend", Dog + Every(30, Slept(Slow.Reverse()))));

    [Theory]
    [InlineData("too few", 30, 9, 10, 11, 12, 13, 14, 15)]
    [InlineData("too short", 5, 9, 9, 10, 10, 11, 11, 12, 13, 13, 14)]
    [InlineData("too little", 30, 10, 10, 10, 10, 10, 10, 11, 11, 11, 11)]
    [InlineData("up and down", 30, 9, 12, 9, 12, 9, 12, 9, 12, 9, 12)]
    [InlineData("one odd count at the end", 30, 9, 9, 9, 9, 9, 9, 9, 9, 9, 16)]
    [InlineData("no change", 30, 9, 9, 9, 9, 9, 9, 9, 9, 9, 9)]
    public void Silent_where_it_is(string why, int days, params int[] counts) => Assert.True(By("rr-trend", Dog + Every(days, Slept(counts))).Length == 0, why);

    [Fact]
    public void Many_readings_of_one_day_are_one() =>
        Assert.Empty(By("rr-trend", Dog + Every(70, "rr 9/30s asleep|rr 9/30s asleep|rr 10/30s asleep|rr 10/30s asleep", "rr 12/30s asleep|rr 13/30s asleep|rr 14/30s asleep|rr 15/30s asleep")));

    [Fact]
    public void What_was_counted_at_the_clinic_is_left_out()
    {
        string note = Dog + Every(30, Slept(Slow).Select(line => line.Replace(" asleep", "", StringComparison.Ordinal)).ToArray());
        Assert.Equal(["2026-11-20 watch"], By("rr-trend", note));
        Assert.Empty(By("rr-trend", note.Replace(" log\n", " visit\n", StringComparison.Ordinal)));
    }

    [Fact]
    public void A_pulse_counted_here_and_there_gives_one_trend() => Assert.Equal(["2026-11-20 watch"], By("hr-trend",
        Dog + Every(25, "hr 18/15s", "hr 19/15s chest", "hr 19/15s thigh", "hr 20/15s", "hr 21/15s chest", "hr 21/15s thigh", "hr 22/15s", "hr 23/15s chest", "hr 24/15s thigh")));

    [Fact]
    public void A_puppy_s_pulse_that_slows_is_no_trend() => Assert.Empty(By("hr-trend",
        Dog.Replace("2020-05-01", "2026-02-01", StringComparison.Ordinal) + Every(25, "hr 40/15s", "hr 38/15s", "hr 36/15s", "hr 34/15s", "hr 32/15s", "hr 30/15s", "hr 28/15s", "hr 26/15s", "hr 24/15s")));

    [Fact]
    public void Glucose_in_either_unit_gives_the_same()
    {
        double[] values = [4.5, 4.6, 4.8, 5, 5.2, 5.5, 5.8, 6.2, 6.6]; // within the range, whose finding would speak instead
        string[] mmol = By("glucose-trend", Dog + Every(7, [.. values.Select(v => FormattableString.Invariant($"glucose {v}mmol/L"))]));
        Assert.Equal(["2026-11-20 watch"], mmol);
        Assert.Equal(mmol, By("glucose-trend", Dog + Every(7, [.. values.Select(v => FormattableString.Invariant($"glucose {v * 18.016:0.###}mg/dL"))])));
        Assert.Empty(By("glucose-trend", Dog + Every(7, [.. values.Select((v, index) => FormattableString.Invariant($"glucose {v}mmol/L {(index % 2 == 0 ? "before-food" : "after-food")}"))])));
    }

    [Fact]
    public void Weight_in_either_unit_gives_the_same()
    {
        double[] values = [20, 19.85, 19.7, 19.55, 19.4, 19.25, 19.1, 18.95];
        Assert.Equal(["2026-11-20 info"], By("weight-trend", Dog + Every(40, [.. values.Select(v => FormattableString.Invariant($"weight {v}kg"))])));
        Assert.Equal(["2026-11-20 info"], By("weight-trend", Dog + "units us\n" + Every(40, [.. values.Select(v => FormattableString.Invariant($"weight {v / 0.45359237:0.####}lb"))])));
        Assert.Empty(By("weight-trend", Dog + Every(40, [.. values.Select(v => FormattableString.Invariant($"weight {20 - ((20 - v) / 2):0.###}kg"))])));
    }

    [Fact]
    public void A_loss_that_is_spoken_of_takes_the_place_of_the_trend()
    {
        string note = Cat + Every(30, "weight 5kg", "weight 4.95kg", "weight 4.9kg", "weight 4.8kg", "weight 4.7kg", "weight 4.6kg", "weight 4.5kg");
        Assert.Empty(By("weight-trend", note));
        Assert.Equal(["2026-11-20 call"], By("weight-loss", note));
    }

    [Fact]
    public void Pain_up_is_watched_and_pain_down_is_to_know()
    {
        Assert.Equal(["2026-11-20 watch"], By("pain-trend", Dog + Every(7, "pain 0/10", "pain 1/10", "pain 1/10", "pain 2/10", "pain 2/10", "pain 3/10", "pain 3/10")));
        Assert.Equal(["2026-11-20 info"], By("pain-trend", Dog + Every(7, "pain 3/10", "pain 3/10", "pain 2/10", "pain 2/10", "pain 1/10", "pain 1/10", "pain 0/10")));
        Assert.Empty(By("pain-trend", Dog + Every(7, "pain 1/10", "pain 2/10", "pain 1/10", "pain 1/10", "pain 2/10", "pain 1/10", "pain 2/10")));
    }

    [Fact]
    public void Body_condition_in_fives_and_nines_is_one_course() => Assert.Equal(["2026-11-20 info"], By("bcs-trend",
        Dog + Every(40, "bcs 2/5", "bcs 3/9", "bcs 3/9", "bcs 2.5/5", "bcs 4/9", "bcs 4/9", "bcs 3/5", "bcs 5/9")));

    [Fact]
    public void Water_is_added_up_by_day_and_divided_by_the_weight()
    {
        string weight = Day(new DateOnly(2026, 5, 1), "weight 4kg");
        string[] days = [.. Enumerable.Range(0, 7).Select(n => $"08:00 water {50 + (10 * n)}ml|18:00 water 50ml")];
        Assert.Equal(["2026-11-20 watch"], By("water-trend", Cat + weight + Every(10, days)));
        Assert.Empty(By("water-trend", Cat + Every(10, days))); // never weighed
        NoteAnalysis analysis = MarkedFindings.Read(Cat + weight + Every(10, days));
        ImmutableArray<DayValue> values = WaterPerDay.Of(analysis.Record.Of(new CourseKey("water", "")), MarkedFindings.Today, analysis.Pet.WeightOn, TrendRow.For("water")!);
        Assert.Equal([25m, 27.5m, 30m, 32.5m, 35m, 37.5m, 40m], values.Select(value => value.Value));
    }

    [Fact]
    public void A_weight_that_changes_moves_the_water_of_its_day() => Assert.Empty(By("water-trend",
        Dog + Every(10, [.. Enumerable.Range(0, 7).Select(n => $"weight {10 + n}kg|water {500 + (50 * n)}ml")])));

    [Fact]
    public void A_day_with_a_bound_gives_no_amount() => Assert.Empty(By("water-trend",
        Cat + Day(new DateOnly(2026, 5, 1), "weight 4kg") + Every(10, "water 100ml", "water 110ml", "water 120ml", "water 130ml", "water 140ml", "water >150ml")));

    [Fact]
    public void Bounds_count_in_the_test_and_give_no_slope()
    {
        string[] counts = Slept(Slow);
        Assert.Empty(By("rr-trend", Dog + Every(30, [.. counts[..7], "rr >20 asleep", "rr >20 asleep", "rr >20 asleep"])));
        Assert.Single(By("rr-trend", Dog + Every(30, [.. counts[..8], "rr >27 asleep", "rr >27 asleep", "rr >27 asleep"])));
    }

    [Fact]
    public void The_order_in_the_file_changes_nothing() => Gen.Shuffle(Enumerable.Range(0, 10).ToArray()).ForAll(order =>
    {
        string[] entries = [.. Slow.Select((count, index) => Day(new DateOnly(2026, 1, 20).AddDays(30 * index), $"rr {count}/30s asleep"))];
        Assert.Equal(["2026-10-17 watch"], By("rr-trend", Dog + string.Concat(order.Select(index => entries[index]))));
    });

    [Fact]
    public void A_trend_can_be_drawn()
    {
        NoteAnalysis analysis = MarkedFindings.Read(Dog + Every(30, Slept(Slow)));
        Trend trend = Trend.Of(analysis.Record.Of(new CourseKey("rr", "asleep")), MarkedFindings.Today)!;
        Assert.True(trend.IsClear);
        Assert.Equal(trend.Start, trend.At(trend.Since), 1e-9);
        Assert.Equal(trend.End, trend.At(trend.Until), 1e-9);
        Assert.InRange(trend.PerMonth, trend.LowPerMonth, trend.HighPerMonth);
        Assert.Null(Trend.Of(analysis.Record.Of(CourseKey.Weight), MarkedFindings.Today));
        Assert.Null(Trend.Of(analysis.Record.Of(CourseKey.Checks), MarkedFindings.Today));
    }

    [Theory]
    [InlineData("hazel-puppy")]
    [InlineData("juniper-after-surgery")]
    public void Growth_and_ten_days_of_home_care_are_silent(string sample)
    {
        string text = File.ReadAllText(Repository.PathOf($"samples/{sample}.hnote"));
        string[] mine = ["own-usual", "weight-loss", "weight-gain", "weight-plan", "ideal-weight"];
        Assert.Empty(NoteAnalysis.Of(Note.Read(text), MarkedFindings.Today).Findings.Where(finding => mine.Contains(finding.Rule) || finding.Rule.EndsWith("-trend", StringComparison.Ordinal)));
    }

    [Fact]
    public void The_old_cat_loses_weight_and_the_dog_s_breathing_rises()
    {
        string Findings(string sample) => string.Join('\n', NoteAnalysis.Of(Note.Read(File.ReadAllText(Repository.PathOf($"samples/{sample}.hnote"))), MarkedFindings.Today)
            .Findings.Select(finding => $"{finding.Rule} {finding.Level}"));
        Assert.Contains("weight-loss Call", Findings("tansy"), StringComparison.Ordinal);
        Assert.Contains("rr-trend Watch", Findings("tansy"), StringComparison.Ordinal); // just above 30, as its counts scatter: the rise speaks
        Assert.Contains("usual-range Watch", Findings("marlow"), StringComparison.Ordinal); // one finding for one cause
        Assert.DoesNotContain("weight-gain", Findings("marlow"), StringComparison.Ordinal);
    }
}
