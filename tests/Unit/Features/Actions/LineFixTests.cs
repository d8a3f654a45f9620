using HealthNotes.Features.Actions.Offered;

namespace HealthNotes.Tests.Features.Actions;

public class LineFixTests
{
    private const string Dog = "pet Marlow\nspecies dog\nborn 2020-05-01\nadult-weight 15kg\n2026-11-01 check\n";
    private const string Cat = "pet Tansy\nspecies cat\nborn 2020-05-01\n2026-11-01 check\n";

    [Theory]
    [InlineData("coat glos|ssy", "coat glossy")]
    [InlineData("ear L odour |brwn wax", "ear L odour brown wax")]
    [InlineData("  EAR L BRWN| WAX   # after the walk", "  EAR L brown WAX   # after the walk")]
    [InlineData("coat Glosssy|", "coat glossy")]
    [InlineData("lump L-flnak| 12mm", "lump L-flank 12mm")]
    [InlineData("lump L-flank like gofl-ball|", "lump L-flank like golf-ball")]
    [InlineData("gumz| pink", "gums pink")]
    [InlineData("water 200mll|", "water 200ml")]
    [InlineData("skip ngode|", "skip node")]
    [InlineData("seemed a bit off| today", null)]
    [InlineData("coat xyzzy|", null)]
    [InlineData("coat 🐶|", null)]
    [InlineData("ear to the ground|", null)]
    public void The_line_that_was_most_likely_meant(string line, string? expected) => Check(line, "corrected-line", expected);

    [Fact]
    public void The_nearest_known_word_of_a_line_with_more_to_put_right() => Assert.Equal(["Write `glossy` *"], Offers.Titles(Dog + "coat glos|ssy greyng", "nearest-word"));

    [Fact]
    public void A_medicine_with_an_interval_in_an_entry_was_given_or_is_planned() =>
        Assert.Equal(["Write: gave carprofen 75mg", "Write: med carprofen 75mg every 12h"], Offers.Titles(Dog + "carprofen 75mg| BID", "corrected-line"));

    [Fact]
    public void A_comment_that_would_be_a_head_can_become_one() =>
        Offers.Fix("2026-11-01 log\n  ate all\n# 2026-11-02 lo|g\n  ate all\n", "corrected-line", "2026-11-01 log\n  ate all\n2026-11-02 log\n  ate all\n");

    [Fact]
    public void Words_of_facts() => Offers.Fix("sex female spay|d\n", "corrected-line", "sex female spay\n");

    [Fact]
    public void The_name_of_a_finding() =>
        Offers.Fix("pet M\naccept mammary-lmp| until 2027-03-01\n", "nearest-word", "pet M\naccept mammary-lump until 2027-03-01\n");

    [Fact]
    public void The_kind_of_an_entry() => Offers.Fix("2026-11-01 18:10 che|kc\n  gums pink", "nearest-word", "2026-11-01 18:10 check\n  gums pink");

    /// <summary>One keystroke takes only what starts alike; unread is fixed only what is one slip away.</summary>
    [Theory]
    [InlineData("coat glosssy|", "coat glossy", true)]
    [InlineData("coat lgossy|", "coat lgossy", false)]
    [InlineData("coat glosssyy|", "coat glosssyy", false)]
    [InlineData("lump L-flnak| 12mm", "lump L-flank 12mm", true)]
    [InlineData("gait ueven|", "gait ueven", false)]
    [InlineData("ear L brwn|", "ear L brwn", true)]
    public void How_sure_a_nearest_word_is(string line, string fixedAll, bool preferred)
    {
        Assert.Equal(preferred, Offers.At(Dog + line).Any(offer => offer.Id == "corrected-line" && offer.IsPreferred));
        var document = Tests.Support.Cursor.Note(Dog + line.Replace("|", "", StringComparison.Ordinal));
        Assert.Equal(Dog + fixedAll, Tests.Support.Cursor.Apply(document, HealthNotes.Features.Actions.ActionFeature.FixAll(document)));
    }

    [Theory]
    [InlineData("gait unev|en")]
    [InlineData("skin re|")]
    [InlineData("ear L we|d")]
    public void No_word_is_offered_for_its_opposite_or_for_a_short_one(string line) => Assert.DoesNotContain(Offers.At(Dog + line), offer => offer.Id is "nearest-word" or "corrected-line");

    [Theory]
    [InlineData("tod|ay", "2026-11-25")]
    [InlineData("Yesterday| log", "2026-11-24 log")]
    [InlineData("monday| 9am check", "2026-11-23 9am check")]
    [InlineData("Wed| check", "2026-11-25 check")]
    public void A_day_in_words_becomes_its_date(string line, string expected) => Offers.Fix(line + "\n  ate all\n", "date-order", expected + "\n  ate all\n");

