using HealthNotes.Analysis;
using HealthNotes.Analysis.Findings;
using HealthNotes.Grammar.Notes;
using HealthNotes.Record.Due;

namespace HealthNotes.Tests.Analysis;

/// <summary>What falls due, and when it is overdue.</summary>
public class DueTests
{
    private static string Dog(string rest) => "pet Marlow\nspecies dog\nborn 2020-05-01\nadult-weight 15kg\n" + rest;

    private static NoteAnalysis On(DateOnly today, string text) => NoteAnalysis.Of(Note.Read(text), today);

    [Theory]
    [InlineData("", "2026-01-01 check\n  alert bright\n", "2026-02-07", false)] // 30 days and a week
    [InlineData("", "2026-01-01 check\n  alert bright\n", "2026-02-08", true)]
    [InlineData("home-check every 60d\n", "2026-01-01 check\n  alert bright\n", "2026-03-09", false)]
    [InlineData("home-check every 60d\n", "2026-01-01 check\n  alert bright\n", "2026-03-10", true)]
    [InlineData("", "2026-01-01 check\n  home-check every 10d\n", "2026-01-18", false)]
    [InlineData("", "2026-01-01 check\n  home-check every 10d\n", "2026-01-19", true)]
    [InlineData("home-check every 60d\n", "2026-01-01 check\n  home-check every 10d\n", "2026-01-19", true)]
    [InlineData("", "2026-01-01 log\n", "2026-09-08", false)] // never a check: nothing to be late with
    [InlineData("", "2026-01-01 check\n  alert bright\n2025-01-01 check\n  alert bright\n", "2026-02-07", false)] // out of order
    [InlineData("", "2026-01-01 check\n  alert bright\n2026-12-31 check\n  alert bright\n", "2026-02-08", true)] // one dated after today is a slip
    [InlineData("", "2026-01-01 check\n  alert bright\n2026-02-01 check\n  # alert\n", "2026-02-08", true)] // one that was only begun is none
    public void A_check_is_overdue_by_the_notes_or_after_a_month(string facts, string entries, string today, bool overdue) =>
        Assert.Equal(overdue, On(DateOnly.Parse(today), Dog(facts + entries)).Findings.Any(f => f.Rule == "check-overdue"));

    // At least every 6 months: UK veterinary client leaflet on weight; every 3 in old age: common practice, no source.
    [Theory]
    [InlineData("dog", "2022-05-01", "2026-01-01", "2026-07-16", false)]
    [InlineData("dog", "2022-05-01", "2026-01-01", "2026-07-17", true)]
    [InlineData("dog", "2012-05-01", "2026-01-01", "2026-04-16", false)]
    [InlineData("dog", "2012-05-01", "2026-01-01", "2026-04-17", true)]
    [InlineData("cat", "2012-05-01", "2026-01-01", "2026-04-17", true)]
    [InlineData("cat", "2022-05-01", "2026-01-01", "2026-04-17", false)]
    public void A_weighing_is_overdue_by_life_stage(string species, string born, string last, string today, bool overdue) =>
        Assert.Equal(overdue, On(DateOnly.Parse(today), $"pet X\nspecies {species}\nborn {born}\n{last} log\n  weight 4kg\n").Findings.Any(f => f.Rule == "weighing-overdue"));

    // Yearly, from 10 years on every 6 months: AAHA/AAFP Feline Life Stage Guidelines 2021, table 1.
    [Theory]
    [InlineData("cat", "2018-05-01", "2026-11-01", 365)]
    [InlineData("cat", "2016-10-31", "2026-11-01", 182)]
    [InlineData("dog", "2022-05-01", "2026-11-01", 365)] // AAHA Canine Life Stage Guidelines 2019 (from memory)
    [InlineData("dog", "2012-05-01", "2026-11-01", 182)] // AAHA Senior Care Guidelines 2023 (from memory)
    public void Visits_are_due_by_life_stage(string species, string born, string today, int days)
    {
        DueItem visit = Assert.Single(DueList.Of(On(DateOnly.Parse(today), $"pet X\nspecies {species}\nborn {born}\n2026-10-01 visit\n").Record));
        Assert.Equal((DueKind.Visit, days, new DateOnly(2026, 10, 1).AddDays(days)), (visit.Kind, visit.Every, visit.On));
    }

    [Fact]
    public void Tasks_are_due_until_they_are_done_or_looked_at()
    {
        string note = Dog("""
            due chip check 2026-12-01
            2026-10-01 log
              due booster 2026-11-10
              due nails 2026-11-11
              recheck ear L in 2w
              recheck lump L-flank @low in 2w
            2026-10-20 log
              ear L clean
              lump L-flank @high 5mm
              done nails clipped
            """);
        Assert.Equal(
            ["recheck lump L-flank @low 2026-10-15", "booster 2026-11-10", "chip check 2026-12-01"],
            DueList.Of(On(new DateOnly(2026, 11, 25), note).Record).Select(item => $"{(item.Kind == DueKind.Recheck ? "recheck " : "")}{item.What} {item.On:yyyy-MM-dd}"));
    }

    [Fact]
    public void Being_late_is_something_to_know_no_more() =>
        Assert.All(
            On(new DateOnly(2030, 1, 1), Dog("2026-01-01 check\n  weight 15kg\n  due booster 2026-02-01\n2026-01-02 visit\n")).Findings,
            finding => Assert.Equal(FindingLevel.Info, finding.Level));

    [Theory]
    [InlineData("  gums pink\n", "  gums pink\n", "  gums pink\n", true)]
    [InlineData("  gums pink\n  else ok\n", "  hr 80\n", "  gums pink\n", true)] // a measurement is still missing: the rest does not speak for it
    public void What_no_check_has_named_is_told_once(string first, string second, string third, bool told)
    {
        var findings = On(new DateOnly(2026, 11, 25), Dog($"2026-09-20 check\n{first}2026-10-20 check\n{second}2026-11-20 check\n{third}")).Findings.Where(f => f.Rule == "not-looked-at");
        Assert.Equal(told ? 1 : 0, findings.Count());
        Assert.DoesNotContain(findings, finding => finding.Message.Contains("gums", StringComparison.Ordinal));
    }
}
