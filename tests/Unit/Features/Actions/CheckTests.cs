using HealthNotes.Features.Actions;
using HealthNotes.Features.Documents;
using HealthNotes.Tests.Support;

namespace HealthNotes.Tests.Features.Actions;

public class CheckTests
{
    private const string AllButGums =
        "  alert bright\n  stance square\n  gait even\n  coat glossy\n  skin smooth\n  bcs 5/9\n  mcs 3/3\n  eye ok\n  nose ok\n  ear ok\n  mouth ok\n  tooth ok\n";

    private const string FromNode =
        "  node not-felt\n  hr 18/15s\n  rr 8/30s\n  temp 38.6C\n  weight 15kg\n  joint ok\n  muscle ok\n  limb ok\n  paw ok\n  nail ok\n  belly ok\n  gland ok\n  genitals ok\n  anus ok\n  tail ok\n";

    [Fact]
    public void What_a_check_lacks_is_added_as_skipped_where_it_belongs() => Offers.Rewrite(
        "species dog\n2026-11-01 check\n" + AllButGums + "    > Tartar behind.\n" + FromNode + "  lump chi|n 3mm\n", "add-missing",
        "species dog\n2026-11-01 check\n" + AllButGums + "    > Tartar behind.\n  skip gums\n  skip crt\n" + FromNode + "  lump chin 3mm\n");

    [Fact]
    public void What_is_skipped_at_the_end_says_nothing_about_the_place_of_others() => Offers.Rewrite(
        "2026-11-01 check|\n" + AllButGums + "  gums pink\n  crt 1s\n" + FromNode.Replace("  temp 38.6C\n", "", StringComparison.Ordinal).Replace("  weight 15kg\n", "", StringComparison.Ordinal) + "  skip temp no one to hold him\n", "add-missing",
        "2026-11-01 check\n" + AllButGums + "  gums pink\n  crt 1s\n" + FromNode.Replace("  temp 38.6C\n", "", StringComparison.Ordinal).Replace("  weight 15kg\n", "  skip weight\n", StringComparison.Ordinal) + "  skip temp no one to hold him\n");

    [Theory]
    [InlineData("2026-11-01 check|\n  gums pink\n  else ok\n", "Add what this check does not name, as skipped: bcs, mcs, crt, hr and 3 more")]
    [InlineData("2026-11-01 check|\n  gums\n  else ok\n  crt\n", "Add what this check does not name, as skipped: bcs, mcs, hr, rr and 2 more")]
    [InlineData("known diabetes\n2026-11-01 check|\n  hr 18/15s\n  rr 8/30s\n  temp 38.6C\n  bcs 5/9\n  mcs 3/3\n  crt 1s\n  else ok\n", "Add what this check does not name, as skipped: glucose, weight")]
    [InlineData("2026-11-01 check|\n  gums pink\n  else ok\n2026-11-01 18:00 check\n  bcs 5/9\n  mcs 3/3\n  crt 1s\n  hr 18/15s\n", "Add what this check does not name, as skipped: rr, temp, weight")]
    public void Else_ok_speaks_for_parts_and_never_for_a_measurement(string note, string expected) => Assert.Equal([expected], Offers.Titles(note, "add-missing"));

    [Fact]
    public void A_check_that_names_everything_lacks_nothing() => Offers.None("2026-11-01 check|\n" + AllButGums + "  gums pink\n  crt 1s\n" + FromNode, "add-missing");

    [Theory]
    [InlineData("2026-11-01 log|\n  gums pink\n")]
    [InlineData("2026-11-01 visit|\n  gums pink\n")]
    [InlineData("|pet Marlow\n")]
    public void Only_a_check_is_made_whole(string note) => Assert.DoesNotContain(Offers.At(note), offer => offer.Id is "add-missing" or "else-ok" or "record-lumps");

    [Fact]
    public void The_rest_is_ok() => Offers.Rewrite(
        "2026-11-01 check|\n  gums pink\n  ear L wax\n    > Again.\n  > Calm.\n  ask why?\n", "else-ok", "2026-11-01 check\n  gums pink\n  ear L wax\n    > Again.\n  else ok\n  > Calm.\n  ask why?\n");

    [Theory]
    [InlineData("2026-11-01 check|\n  gums pink\n  else ok\n")]
    [InlineData("2026-11-01 check|\n")]
    public void The_rest_is_ok_once_and_not_of_nothing(string note) => Offers.None(note, "else-ok");

    [Fact]
    public void A_check_for_today_waits_to_be_filled_in()
    {
        Document document = Cursor.Note("pet Marlow\nspecies dog\n\n2026-11-01 check\n  lump L-flank @lower 12mm\n  lump chin gone\n");
        CheckEdit check = CheckEdits.AddCheckForToday(document);
        string text = Cursor.Apply(document, [check.Edit!]);
        Assert.Equal("""
            pet Marlow
            species dog

            2026-11-01 check
              lump L-flank @lower 12mm
              lump chin gone

            2026-11-25 check
              # Take the # away from a line and write what you saw. What stays behind a # is not recorded.
              # rr asleep
              # alert
              # stance
              # gait
              # weight
              # coat
              # skin
              # bcs
              # mcs
              # eye
              # nose
              # ear
              # mouth
              # tooth
              # gums
              # crt
              # node
              # hr
              # joint
              # muscle
              # limb
              # paw
              # nail
              # belly
              # gland
              # genitals
              # anus
              # tail
              # temp
              # lump L-flank @lower
              # ate
              # water
              # pee
              # stool
              # vomit
              # cough
              # gave
              # mood
              # else ok

            """.ReplaceLineEndings("\n"), text);
        Assert.StartsWith("# rr asleep", text.Split('\n')[check.Cursor.Line][check.Cursor.Character..]);
    }

    [Theory]
    [InlineData("", "2026-11-25 check\n")]
    [InlineData("pet Marlow", "pet Marlow\n\n2026-11-25 check\n")]
    [InlineData("pet Marlow\r\n", "pet Marlow\r\n\r\n2026-11-25 check\r\n")]
    [InlineData("pet Marlow\r\n\r\n", "pet Marlow\r\n\r\n2026-11-25 check\r\n")]
    [InlineData("pet Marlow\n  ", "pet Marlow\n  \n\n2026-11-25 check\n")]
    [InlineData("pet Marlow\n\n  ", "pet Marlow\n\n  \n2026-11-25 check\n")]
    [InlineData("\ufeffpet 🐶\r", "\ufeffpet 🐶\r\r2026-11-25 check\r")]
    public void It_goes_to_the_end_with_the_line_breaks_of_the_note(string before, string expected)
    {
        var document = Document.Open("file:///a.hnote", 1, before, Cursor.Today);
        CheckEdit check = CheckEdits.AddCheckForToday(document);
        string text = Cursor.Apply(document, [check.Edit!]);
        Assert.StartsWith(expected, text);
        Document after = Document.Open("file:///a.hnote", 2, text, Cursor.Today);
        Assert.Equal("# rr asleep", after.Syntax.Lines[check.Cursor.Line].Text[check.Cursor.Character..]);
        Assert.DoesNotContain(after.Analysis.Findings, finding => finding.Line >= document.Syntax.Lines.Length);
    }

    [Fact]
    public void Today_has_one_check()
    {
        CheckEdit check = CheckEdits.AddCheckForToday(Cursor.Note("2026-11-25 08:00 check\n  gums pink\n"));
        Assert.Equal(new CheckEdit(null, new Place(0, 22)), check);
    }
}
