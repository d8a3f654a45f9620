using HealthNotes.Features.Actions;
using HealthNotes.Features.Documents;
using HealthNotes.Features.Hover;
using HealthNotes.Features.Lenses;
using HealthNotes.Tests.Support;

namespace HealthNotes.Tests.Features.Actions;

/// <summary>A check that is filled in part by part.</summary>
public class NextPartTests
{
    private const string Check = "species dog\n2026-11-25 check\n  # Take the # away from a line and write what you saw. What stays behind a # is not recorded.\n";

    [Theory]
    [InlineData("  #| alert\n  # gums\n", "  alert |\n  # gums\n")]
    [InlineData("  alert bright|\n  # rr asleep\n  # gums\n", "  alert bright\n  rr asleep |\n  # gums\n")]
    [InlineData("  alert |\n  gums pink\n  # eye\n", "  # alert\n  gums pink\n  eye |\n")] // what was not seen is not left half written
    [InlineData("  # alert\n  gums |\n", "  alert |\n  # gums\n")] // from the end on to what was passed over
    [InlineData("  # lump L-flank @lower\n  gums pink|\n", "  lump L-flank @lower |\n  gums pink\n")]
    public void Next(string lines, string expected)
    {
        var cursor = Cursor.In(Check + lines);
        CheckEdit next = NextPart.After(cursor.Document, cursor.Place.Line)!;
        string[] text = Cursor.Apply(cursor.Document, [next.Edit!]).Split('\n');
        text[next.Cursor.Line] = text[next.Cursor.Line].Insert(next.Cursor.Character, "|");
        Assert.Equal(Check + expected, string.Join('\n', text));
    }

    [Theory]
    [InlineData("  alert |\n")] // nothing else waits
    [InlineData("  alert bright|\n  # else ok\n")] // that all the rest is ok is only for its writer to say
    [InlineData("  alert bright|\n  # gums were paler last week\n")]
    public void None(string lines)
    {
        var cursor = Cursor.In(Check + lines);
        Assert.Null(NextPart.After(cursor.Document, cursor.Place.Line));
    }

    [Fact]
    public void From_elsewhere_it_goes_to_todays_check()
    {
        Document document = Cursor.Note(Check + "  # gums\n");
        Assert.Equal(3, NextPart.After(document, 0)!.Cursor.Line);
        Assert.Null(NextPart.After(Cursor.Note("species dog\n2026-11-20 check\n  # gums\n"), 0));
    }

    [Fact]
    public void The_lens_above_the_check_does_it() =>
        Assert.Equal(LensCommands.NextPart, LensFeature.In(Cursor.Note(Check + "  # gums\n"), FeatureSettings.Default).Single(lens => lens.Range.Start.Line == 1).Command?.Name);

    [Fact]
    public void A_part_behind_its_mark_is_explained()
    {
        Assert.Contains("How to take it", HoverFeature.At(Cursor.Note(Check + "  # gums\n"), new Place(3, 5), FeatureSettings.Default)!.Markdown, StringComparison.Ordinal);
        Assert.Null(HoverFeature.At(Cursor.Note(Check + "  # gums look paler than before\n"), new Place(3, 5), FeatureSettings.Default));
    }

    [Theory]
    [InlineData("pet M\nspecies dog\n\n2026-11-25 log\n  ", "pet M\nspecies dog\n\n2026-11-25 check\n")]
    [InlineData("pet M\nspecies dog\n\n2026-11-25 log\n  ate all\n", "pet M\nspecies dog\n\n2026-11-25 log\n  ate all\n\n2026-11-25 check\n")]
    [InlineData("pet M\nspecies dog\n\n2026-11-24 log\n", "pet M\nspecies dog\n\n2026-11-24 log\n\n2026-11-25 check\n")]
    public void An_empty_log_of_today_becomes_the_check(string note, string start)
    {
        Document document = Cursor.Note(note);
        Assert.StartsWith(start, Cursor.Apply(document, [CheckEdits.AddCheckForToday(document).Edit!]), StringComparison.Ordinal);
    }
}
