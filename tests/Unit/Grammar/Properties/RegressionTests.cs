using HealthNotes.Grammar.Formatting;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Parsing;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Tests.Support;

namespace HealthNotes.Tests.Grammar.Properties;

/// <summary>Failures that the random tests found, or that were found by reading, each with what is right.</summary>
public class RegressionTests
{
    /// <summary>What was written, and what <c>format</c> makes of it: the second reads back to the same meaning as the first.</summary>
    [Theory]
    [InlineData("lump L-flank 12x9mm", "lump L-flank 12x9mm")] // the x was read as the unit of 12
    [InlineData("lump L-flank 12 mm x 9 mm x 3mm", "lump L-flank 12x9x3mm")]
    [InlineData("gums pink,moist", "gums pink moist")] // a comma without a blank was part of the word
    [InlineData("hr,72,asleep", "hr 72 asleep")]
    [InlineData("pet,Marlow", "pet Marlow")]
    [InlineData("ate 3/4: slow", "ate 3/4 slow")] // the colon hid the value in a remark
    [InlineData("med vitamin-d 2000 units every day", "med vitamin-d 2000 unit every 1d")] // 2000 was read as a year
    [InlineData("med x 1000 mg", "med x 1000mg")]
    [InlineData("due in 2w vaccination", "due vaccination in 2w")] // the name swallowed the schedule
    [InlineData("due trip to vet in 2w", "due trip to vet in 2w")] // `to` was read as until
    [InlineData("due 2nd vaccination in 2w", "due 2nd vaccination in 2w")] // `nd` was read as a unit
    [InlineData("gave IV fluids 100ml", "gave fluids 100ml into-vein")]
    [InlineData("med BID benazepril 5mg", "med benazepril 5mg every 12h")]
    [InlineData("walk ~30min", "walk ~30min")] // the ~ was lost
    [InlineData("vomit >3x", "vomit >3x")]
    [InlineData("recheck ear L in ~2w", "recheck ear L in ~2w")]
    [InlineData("recheck lump L-flank @lower in 2w", "recheck lump L-flank @lower in 2w")] // the tag was lost
    [InlineData("skip lump L-flank @lower too wriggly", "skip lump L-flank @lower too wriggly")]
    [InlineData("gave prednisone 5mg with food oral", "gave prednisone 5mg oral with food")]
    [InlineData("gave x 1 1/2 tablets", "gave x 3/2 tablet")] // the 1 was dropped
    [InlineData("skip nail :L", "skip nail :L")] // the colon was dropped, and then L was a side
    [InlineData("skip OU cherry red", "skip eye both cherry red")] // `both` was taken for the start of the reason
    [InlineData("gave lactulose 10fl-oz", "gave lactulose 10floz")]
    [InlineData("lump L-flank 0.5 \"", "lump L-flank 0.5in")] // the mark of inches was read only without a blank
    [InlineData("gait R toe touching", "gait R toe touching")] // the toe was taken for a site
    [InlineData("gland 1 cm", "gland 1cm")] // the 1 was taken for the gland's number
    [InlineData("gland R 3 8 mm", "gland R-gland3 8mm")]
    [InlineData("skip joint spine left him in peace", "skip joint spine left him in peace")] // no left spine
    [InlineData("cough 3 x 55min", "cough 3x 55min")] // the x was read as a sign between two numbers
    [InlineData("pet :# x", "pet :# x")] // the colon was dropped, and then # x was a comment
    [InlineData("fed 109 imp-floz", "food 109 imp-floz")] // no unit with a hyphen stands right after its number
    [InlineData("gave x 1775 ounce x 3drop", "gave x 1775oz x 3drop")] // the x of the remark was read as a sign
    [InlineData("gave x 5mg - 3 hours late", "gave x 5mg - 3 hours late")]
    [InlineData("urine pale: yellow", "pee pale, yellow")] // `pale yellow` is a spelling of another word
    [InlineData("mood ok", "mood ok")] // ok was lost
    [InlineData("hr 72 NAD", "hr 72 ok")]
    [InlineData("ate 1.0/1", "ate all")]
    [InlineData("walk 1h 30min", "walk 90min")]
    [InlineData("med x eVeRy 12h", "med x every 12h")] // only three cases of `every` were known
    [InlineData("usual rr 2026-01-20 16-24 per vet", "usual rr 16-24 per vet 2026-01-20")] // the date was lost
    [InlineData("07:30, hr 72", "07:30 hr 72")]
    [InlineData("ask is 3/4 of it enough", "ask is 3/4 of it enough")] // 3/4 was taken for a date
    [InlineData("vomit x3", "vomit 3x")]
    [InlineData("paw left front cut", "paw LF cut")]
    public void Is_read_whole_and_written_so(string written, string formatted)
    {
        NoteItem item = Marked.Item(written);
        Assert.Equal(formatted, ItemPrinter.Print(item));
        Assert.Equal(Meaning.Of(item), Meaning.Of(Marked.Item(formatted)));
    }