    [Theory]
    [InlineData("weight 21|", new[] { "Write `21kg`", "Write `21lb`" })]
    [InlineData("glucose 32|", new[] { "Write `32mmol/L`", "Write `32mg/dL`" })]
    [InlineData("lump L-flank 12x9|", new[] { "Write `12x9mm`", "Write `12x9in`", "Write `12x9cm`" })]
    [InlineData("water 200|", new[] { "Write `200ml` *" })]
    [InlineData("water 2|", new[] { "Write `2ml`", "Write `2cup`", "Write `2l`" })]
    [InlineData("hr 18/15|", new[] { "Write `18/15s` *" })]
    [InlineData("bcs 7|", new[] { "Write `7/9` *" })]
    [InlineData("bcs 5|", new[] { "Write `5/9`", "Write `5/5`" })]
    [InlineData("mcs 2|", new[] { "Write `2/3` *" })]
    [InlineData("recheck ear L in 2|", new[] { "Write `2d`", "Write `2w`", "Write `2mo`", "Write `2h`" })]
    [InlineData("med benazepril 5mg every 12|", new string[0])]
    [InlineData("gave meloxicam 0.5|", new string[0])]
    [InlineData("weight 0|", new string[0])]
    [InlineData("weight 999999999|", new string[0])]
    public void The_unit_that_is_missing(string line, string[] expected) => Assert.Equal(expected, Offers.Titles(Dog + line, "add-unit"));

    [Theory]
    [InlineData("weight 21|", 0, "weight 21kg")]
    [InlineData("weight 21| # on the big scale", 1, "weight 21lb # on the big scale")]
    [InlineData("weight 83.2-61.9|", 0, "weight 83.2-61.9kg")]
    [InlineData("hr 18/15|", 0, "hr 18/15s")]
    [InlineData("bcs 5|", 0, "bcs 5/9")]
    public void A_unit_is_put_behind_its_number(string line, int which, string expected) => Offers.Fix(Dog + line, "add-unit", Dog + expected, which);

    [Fact]
    public void The_unit_near_the_last_weight_is_preferred()
    {
        const string earlier = "2026-10-01 check\n  weight 9.2kg\n2026-11-01 check\n";
        Assert.Equal(["Write `9.4kg` *", "Write `9.4lb`"], Offers.Titles(earlier + "weight 9.4|", "add-unit"));
        Assert.Equal(["Write `20.4lb` *", "Write `20.4kg`"], Offers.Titles(earlier + "weight 20.4|", "add-unit"));
    }

    [Fact]
    public void Us_units_come_first_in_a_note_that_shows_them() =>
        Assert.Equal(["Write `40lb`", "Write `40kg`", "Write `40g`"], Offers.Titles("units us\n2026-11-01 check\nweight 40|", "add-unit"));

    [Theory]
    [InlineData(HealthNotes.Features.Documents.UnitsShown.Us, "lb")]
    [InlineData(HealthNotes.Features.Documents.UnitsShown.Metric, "kg")]
    [InlineData(HealthNotes.Features.Documents.UnitsShown.AsNoted, "lb")]
    public void Us_units_come_first_for_a_reader_of_them(HealthNotes.Features.Documents.UnitsShown units, string first)
    {
        var at = Tests.Support.Cursor.In("units us\n2026-11-01 check\nweight 40|");
        Assert.Equal(first, HealthNotes.Features.Actions.ActionFeature.In(at.Document, at.Range, new() { Units = units })[0].Edits[0].NewText);
    }

    /// <summary>The unit of a medicine is only ever taken from the plan in the note.</summary>
    [Fact]
    public void A_dose_gets_the_unit_of_its_plan()
    {
        const string plan = "med benazepril 5mg every 24h\n2026-11-01 log\n";
        Offers.Fix(plan + "gave benazepril 5|", "add-unit", plan + "gave benazepril 5mg");
        Offers.None(plan + "gave lactulose 5|", "add-unit");
    }

    [Fact]
    public void The_limits_of_a_vital_get_its_unit() => Offers.Fix("usual temp 101|-102", "add-unit", "usual temp 101-102F");

    [Theory]
    [InlineData("temp 38.4kg|", "temp 38.4C")]
    [InlineData("rr 7/30q|", "rr 7/30s")]
    [InlineData("weight 21.4 cm|", "weight 21.4kg")]
    public void A_unit_that_does_not_go_with_the_line(string line, string expected) => Check(line, "other-unit", expected);

