using HealthNotes.Analysis;
using HealthNotes.Grammar.Notes;
using HealthNotes.Record.Courses;

namespace HealthNotes.Tests.Analysis.HomeCare;

/// <summary>Doses given, missed, late, doubled and after the end. Limits: common practice, no source.</summary>
public class DoseTests
{
    private const string Dog = "pet Rowan\nspecies dog\nborn 2020-05-01\nadult-weight 20kg\n";

    private static string[] Rules(string text) => [.. MarkedFindings.Read(text).Findings.Where(f => f.Rule.StartsWith("dose", StringComparison.Ordinal) || f.Rule == "course-end")
        .Select(f => $"{f.Rule} {f.Level} {f.Line + 1}")];

    /// <summary>Days of November, each with its lines.</summary>
    private static string Days(string plan, params (int Day, string[] Lines)[] days) =>
        Dog + plan + "\n" + string.Concat(days.Select(day => $"2026-11-{day.Day:00} log\n" + string.Concat(day.Lines.Select(line => $"  {line}\n"))));

    private static (int, string[])[] Every(int from, int to, params string[] lines) => [.. Enumerable.Range(from, to - from + 1).Select(day => (day, lines))];

    [Fact]
    public void Twenty_days_of_all_doses_are_silent() =>
        Assert.Empty(Rules(Days("med benazepril 5mg every 12h from 2026-11-01", Every(1, 20, "08:00 gave benazepril 5mg", "20:10 gave Benazepril 5mg"))));

    [Theory]
    [InlineData("08:00 gave x 5mg", "19:59 gave x 5mg", true)] // under half of a day
    [InlineData("08:00 gave x 5mg", "20:00 gave x 5mg", false)]
    [InlineData("gave x 5mg", "gave x 5mg", true)]
    [InlineData("08:00 gave x 2.5mg", "08:05 gave x 2.5mg", false)] // two halves
    [InlineData("08:00 gave x 0.0025g", "08:05 gave x 2500ug", false)]
    [InlineData("08:00 gave x 1 tablet", "08:05 gave x 1 tablet", true)]
    [InlineData("08:00 gave x 1 drop in-eye", "08:01 gave x 1 drop in-eye", false)]
    [InlineData("08:00 gave x 5mg", "08:05 gave y 5mg", false)]
    [InlineData("08:00 gave x 5mg", "08:05 missed x", false)]
    public void A_dose_given_twice_is_a_reason_to_phone(string first, string second, bool doubled) =>
        Assert.Equal(doubled, Rules(Days("med x 5mg every 24h from 2026-11-01", (20, [first, second]))).Contains("dose-doubled Call 8"));

    [Fact]
    public void Three_without_times_where_two_are_planned() =>
        Assert.Contains("dose-doubled Call 9", Rules(Days("med x 5mg every 12h from 2026-11-01", (20, ["gave x 5mg", "gave x 5mg", "gave x 5mg"]))));

    [Theory]
    [InlineData("med x 5mg every 24h as-needed")]
    [InlineData("med x 5mg")]
    [InlineData("known murmur")]
    public void Without_an_interval_nothing_is_doubled_late_or_missed(string plan) =>
        Assert.Empty(Rules(Days(plan, (10, ["08:00 gave x 5mg", "08:05 gave x 5mg"]), (11, ["08:00 gave x 5mg"]), (12, ["08:00 gave x 5mg"]), (13, ["ate all"]), (14, ["23:00 gave x 5mg"]))));

    [Fact]
    public void One_missed_is_something_to_know_and_two_running_are_worth_watching()
    {
        Assert.Equal(["dose-missed Info 7"], Rules(Days("med x 5mg every 24h from 2026-11-01", (20, ["missed x"]), (21, ["gave x 5mg"]), (23, ["gave x 5mg"]))));
        Assert.Equal(["dose-missed Watch 9"], Rules(Days("med x 5mg every 24h from 2026-11-01", (20, ["missed x"]), (21, ["missed x"]), (23, ["gave x 5mg"]))));
        Assert.Equal(["dose-missed Watch 9"], Rules(Days("med x 5mg every 24h from 2026-11-01", (20, ["missed x"]), (21, ["missed x"]))));
    }

    [Fact]
    public void A_dose_not_written_is_told_where_doses_are_written() =>
        Assert.Equal(["dose-missed Info 21"], Rules(Days("med x 5mg every 12h from 2026-11-01",
            [.. Every(1, 5, "08:00 gave x 5mg", "20:00 gave x 5mg"), (6, ["20:00 gave x 5mg", "ate all"]), (7, ["08:00 gave x 5mg", "20:00 gave x 5mg"])])));

    [Theory]
    [InlineData(new[] { 1, 8, 15, 22 })] // once a week
    [InlineData(new[] { 1, 2, 10, 11, 20, 21 })]
    public void Who_writes_doses_now_and_then_is_left_alone(int[] days) =>
        Assert.Empty(Rules(Days("med x 5mg every 12h from 2026-11-01", [.. days.Select(day => (day, new[] { "08:00 gave x 5mg", "ate all" }))])));

