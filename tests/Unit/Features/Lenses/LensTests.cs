using CsCheck;
using HealthNotes.Features.Checks;
using HealthNotes.Features.Documents;
using HealthNotes.Features.Lenses;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Tests.Grammar.Properties;
using HealthNotes.Tests.Support;

namespace HealthNotes.Tests.Features.Lenses;

/// <summary>How far each check got, what is due, and what is next. Read on 2026-11-25.</summary>
public class LensTests
{
    private static readonly int All = CheckItems.For(Species.Dog, true).Length;

    private static readonly int Parts = CheckItems.For(Species.Dog, true).Count(item => !item.IsMeasured);

    [Fact]
    public void A_check_says_how_far_it_got() =>
        AssertLenses("species dog\n2026-11-25 check\n  alert bright\n  stance square\n  gait easy\n  hr 18/15s\n  hr 19/15s\n  lump chin 3mm\n", (1, $"4 of {All} looked at, next: coat"));

    [Fact]
    public void What_was_refused_is_counted_apart_and_is_not_next() =>
        AssertLenses("2026-11-25 check\n  skip alert asleep\n  skip ear L refused\n  ear R clean\n", (0, $"1 of {All} looked at, 1 skipped, next: stance"));

    [Fact]
    public void The_rest_is_looked_at_but_not_measured() =>
        AssertLenses("2026-11-25 check\n  skip tail refused\n  else ok\n", (0, $"{Parts - 1} of {All} looked at, 1 skipped, next: bcs"));

    [Fact]
    public void A_whole_check_has_no_next()
    {
        string lines = string.Concat(CheckItems.For(Species.Dog, true).Where(item => item.IsMeasured).Select(item => $"  skip {item.Word.Word} refused\n"));
        AssertLenses("2026-11-25 check\n  else ok\n" + lines, (0, $"{Parts} of {All} looked at, {All - Parts} skipped"));
    }

    [Fact]
    public void A_check_may_be_written_in_several_entries_of_its_day_and_a_log_is_none() =>
        AssertLenses(
            "2026-11-20 check\n  alert bright\n2026-11-25 check\n  alert bright\n2026-11-25 log\n  coat glossy\n2026-11-25 check\n  stance square\n",
            (0, $"1 of {All} looked at"), (2, $"2 of {All} looked at, next: gait"), (6, $"2 of {All} looked at, next: gait"));

    /// <summary>What is half typed has not been looked at yet.</summary>
    [Fact]
    public void A_half_typed_line_is_next() =>
        AssertLenses("2026-11-25 check\n  alert bright\n  stance \n", (0, $"1 of {All} looked at, next: stance"));

    [Theory]
    [InlineData("2026-11-25 log\n  recheck ear L in 3d\n", 1, "due in 3 days")]
    [InlineData("2026-11-24 log\n  recheck ear L in 1d\n", 1, "due today")]
    [InlineData("2026-11-25 log\n  due flea comb 2026-11-26\n", 1, "due tomorrow")]
    [InlineData("2026-11-20 log\n  recheck ear L in 3d\n2026-11-21 log\n  ear L clean\n", 1, "was due 2 days ago")]
    [InlineData("2026-11-20 log\n  recheck ear L in 3d\n2026-11-24 log\n  ear R clean\n", 1, "was due 2 days ago")]
    [InlineData("2026-11-20 log\n  recheck ear L in 3d\n  recheck ear L in 4d\n", 2, "was due yesterday")]
    [InlineData("2026-10-01 log\n  due flea comb 2026-10-02\n2026-11-20 log\n", 1, "was due 54 days ago")]
    [InlineData("2026-11-20 log\n  recheck tooth 208 in 3d\n2026-11-24 log\n  tooth 108 tartar\n", 1, "was due 2 days ago")]
    [InlineData("2026-11-20 log\n  recheck lump L-flank @lower in 3d\n2026-11-24 log\n  lump L-flank @upper 3mm\n", 1, "was due 2 days ago")]
    public void What_is_due_is_told_at_its_line(string note, int line, string title) => AssertLenses(note, (line, title));

    [Theory]
    [InlineData("2026-11-20 log\n  recheck ear L in 3d\n2026-11-24 log\n  ear L clean\n")]
    [InlineData("2026-11-20 log\n  recheck ear L in 3d\n2026-11-24 log\n  ear both clean\n")]
    [InlineData("2026-11-20 log\n  recheck weight in 3d\n2026-11-24 log\n  weight 20kg\n")]
    [InlineData("2026-11-20 log\n  recheck ear L in 3d\n2026-11-21 log\n  done ear L, dry\n")]
    [InlineData("2026-11-20 log\n  due flea comb in 3d\n2026-11-21 log\n  done Flea comb\n")]
    [InlineData("2026-08-20 log\n  recheck ear L in 3d\n2026-11-21 log\n  gait easy\n")]
    [InlineData("2026-11-20 log\n  recheck ear L\n")]
    [InlineData("  recheck ear L in 3d\n")]
    [InlineData("")]
    [InlineData("\n")]
    [InlineData("pet Marlow\n")]
    public void What_was_done_or_is_long_over_is_not_told(string note) => AssertLenses(note);

    [Fact]
    public void The_opening_tells_what_is_next()
    {
        string opening = "pet Marlow\nhome-check every 30d\n";
        AssertLenses(opening + "2026-11-20 check\n  else ok\n", (0, "next: home check, due in 25 days"), (2, $"{Parts} of {All} looked at, next: bcs"));
        AssertLenses(
            opening + "2026-10-20 check\n2026-11-24 log\n  recheck ear L in 2d\n",
            (0, "next: home check, was due 6 days ago"), (2, $"0 of {All} looked at, next: alert"), (4, "due tomorrow"));
        AssertLenses(opening + "2026-11-24 log\n  recheck ear L in 2d\n", (0, "next: recheck ear L, due tomorrow"), (3, "due tomorrow"));
        Assert.Equal(new LensCommand(LensCommands.AddCheck, "file:///notes/test.hnote"), LensFeature.In(Cursor.Note(opening + "2026-11-20 check\n"))[0].Command);
    }

    [Fact]
    public void Nothing_throws_and_lenses_come_in_line_order() => Soup.Note.Sample(text =>
    {
        Document note = Document.Open("file:///a.hnote", 1, text, Cursor.Today);
        LensText[] lenses = [.. LensFeature.In(note)];
        Assert.Equal(lenses.OrderBy(lens => lens.Range.Start), lenses);
        Assert.All(lenses, lens => Assert.Equal(lens.Range, new PlaceRange(note.Clamp(lens.Range.Start), note.Clamp(lens.Range.End))));
    }, iter: Effort.Times(150));

    private static void AssertLenses(string note, params (int Line, string Title)[] expected)
    {
        Assert.Equal(expected, LensFeature.In(Cursor.Note(note)).Select(lens => (lens.Range.Start.Line, lens.Title)));
        Assert.Equal(expected, LensFeature.In(Document.Open("file:///a.hnote", 1, note.ReplaceLineEndings("\r\n"), Cursor.Today)).Select(lens => (lens.Range.Start.Line, lens.Title)));
    }
}