    [Theory]
    [InlineData("hr 1|8", "hr 18/15s")]
    [InlineData("rr 4| asleep", "rr 4/15s asleep")]
    [InlineData("hr 1800|", null)]
    [InlineData("hr 90|", null)]
    [InlineData("hr <18|", null)]
    public void A_count_without_its_time(string line, string? expected) => Check(line, "count-time", expected);

    [Fact]
    public void A_rate_that_is_only_unusual_is_not_taken_for_a_count()
    {
        const string note = "pet Marlow\nspecies dog\nborn 2020-05-01\nadult-weight 15kg\nusual hr 100-140\n2026-11-01 check\nhr 65|";
        Assert.Contains(Tests.Support.Cursor.In(note).Document.Analysis.Findings, finding => finding.Rule == "usual-range");
        Offers.None(note, "count-time");
    }

    /// <summary>A slow heart is real and may be urgent: no keystroke takes it away unread, and fix all leaves it alone.</summary>
    [Fact]
    public void A_low_rate_is_never_taken_for_a_slip_unasked()
    {
        Assert.Equal(["If it was counted in 15 seconds: write `21/15s`"], Offers.Titles(Dog + "hr 21|", "count-time").Where(t => t.Contains("15 sec", StringComparison.Ordinal)));
        Assert.DoesNotContain(Offers.At(Dog + "hr 21|"), offer => offer.IsPreferred);
    }

    [Theory]
    [InlineData("lump L-nose| 3mm", "drop-side", "lump nose 3mm")]
    [InlineData("tail R-tail| wagging", "drop-side", "tail tail wagging")]
    [InlineData("lump LF-ear| 3mm", "other-place", "lump L-ear 3mm")]
    [InlineData("lump RH-elbow| 3mm", "other-place", "lump R-elbow 3mm")]
    [InlineData("node L-knee| small", "other-place", "node L-knee-back small")]
    [InlineData("node L-shoulder| small", "other-place", "node L-shoulder-front small")]
    [InlineData("lump mid-paw| 3mm", "other-place", "lump LF-paw 3mm")]
    public void A_place_that_cannot_be(string line, string id, string expected) => Check(line, id, expected);

    [Fact]
    public void Which_side_was_meant_is_asked_where_it_cannot_be_known() =>
        Assert.Equal(["Write `LF-paw`", "Write `RF-paw`", "Write `LH-paw`", "Write `RH-paw`"], Offers.Titles(Dog + "lump mid-paw| 3mm", "other-place"));

    /// <summary>Which gland or tooth was meant cannot be known from the line.</summary>
    [Theory]
    [InlineData("lump R-gland5| like pea")]
    [InlineData("tooth 105| tartar")]
    [InlineData("tooth 26| tartar")]
    public void No_place_is_made_up(string line) => Assert.DoesNotContain(Offers.At(Cat + line), offer => offer.Id is "drop-side" or "other-place");

    [Theory]
    [InlineData("hr 18/15s 19/15s|", "hr 18/15s")]
    [InlineData("rr 7/30s asleep, re|st   # he woke", "rr 7/30s asleep   # he woke")]
    [InlineData("wound L-thigh 30mm 40|mm", "wound L-thigh 30mm")]
    public void What_is_said_twice(string line, string expected) => Check(line, "say-once", expected);

    [Theory]
    [InlineData("4/|10/2026 check", new[] { "Write `2026-04-10`, 10 April 2026", "Write `2026-10-04`, 4 October 2026" })]
    [InlineData("2026-23-10| log", new[] { "Write `2026-10-23`, 23 October 2026 *" })]
    [InlineData("4/1/26| check", new[] { "Write `2026-01-04`, 4 January 2026", "Write `2026-04-01`, 1 April 2026" })]
    [InlineData("5/12/2026| check", new[] { "Write `2026-05-12`, 12 May 2026", "Write `2026-12-05`, 5 December 2026" })]
    [InlineData("2026-02-30| check", new string[0])]
    [InlineData("40.40.2026| check", new string[0])]
    public void A_date_in_another_order(string line, string[] expected) => Assert.Equal(expected, Offers.Titles(line, "date-order"));

    [Fact]
    public void A_date_is_written_year_first()
    {
        Offers.Fix("4/10/2026| 08:15 check\n  gums pink", "date-order", "2026-10-04 08:15 check\n  gums pink", which: 1);
        Offers.Fix("born 08/03/2017|", "date-order", "born 2017-03-08", which: 0);
    }

