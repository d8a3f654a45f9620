using HealthNotes.Analysis.Findings;
using HealthNotes.Features.Documents;
using HealthNotes.Features.Hover;
using HealthNotes.Rendering.Pages;
using HealthNotes.Tests.Analysis;
using HealthNotes.Tests.Features.Actions;
using HealthNotes.Tests.Features.Completion;
using HealthNotes.Tests.Support;

namespace HealthNotes.Tests.Features;

/// <summary>Rules, editor and page ask one record: to one question there is one answer.</summary>
public class OneRecordTests
{
    private const string Healed = "species dog\n2026-10-01 check\n  wound L-hip 20mm\n2026-11-01 check\n  wound L-hip healed\n";

    [Fact]
    public void What_is_healed_is_there_no_more_in_an_offer() =>
        Assert.Equal("noted as gone on 2026-11-01", Offered.Item(Healed + "2026-11-20 check\n  wound |", "L-hip").Detail);

    [Fact]
    public void What_is_healed_is_not_in_a_check_to_fill_in()
    {
        Assert.DoesNotContain("wound", Offered.Item(Healed + "|", "2026-11-25 check, whole").Edit.NewText, StringComparison.Ordinal);
        Assert.Contains("# wound L-hip\n", Offered.Item(Healed.Replace("healed", "15mm", StringComparison.Ordinal) + "|", "2026-11-25 check, whole").Edit.NewText, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("ear-drops", "Ear drops")]
    [InlineData("Ear drops", "EAR-DROPS")]
    public void A_medicine_is_one_whatever_the_hyphen_and_the_case(string ordered, string given)
    {
        string note = $"med {ordered} 2 drops every 12h\n2026-11-20 log\n  08:00 gave {given} 2 drops\n2026-11-21 log\n  08:00 ga|ve {ordered} 2 drops";
        string hover = Hover(note);
        Assert.Contains("**Plan** (line 1)", hover, StringComparison.Ordinal);
        Assert.Contains("2026-11-20 08:00, 5 days ago (line 3).", hover, StringComparison.Ordinal);
        Offers.Fix($"species dog\nmed {ordered} 2 drops every 12h\n2026-11-20 log\n  gave {given} 2|\n", "add-unit", $"species dog\nmed {ordered} 2 drops every 12h\n2026-11-20 log\n  gave {given} 2 drop\n");
    }

    [Fact]
    public void Of_two_plans_of_one_day_the_later_line_holds_on_the_page_as_in_the_editor()
    {
        const string note = "pet Marlow\nspecies dog\nmed benazepril 5mg every 24h\nmed benazepril 10mg every 24h\n2026-11-20 log\n  ";
        Assert.Contains("gave benazepril 10mg", Offered.Labels(note + "|"));
        Assert.DoesNotContain("gave benazepril 5mg", Offered.Labels(note + "|"));
        string page = VisitPage.Markdown(MarkedFindings.Read(note + "ate all\n"));
        Assert.Contains("benazepril 10 mg", page, StringComparison.Ordinal);
        Assert.DoesNotContain("benazepril 5 mg", page, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("2026-11-15", true)]
    [InlineData("2026-11-16", false)]
    public void A_medicine_may_be_given_on_the_day_it_was_stopped_and_not_after(string day, bool offered) =>
        Assert.Equal(offered, Offered.Labels($"med benazepril 5mg every 24h\n2026-11-15 visit\n  stop benazepril\n{day} log\n  |").Contains("gave benazepril 5mg"));

    [Theory]
    [InlineData("2026-11-03", true)]
    [InlineData("2026-11-10", false)]
    public void A_look_before_its_day_does_not_do_what_is_to_be_looked_at_again(string looked, bool offered) =>
        Assert.Equal(offered, Offered.Labels($"2026-11-01 check\n  recheck ear L on 2026-11-08\n{looked} check\n  ear L clean\n2026-11-20 check\n  |").Contains("ear L (recheck)"));

    [Fact]
    public void What_was_before_goes_by_the_days_and_not_by_the_place_in_the_file() =>
        Assert.Contains("**Before:** 2026-11-18 22 a minute · 2026-11-19 23 a minute.", Hover("2026-11-19 log\n  rr 23 asleep\n2026-11-20 log\n  r|r 24 asleep\n2026-11-18 log\n  rr 22 asleep"), StringComparison.Ordinal);

    /// <summary>A date after today is a slip: it makes nothing the second of two.</summary>
    [Fact]
    public void An_entry_after_today_is_nothing_that_came_before() => MarkedFindings.Check("""
        pet Marlow
        species dog
        born 2020-05-01
        adult-weight 15kg
        2027-11-01 log
        ^^^^^^^^^^ entry-date watch
          lump L-flank 12mm
               ^^^^^^^ lump watch
        2027-11-02 log
        ^^^^^^^^^^ entry-date watch
          lump L-flank 12mm
               ^^^^^^^ lump watch
        """);

    /// <summary>What was accepted asks nothing of the reader any more, wherever the advice stood.</summary>
    [Fact]
    public void What_is_accepted_advises_nothing()
    {
        NoteFinding finding = Assert.Single(MarkedFindings.Read("pet Marlow\nspecies dog\nborn 2020-05-01\nadult-weight 15kg\naccept temp-range until 2026-12-01 seen\n2026-11-01 check\n  temp 39.4C\n").Findings);
        Assert.Contains("Shown as normal", finding.Message, StringComparison.Ordinal);
        Assert.DoesNotContain("Worth watching", finding.Message, StringComparison.Ordinal);
        Assert.EndsWith("Accepted until 2026-12-01: seen (line 5).", finding.Message, StringComparison.Ordinal);
    }

    private static string Hover(string marked)
    {
        var at = Cursor.In(marked);
        return HoverFeature.At(at.Document, at.Place, FeatureSettings.Default)!.Markdown;
    }
}
