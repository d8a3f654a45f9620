using HealthNotes.Analysis.Findings;
using static HealthNotes.Tests.Analysis.MarkedFindings;

namespace HealthNotes.Tests.Analysis.Lumps;

public class LumpTargetRuleTests
{
    private const string Dog = "pet Marlow\nspecies dog\nborn 2017-03\n";

    /// <summary>cRECIST v1.0 as summarised by AAHA: sums of longest diameters against the start and the smallest.</summary>
    [Theory]
    [InlineData("30mm", "20mm", "21mm", "14mm", "partial response")] // exactly 30 % less
    [InlineData("30mm", "20mm", "22mm", "14mm", "stable")]
    [InlineData("30mm", "20mm", "30mm", "20mm", "stable")]
    [InlineData("30mm", "20mm", "36mm", "24mm", "progressive")]
    [InlineData("30mm", "20mm", "gone", "gone", "complete response")]
    [InlineData("30mm", "20mm", "gone", "20mm", "partial response")]
    public void A_sum_is_described(string left, string right, string leftNow, string rightNow, string category)
    {
        NoteFinding finding = Assert.Single(
            Read(Dog + $"known target lumps L-flank, R-flank\n2026-06-01 log\n  lump L-flank {left}\n  lump R-flank {right}\n2026-08-01 log\n  lump L-flank {leftNow}\n  lump R-flank {rightNow}\n").Findings,
            found => found.Rule == "lump-target");
        Assert.Equal(FindingLevel.Info, finding.Level);
        Assert.Contains($"`{category}`", finding.Message, StringComparison.Ordinal);
        Assert.Contains("A vet decides", finding.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Growth_is_against_the_smallest_sum_and_not_the_start()
    {
        NoteFinding finding = Assert.Single(
            Read(Dog + "known target lump L-flank\n2026-06-01 log\n  lump L-flank 50mm\n2026-07-01 log\n  lump L-flank 30mm\n2026-08-01 log\n  lump L-flank 38mm\n").Findings,
            found => found.Rule == "lump-target");
        Assert.Contains("38 mm; 50 mm at the start (2026-06-01), 30 mm at its smallest (2026-07-01). The published criteria call that `progressive`", finding.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("", "30mm", "20mm")] // no target
    [InlineData("known lump L-flank\n", "30mm", "20mm")]
    [InlineData("known target lump R-flank\n", "30mm", "20mm")]
    [InlineData("known target lump L-flank\n", "9mm", "5mm")] // too small at the start
    [InlineData("known target lump L-flank\n", "30mm", "removed")] // no response to be described
    [InlineData("known target lump L-flank\n", "like walnut", "like grape")] // not measured
    [InlineData("known target lump L-flank\n", "30mm", "<20mm")] // a bound isn't a point
    public void Otherwise_nothing_is_said(string fact, string before, string now) =>
        Assert.DoesNotContain(Read(Dog + fact + $"2026-06-01 log\n  lump L-flank {before}\n2026-08-01 log\n  lump L-flank {now}\n").Findings, finding => finding.Rule == "lump-target");

    [Fact]
    public void No_sum_is_made_of_sizes_far_apart() =>
        Assert.DoesNotContain(
            Read(Dog + "known target lumps L-flank R-flank\n2026-06-01 log\n  lump L-flank 30mm\n2026-07-01 log\n  lump R-flank 30mm\n2026-08-01 log\n  lump L-flank 20mm\n2026-09-01 log\n  lump R-flank 20mm\n").Findings,
            finding => finding.Rule == "lump-target");

    [Fact]
    public void A_target_named_at_a_visit_starts_there()
    {
        NoteFinding finding = Assert.Single(
            Read(Dog + "2025-06-01 log\n  lump L-flank 10mm\n2026-06-01 visit\n  lump L-flank 30mm\n  known target lump L-flank\n2026-08-01 log\n  lump L-flank 20mm\n").Findings,
            found => found.Rule == "lump-target");
        Assert.Contains("30 mm at the start (2026-06-01)", finding.Message, StringComparison.Ordinal);
    }
}