    [Fact]
    public void What_was_dropped_in_silence_is_now_flagged() => Marked.CheckLines("""
        med x every 12h every 8h
                        ^^^^^^^^ said-twice
        sex male female
                 ^^^^^^ said-twice
        born 2017 2018
                  ^^^^ said-twice
        rr 12/15s asleep awake
                         ^^^^^ said-twice
        temp 38.6C ear armpit
                       ^^^^^^ said-twice
        gave x 5mg oral in the ear
                        ^^^^^^^^^^ said-twice
        lump L-flank 12mm like pea
                          ^^^^^^^^ said-twice
        2026-10-04 check visit
                         ^^^^^ said-twice
        2026-10-04 by
                   ^^ missing
        born <2017
             ^^^^^ bad-date
        usual rr ~16-24
                 ^^^^^^ wrong-value
        usual temp 38F-39C
                         ^ wrong-unit
        usual 16-24kg rr
              ^^^^^^^ wrong-unit
        call-if >3kg rr
                ^^^^ wrong-unit
        med x every 0h
                    ^^ bad-number
        med x q0h
              ^^^ bad-number
        rr 18/2h
           ^^^^^ wrong-unit
        tooth L-flank tartar
              ^^^^^^^ impossible-site
        gland flank soft
              ^^^^^ impossible-site
        recheck weight L in 2w
                       ^ unknown-word
        """);

    [Fact]
    public void A_side_abbreviation_behind_an_item_without_sides_is_a_reason()
    {
        var skipped = Marked.Item<Skipped>("skip temp OD");
        Assert.Null(skipped.Site);
        Assert.Equal("OD", skipped.Reason!.Text);
    }

    [Fact]
    public void A_comment_behind_a_time_alone_is_a_comment()
    {
        LineSyntax line = NoteSyntax.Parse("07:30 # before the walk").Lines[0];
        Assert.Equal(TokenKind.Comment, line.Marks[^1].Kind);
    }

    [Fact]
    public void A_byte_order_mark_typed_at_the_start_is_one()
    {
        NoteSyntax changed = NoteSyntax.Parse("pet Marlow\n").WithLines(0, 1, "\ufeffpet Tansy\n");
        Assert.True(changed.ByteOrderMark);
        Assert.Equal("pet Tansy", changed.Lines[0].Text);
    }

    [Fact]
    public void Half_a_year_is_half_a_year()
    {
        Schedule schedule = Marked.Item<Recheck>("recheck ear in 0.5y").Schedule;
        Assert.Equal(new DateOnly(2026, 7, 3), schedule.DayAfter(new DateOnly(2026, 1, 1)));
    }

    [Theory]
    [InlineData("due booster every 9999y", 9999)]
    [InlineData("due booster in 999999999d", 9999)]
    [InlineData("due booster in 1y", 2027)]
    public void The_end_of_time_stops_a_schedule(string line, int year) =>
        Assert.Equal(year, Marked.Item<DueTask>(line).Schedule.DayAfter(new DateOnly(2026, 10, 4))!.Value.Year);
}
