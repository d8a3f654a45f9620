namespace HealthNotes.Tests.Features.Actions;

public class LumpTests
{
    private const string Earlier = "species dog\n2026-09-01 check\n  lump L-flank 12mm\n  lump chin like pea\n  lump R-flank @lower 8mm\n";

    [Fact]
    public void A_lump_is_recorded_as_gone_in_the_check_of_today() => Offers.Rewrite(
        "2026-09-01 check\n  lump L-flank @lower 1|2mm\n\n2026-11-25 check\n  gums pink\n    > Pale?\n  water 200ml\n  else ok\n", "record-gone",
        "2026-09-01 check\n  lump L-flank @lower 12mm\n\n2026-11-25 check\n  gums pink\n    > Pale?\n  lump L-flank @lower gone\n  water 200ml\n  else ok\n");

    /// <summary>The finding is of today: it does not go into an older check.</summary>
    [Theory]
    [InlineData("2026-09-01 check\n  lump L-flank| 12mm\n", "2026-09-01 check\n  lump L-flank 12mm\n\n2026-11-25 log\n  lump L-flank gone\n")]
    [InlineData("2026-09-01 check\n  lump L-flank| 12mm", "2026-09-01 check\n  lump L-flank 12mm\n\n2026-11-25 log\n  lump L-flank gone\n")]
    [InlineData("2026-09-01 check\n  lump L-flank| 12mm\n\n", "2026-09-01 check\n  lump L-flank 12mm\n\n2026-11-25 log\n  lump L-flank gone\n")]
    public void Without_a_check_of_today_an_entry_is_added(string marked, string expected) => Offers.Rewrite(marked, "record-gone", expected);

    [Fact]
    public void A_line_of_today_that_says_nothing_yet_gets_the_word() => Offers.Rewrite(
        "2026-09-01 check\n  lump L-flank 12mm\n2026-11-25 check\n  lump L-flank| # hm\n", "record-gone", "2026-09-01 check\n  lump L-flank 12mm\n2026-11-25 check\n  lump L-flank gone # hm\n");

    [Theory]
    [InlineData("2026-09-01 check\n  lump L-flank| 12mm\n2026-10-01 check\n  lump L-flank gone\n")]
    [InlineData("2026-11-25 check\n  lump L-flank| 12mm\n")]
    [InlineData("2026-11-30 check\n  lump L-flank| 12mm\n")]
    [InlineData("2026-09-01 check\n  wound L-flank| 12mm\n")]
    public void Nothing_is_recorded_as_gone_twice_or_against_what_is_seen_today(string marked) => Offers.None(marked, "record-gone");

    [Fact]
    public void Known_lumps_are_recorded_again_with_their_size_left_to_type() => Offers.Rewrite(
        Earlier + "2026-11-01 check\n  gums pink\n  lump chin like pea\n    > The same.\n  skip anus| refused\n", "record-lumps",
        Earlier + "2026-11-01 check\n  gums pink\n  lump chin like pea\n    > The same.\n  lump L-flank\n  lump R-flank @lower\n  skip anus refused\n");

    [Fact]
    public void An_empty_check_takes_them_below_its_head() => Offers.Rewrite(
        Earlier + "2026-11-01 check|", "record-lumps", Earlier + "2026-11-01 check\n  lump L-flank\n  lump chin\n  lump R-flank @lower");

    [Fact]
    public void A_lump_that_is_gone_or_removed_or_left_out_on_purpose_is_not_recorded_again()
    {
        Assert.Equal(["Add a line for the known lump chin, to measure it again"],
            Offers.Titles(Earlier + "2026-10-01 log\n  lump L-flank gone\n2026-10-02 visit\n  lump R-flank @lower removed\n2026-11-01 check|\n", "record-lumps"));
        Offers.None(Earlier + "2026-11-01 check|\n  skip lump chin\n  skip lump L-flank\n  skip lump R-flank @lower\n", "record-lumps");
        Offers.None(Earlier + "2026-11-01 log|\n", "record-lumps");
        Offers.None("2026-08-01 check|\n2026-09-01 check\n  lump chin\n", "record-lumps");
    }

