using HealthNotes.Analysis.Findings;

namespace HealthNotes.Tests.Analysis;

/// <summary>What an <c>accept</c> line quiets, and what it leaves alone.</summary>
public class AcceptTests
{
    private static string Dog(string facts, string lines) => $"pet Marlow\nspecies dog\nborn 2020-05-01\nadult-weight 15kg\n{facts}2026-11-01 check\n{lines}";

    [Theory]
    [InlineData("accept sign tooth 208 until 2027-03-01\n", "  tooth 208 tartar\n", FindingLevel.Info)]
    [InlineData("accept sign tooth until 2027-03-01\n", "  tooth 208 tartar\n", FindingLevel.Info)]
    [InlineData("accept sign tooth 108 until 2027-03-01\n", "  tooth 208 tartar\n", FindingLevel.Watch)]
    [InlineData("accept sign ear until 2027-03-01\n", "  tooth 208 tartar\n", FindingLevel.Watch)]
    [InlineData("accept sign tooth 208 until 2026-10-31\n", "  tooth 208 tartar\n", FindingLevel.Watch)]
    [InlineData("accept sign tooth 208 until 2026-11-01\n", "  tooth 208 tartar\n", FindingLevel.Info)]
    [InlineData("accept sign tooth 208 until 2026-11\n", "  tooth 208 tartar\n", FindingLevel.Info)]
    [InlineData("accept mammary-lump lump R-gland3 @low until 2027-03-01\n", "  lump R-gland3 @low 5mm\n", FindingLevel.Info)]
    [InlineData("accept mammary-lump lump R-gland3 @high until 2027-03-01\n", "  lump R-gland3 @low 5mm\n", FindingLevel.Call)]
    [InlineData("accept hr-range until 2027-03-01\n", "  hr 150\n", FindingLevel.Info)]
    [InlineData("accept hr-range until 2027-03-01 he is always like this\n", "  hr 190\n", FindingLevel.Urgent)]
    [InlineData("accept gum-colour gums until 2027-03-01\n", "  gums white\n", FindingLevel.Urgent)]
    public void It_quiets_its_rule_until_its_day_and_never_what_is_urgent(string facts, string line, FindingLevel level) =>
        Assert.Equal(level, MarkedFindings.LevelOfLastLine(Dog(facts, line)));

    [Fact]
    public void It_holds_from_the_day_it_was_written()
    {
        string before = Dog("", "  tooth 208 tartar\n") + "2026-11-05 visit\n  accept sign tooth 208 until 2027-03-01\n2026-11-20 check\n  tooth 208 tartar\n";
        Assert.Equal([FindingLevel.Watch, FindingLevel.Info], MarkedFindings.Read(before).Findings.Where(f => f.Rule == "sign").Select(f => f.Level));
    }

    [Fact]
    public void A_reminder_says_that_it_is_accepted()
    {
        NoteFinding finding = Assert.Single(MarkedFindings.Read("pet Marlow\nspecies dog\nborn 2020-05-01\naccept check-overdue until 2027-03-01 away\n2026-09-01 check\n  gums pink\n").Findings);
        Assert.Equal(FindingLevel.Info, finding.Level);
        Assert.EndsWith("Accepted until 2027-03-01: away (line 4).", finding.Message);
    }

    /// <summary>How a thing stands is accepted as of today, though its last line is older than the accept line.</summary>
    [Theory]
    [InlineData("until 2027-03-01", FindingLevel.Info)]
    [InlineData("until 2026-11-24", FindingLevel.Call)] // over since yesterday
    public void What_stands_at_the_end_of_a_course_is_accepted_as_of_today(string until, FindingLevel level)
    {
        string note = Dog("", "  lump L-flank 12mm\n").Replace("2026-11-01", "2026-09-01", StringComparison.Ordinal) + $"2026-10-20 check\n  lump L-flank 12mm\n2026-11-10 visit\n  accept lump-sample lump L-flank {until} sampled\n";
        Assert.Contains(MarkedFindings.Read(note).Findings, finding => finding.Rule == "lump-sample" && finding.Level == level);
    }

    [Fact]
    public void The_reason_is_shown_and_the_line_is_among_the_evidence()
    {
        NoteFinding finding = Assert.Single(MarkedFindings.Read(Dog("accept sign tooth 208 until 2027-03-01 seen at the visit\n", "  tooth 208 tartar\n")).Findings);
        Assert.EndsWith("Accepted until 2027-03-01: seen at the visit (line 5).", finding.Message);
        Assert.DoesNotContain("Worth watching", finding.Message);
        Assert.Equal([4, 6], finding.Evidence.ToArray());
    }

    [Theory]
    [InlineData("accept mammary-lmp until 2027-03-01\n", "mammary-lump")]
    [InlineData("accept nonsense-whatever until 2027-03-01\n", null)]
    [InlineData("accept sign until 2027-03-01\n", null)]
    [InlineData("accept not-plausible until 2027-03-01\n", null)]
    [InlineData("accept call-if until 2027-03-01\n", null)]
    public void A_line_that_quiets_nothing_is_said_so(string fact, string? nearest)
    {
        NoteFinding finding = Assert.Single(MarkedFindings.Read(Dog(fact, "  gums pink\n")).Findings);
        Assert.Equal(("accept", FindingLevel.Error, 4, nearest), (finding.Rule, finding.Level, finding.Line, finding.Nearest));
    }
}