    [Theory]
    [InlineData("13:30pm| pee", "13:30 pee")]
    [InlineData("25:70| pee", null)]
    [InlineData("24:00| pee", null)]
    [InlineData("7.5| pee", null)]
    public void A_time_in_another_form(string line, string? expected) => Check(line, "time-form", expected);

    [Theory]
    [InlineData("weight 55.9-60.3kg|", "swap-numbers", "weight 60.3-55.9kg")]
    [InlineData("weight 12,000g|", "decimal-mark", "weight 12000g")]
    [InlineData("hr 45//1|5s", "sign-once", "hr 45/15s")]
    [InlineData("home-check 30d|", "time-word", "home-check every 30d")]
    [InlineData("med benazepril 5mg 24h|", "time-word", null)]
    [InlineData("ate 3/0|", "swap-numbers", null)]
    public void A_number_with_a_slip(string line, string id, string? expected) => Check(line, id, expected);

    [Fact]
    public void A_line_to_cross_has_two_sides_and_none_is_preferred()
    {
        Assert.Equal(["Write `>32`", "Write `<32`"], Offers.Titles("call-if rr asleep 32|", "limit-sign"));
        Offers.Fix("usual rr 28-16| asleep", "swap-numbers", "usual rr 16-28 asleep");
    }

    [Theory]
    [InlineData("  seemed| strange the other day # said her sister", "free-text", "  > seemed strange the other day # said her sister")]
    [InlineData("\tseemed| strange the other day", "comment-out", "\t# seemed strange the other day")]
    [InlineData("|🐶 e\u0301 狗", "free-text", "> 🐶 e\u0301 狗")]
    public void A_line_that_is_not_understood_is_kept_as_it_is(string line, string id, string expected) => Check(line, id, expected);

    /// <summary>A line whose word alone is understood can be kept, too; one that is half typed is left alone.</summary>
    [Theory]
    [InlineData("alert brite|", "comment-out", "# alert brite")]
    [InlineData("lump L-flank xyzzy|", "free-text", null)]
    [InlineData("weight 21|", "free-text", null)]
    [InlineData("coat glosssy|", "free-text", null)]
    public void A_line_of_which_nothing_is_understood_is_kept(string line, string id, string? expected) => Check(line, id, expected);

    [Fact]
    public void Which_of_two_is_right_is_for_the_writer()
    {
        Assert.Equal(["Take `40mm` away"], Offers.Titles(Dog + "wound L-thigh 30mm 40mm|", "say-once"));
    }

    [Fact]
    public void A_line_too_long_becomes_free_text()
    {
        string line = "ask " + new string('x', 1200);
        Offers.Fix(Dog + "|" + line, "free-text", Dog + "> " + line);
    }

    [Theory]
    [InlineData("else|", "say-ok", "else ok")]
    [InlineData("lump L-flank @| 12mm", "drop-sign", "lump L-flank 12mm")]
    public void What_is_missing_and_can_be_known(string line, string id, string expected) => Check(line, id, expected);

    /// <summary>What was seen is never made up.</summary>
    [Theory]
    [InlineData("gums|")]
    [InlineData("hr|")]
    [InlineData("gave|")]
    [InlineData("weight|")]
    public void A_half_typed_line_is_left_to_its_writer(string line) => Assert.DoesNotContain(Offers.At(Dog + line), offer => offer.Kind == ActionKind.QuickFix);

    [Theory]
    [InlineData("2027-01-0|3 check", "2026-01-03 check")]
    [InlineData("2036-11-01| check", "2026-11-01 check")]
    [InlineData("2026-12-04| check", "2025-12-04 check")]
    [InlineData("2027-12-04| check", "2025-12-04 check")]
    [InlineData("2028-02-29| check", null)]
    public void An_entry_dated_after_today(string line, string? expected) => Check(line, "nearer-year", expected);

    [Fact]
    public void No_entry_is_dated_before_the_birth() => Offers.None("born 2026-08-01\n2027-01-0|3 check", "nearer-year");

    [Fact]
    public void A_finding_about_the_pet_has_no_fix()
    {
        Assert.DoesNotContain(Offers.At(Dog + "temp 40|.5C"), offer => offer.Kind == ActionKind.QuickFix);
        Assert.DoesNotContain(Offers.At(Dog + "gums bl|ue"), offer => offer.Kind == ActionKind.QuickFix);
        Assert.DoesNotContain(Offers.At(Dog + "hr 2|00"), offer => offer.Kind == ActionKind.QuickFix);
    }

    private static void Check(string line, string id, string? expected)
    {
        if (expected is null)
        {
            Offers.None(Dog + line, id);
        }
        else
        {
            Offers.Fix(Dog + line, id, Dog + expected);
        }
    }
}