    [Fact]
    public void On_the_head_of_a_check_each_known_lump_can_be_gone()
    {
        Assert.Equal(["Record the lump L-flank as gone", "Record the lump chin as gone", "Record the lump R-flank @lower as gone"], Offers.Titles(Earlier + "2026-11-01 check|\n  gums pink\n", "record-gone"));
        Offers.Rewrite(Earlier + "2026-11-01 check|\n  gums pink\n", "record-gone", Earlier + "2026-11-01 check\n  gums pink\n  lump chin gone\n", which: 1);
    }

    [Fact]
    public void Two_lumps_at_one_place_get_tags()
    {
        const string note = "2026-09-01 check\n  lump L-flank 12mm\n  lump L-flank 5mm\n2026-10-01 log\n  lump L-flank 5mm\n2026-11-01 check\n  lump L-fla|nk 13mm soft\n  lump L-flank 6mm\n";
        Assert.Equal(["Tell 2 at L-flank apart in this entry: @a, @b", "Tell 2 at L-flank apart in 2 entries, in the order written: @a, @b"], Offers.Titles(note, "tell-apart"));
        Offers.Rewrite(note, "tell-apart",
            "2026-09-01 check\n  lump L-flank 12mm\n  lump L-flank 5mm\n2026-10-01 log\n  lump L-flank 5mm\n2026-11-01 check\n  lump L-flank @a 13mm soft\n  lump L-flank @b 6mm\n");
        Offers.Rewrite(note, "tell-apart",
            "2026-09-01 check\n  lump L-flank @a 12mm\n  lump L-flank @b 5mm\n2026-10-01 log\n  lump L-flank 5mm\n2026-11-01 check\n  lump L-flank @a 13mm soft\n  lump L-flank @b 6mm\n", which: 1);
    }

    [Theory]
    [InlineData("2026-11-01 check\n  lump L-flank| 12mm\n")]
    [InlineData("2026-11-01 check\n  lump L-flank| @a 12mm\n  lump L-flank 5mm\n")]
    [InlineData("2026-11-01 log\n  08:00 wound L-flank| 12mm\n  20:00 wound L-flank 12mm\n")]
    public void One_lump_needs_no_tags(string marked) => Offers.None(marked, "tell-apart");

    [Fact]
    public void A_tag_that_is_taken_is_not_given_again() => Offers.Rewrite(
        "2026-10-01 log\n  lump chin @a 2mm\n2026-11-01 check\n  lump chin| 1mm\n  lump chin 3mm", "tell-apart", "2026-10-01 log\n  lump chin @a 2mm\n2026-11-01 check\n  lump chin @b 1mm\n  lump chin @c 3mm");

    [Fact]
    public void A_remark_that_is_repeated_becomes_a_tag()
    {
        Offers.Rewrite("2026-09-01 check\n  lump L-flank 12mm # the lower one\n2026-10-01 log\n  lump L-flank 12mm\n2026-11-01 check\n  lump L-fla|nk 13mm # The lower one\n", "tag-remark",
            "2026-09-01 check\n  lump L-flank @lower 12mm # the lower one\n2026-10-01 log\n  lump L-flank @lower 12mm\n2026-11-01 check\n  lump L-flank @lower 13mm # The lower one\n");
        Offers.Rewrite("2026-09-01 check\n  wound L-flank 12mm\n    > behind the last rib\n  wound L-flank 3mm # by the hip\n2026-11-01 check\n  wound L-flank| 13mm\n    > Behind the last rib\n", "tag-remark",
            "2026-09-01 check\n  wound L-flank @behind-last 12mm\n    > behind the last rib\n  wound L-flank 3mm # by the hip\n2026-11-01 check\n  wound L-flank @behind-last 13mm\n    > Behind the last rib\n");
    }

    [Theory]
    [InlineData("2026-11-01 check\n  lump L-flank| 13mm # the lower one\n")]
    [InlineData("2026-09-01 check\n  lump L-flank 12mm # the one\n2026-11-01 check\n  lump L-flank| 13mm # the one\n")]
    [InlineData("2026-09-01 check\n  lump L-flank @lower 12mm # the lower one\n2026-10-01 log\n  lump L-flank 12mm # the lower one\n2026-11-01 check\n  lump L-flank| 13mm # the lower one\n")]
    public void A_remark_that_tells_nothing_apart_is_no_tag(string marked) => Offers.None(marked, "tag-remark");
}