    [Fact]
    public void Days_without_any_entry_say_nothing() =>
        Assert.Empty(Rules(Days("med x 5mg every 24h from 2026-11-01", [.. Every(1, 8, "gave x 5mg"), .. Every(12, 15, "gave x 5mg")])));

    [Theory]
    [InlineData("until 2026-11-10", 10, false)]
    [InlineData("until 2026-11-10", 11, true)]
    [InlineData("from 2026-11-04 for 7d", 10, false)] // the fourth to the tenth
    [InlineData("from 2026-11-04 for 7d", 11, true)]
    public void A_dose_after_the_last_day(string plan, int day, bool after) =>
        Assert.Equal(after, Rules(Days($"med x 5mg every 24h {plan}", (day, ["gave x 5mg"]))).Contains("dose-after-end Watch 7"));

    [Fact]
    public void A_stop_ends_it_and_a_new_plan_begins_it_again()
    {
        string stopped = Days("med x 5mg every 24h from 2026-11-01", (5, ["12:00 stop x", "13:00 gave x 5mg"]), (6, ["gave x 5mg"]));
        Assert.Equal(["dose-after-end Watch 10"], Rules(stopped)); // two of them, said once
        Assert.Empty(Rules(stopped.Replace("2026-11-06 log\n", "2026-11-06 log\n  med x 5mg every 24h\n", StringComparison.Ordinal).Replace("13:00 gave x 5mg", "ate all", StringComparison.Ordinal)));
    }

    [Theory]
    [InlineData("gave x 6mg", true)]
    [InlineData("gave x 10mg", false)] // twice as much: a reason to phone
    [InlineData("gave x 5mg", false)]
    [InlineData("gave x 0.005g", false)]
    [InlineData("gave x 1/2 tablet", false)] // not to be compared
    [InlineData("gave x", false)]
    public void An_amount_that_is_not_the_plans(string line, bool other) =>
        Assert.Equal(other, Rules(Days("med x 5mg every 24h from 2026-11-01", (20, [line]))).Contains("dose-amount Watch 7"));

    [Fact]
    public void A_new_plan_takes_the_place_of_the_old() =>
        Assert.Empty(Rules(Days("med x 5mg every 24h from 2026-11-01", (10, ["gave x 5mg"]), (11, ["med x 10mg every 24h", "gave x 10mg"]), (12, ["gave x 10mg"]))));

    [Theory]
    [InlineData("2026-11-20 log\n  weight 18kg\n", true)] // 5/18 against 5/20: 11% more
    [InlineData("2026-11-20 log\n  weight 18.3kg\n", false)]
    [InlineData("2026-11-20 log\n  weight 40.3lb\n", false)]
    [InlineData("2026-11-20 log\n  weight <10kg\n", false)]
    public void The_dose_for_each_kilogram_changes_with_the_weight(string later, bool told)
    {
        string text = Dog + "2026-01-10 visit\n  weight 20kg\n  med x 5mg every 24h\n" + later;
        Assert.Equal(told, Rules(text).Contains("dose-drift Info 9"));
    }

    [Theory]
    [InlineData("for 7d", "2026-11-20", true)] // ends on the 26th, today is the 25th
    [InlineData("for 7d", "2026-11-15", true)] // ended on the 21st, doses left
    [InlineData("for 30d", "2026-11-20", false)]
    [InlineData("for 7d", "2026-10-01", false)]
    public void A_course_that_ends(string length, string from, bool told)
    {
        string text = Dog + $"med x 5mg every 24h from {from} {length}\n{from} log\n  gave x 5mg\n";
        Assert.Equal(told, Rules(text).Contains("course-end Info 5"));
    }

    [Fact]
    public void Three_hundred_late_doses_are_not_three_hundred_findings()
    {
        string text = Dog + "med x 5mg every 12h from 2026-01-01\n" + string.Concat(Enumerable.Range(0, 300).Select(day =>
            $"{new DateOnly(2026, 1, 2).AddDays(day):yyyy-MM-dd} log\n  {(day % 2 == 0 ? "08" : "13")}:00 gave x 5mg\n  20:00 gave x 5mg\n"));
        Assert.InRange(Rules(text).Length, 1, 2);
    }

    [Fact]
    public void A_medicine_is_one_whatever_the_hyphen() =>
        Assert.Equal(3, NoteAnalysis.Of(Note.Read(Days("med ear-drops 2 drops every 24h", (1, ["gave ear-drops 2 drops"]), (2, ["gave Ear drops 2 drops", "gave EAR-DROPS 2 drops"]))), MarkedFindings.Today)
            .Record.Of(CourseKey.Doses("gave", "Ear-Drops")).Lines.Length);
}
