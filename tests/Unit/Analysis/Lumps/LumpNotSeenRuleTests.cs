using static HealthNotes.Tests.Analysis.MarkedFindings;

namespace HealthNotes.Tests.Analysis.Lumps;

public class LumpNotSeenRuleTests
{
    private const string Before = "pet Marlow\nspecies dog\nborn 2017-03\n2026-10-01 log\n  lump L-flank 6mm soft\n";

    [Fact]
    public void A_lump_that_the_latest_full_check_leaves_out_is_asked_for()
    {
        var analysis = Check("""
            pet Marlow
            species dog
            born 2017-03
            2026-10-01 log
              lump L-flank 6mm soft
                   ^^^^^^^ lump watch
              lump R-elbow 4mm soft
                   ^^^^^^^ lump watch
            2026-10-20 check
              skin smooth
              else ok
            2026-11-20 check
            ^^^^^^^^^^ lump-not-seen info
              skin smooth
              else ok
            """);
        Assert.Contains("lumps L-flank (6 mm, last 2026-10-01), R-elbow (4 mm, last 2026-10-01)", analysis.Findings[^1].Message, StringComparison.Ordinal);
        Assert.Equal([4, 5, 9], analysis.Findings[^1].Evidence.ToArray());
    }

    [Fact]
    public void A_check_that_notes_another_lump_is_one_that_looked() => Check("""
        pet Marlow
        species dog
        born 2017-03
        2026-10-01 log
          lump L-flank @low 6mm soft
               ^^^^^^^ lump watch
          lump L-flank @up 6mm soft
               ^^^^^^^ lump watch
        2026-11-20 check
        ^^^^^^^^^^ lump-not-seen info
          lump L-flank @up 6mm soft
               ^^^^^^^ lump info
        """);

    [Theory]
    [InlineData("2026-11-20 check\n  hr 80\n  weight 15kg\n")] // no full check
    [InlineData("2026-11-20 log\n  hr 80\n  else ok\n")]
    [InlineData("2026-11-20 check\n  lump L-flank 6mm\n  else ok\n")]
    [InlineData("2026-11-20 check\n  lump L-flank gone\n  else ok\n")]
    [InlineData("2026-11-20 check\n  lump L-flank @low 6mm\n  else ok\n")] // may be the same lump
    [InlineData("2026-11-20 check\n  skip lump L-flank asleep\n  else ok\n")]
    [InlineData("2026-11-20 check\n  skip lump\n  else ok\n")]
    [InlineData("2026-11-20 check\n  skin L-flank smooth\n  else ok\n")]
    [InlineData("2026-10-10 log\n  lump L-flank removed\n2026-11-20 check\n  else ok\n")]
    [InlineData("2026-11-20 check\n  else ok\n2026-11-22 log\n  lump L-flank 6mm\n")] // noted since
    [InlineData("2026-10-01 check\n  else ok\n")] // the same day
    [InlineData("2026-09-01 check\n  else ok\n")] // before it was found
    [InlineData("2026-12-20 check\n  else ok\n")] // after today: a slip
    public void Otherwise_nothing_is_asked(string then) =>
        Assert.DoesNotContain(Read(Before + then).Findings, finding => finding.Rule == "lump-not-seen");

    [Fact]
    public void A_lump_of_long_ago_is_not_asked_for_any_more() =>
        Assert.DoesNotContain(Read("pet Marlow\nspecies dog\nborn 2017-03\n2024-10-01 log\n  lump L-flank 6mm\n2026-11-20 check\n  else ok\n").Findings, finding => finding.Rule == "lump-not-seen");

    [Fact]
    public void A_check_with_half_of_the_items_is_full()
    {
        const string Many = "  alert bright\n  stance square\n  gait easy\n  coat glossy\n  skin smooth\n  bcs 5/9\n  mcs normal\n  eye both clear\n  nose cool\n  ear both clean\n  mouth pink\n  tooth white\n  gums pink\n  crt 1s\n  node both-jaw small\n";
        Assert.Contains(Read(Before + "2026-11-20 check\n" + Many).Findings, finding => finding.Rule == "lump-not-seen");
    }

    [Fact]
    public void A_mammary_lump_is_asked_for_too() =>
        Assert.Contains(Read(Before.Replace("L-flank", "R-gland3", StringComparison.Ordinal) + "2026-11-20 check\n  else ok\n").Findings, finding => finding.Rule == "lump-not-seen");
}
