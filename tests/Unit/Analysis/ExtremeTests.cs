using HealthNotes.Analysis;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Notes;
using HealthNotes.Rendering;
using HealthNotes.Rendering.Pages;
using HealthNotes.Rendering.Sheet;

namespace HealthNotes.Tests.Analysis;

/// <summary>Numbers and days that nobody means, found by the random tests: each once stopped the whole program.</summary>
public class ExtremeTests
{
    private const string Dog = "pet A\nspecies dog\nborn 2020\nadult-weight 27kg\n";

    [Theory]
    [InlineData("2026-11-25", "pet A\n2026-11-18 check\n  weight 0kg\n2026-11-19 check\n  weight 0kg\n2026-11-20 check\n  weight 0kg\n2026-11-21 check\n  weight 20kg\n")]
    [InlineData("2026-11-25", "pet A\n2026-11-18 check\n  weight 0kg\n  drank 600ml\n")]
    [InlineData("2026-11-25", "pet A\nmed benazepril 0mg tablets, 0 tablet every 24h from 2026-11-01\n")]
    [InlineData("2026-11-25", Dog + "2026-11-18 check\n  lump L-flank @a\ufffeb 12mm\n  lump chest @\uffff 12mm\n")]
    [InlineData("2026-11-25", "pet \ufffe\uffff\nspecies dog\n2026-11-18 check\n  lump chest 12mm \uffff\n> \ufffe\n")]
    [InlineData("9999-12-31", Dog + "home-check every 30d\n9999-12-31 check\n  weight 20kg\n  ear L wax\n  due booster in 4w\n  gave benazepril 5mg\n")]
    [InlineData("9999-01-01", Dog + "med benazepril 5mg every 24h from 9999-12-01 for 9999y\n9998-12-31 check\n  weight 20kg\n  recheck ear L in 9999y\n")]
    [InlineData("0001-01-01", Dog + "0001-01-01 check\n  weight 20kg\n  hr 18/15s\n")]
    [InlineData("0001-01-02", Dog + "home-check every 30d\nmed benazepril 5mg every 24h from 0001-01-01\n0001-01-01 check\n  weight 20kg\n  missed benazepril\n")]
    public void Nothing_stops(string today, string text)
    {
        var analysis = NoteAnalysis.Of(Note.Read(text), DateOnly.Parse(today));
        _ = (analysis.Findings, HealthNotes.Record.Due.DueList.Of(analysis.Record), HealthNotes.Record.HomeCare.CareDay.Of(analysis.Record));
        Assert.Contains("</html>", VisitPage.Html(analysis), StringComparison.Ordinal);
        Assert.Contains("</html>", CheckSheet.Html(analysis, Paper.A4), StringComparison.Ordinal);
    }

    /// <summary>Days are counted by <see cref="DayArithmetic"/> alone, which knows where time ends.</summary>
    [Theory]
    [InlineData("grammar")]
    [InlineData("server/Analysis")]
    [InlineData("server/Features")]
    [InlineData("server/Rendering")]
    public void No_day_is_counted_past_the_end_of_time(string folder) => Assert.Empty(
        from file in Directory.EnumerateFiles(Support.Repository.PathOf(folder), "*.cs", SearchOption.AllDirectories)
        where Path.GetFileName(file) is not ("DayArithmetic.cs" or "TimeAxis.cs" or "ChartText.cs") && !file.Contains("/obj/", StringComparison.Ordinal)
        from line in File.ReadLines(file)
        where line.Contains(".AddDays(", StringComparison.Ordinal) || line.Contains(".AddMonths(", StringComparison.Ordinal) || line.Contains(".AddYears(", StringComparison.Ordinal)
        select $"{Path.GetFileName(file)}: {line.Trim()}");
}
