using HealthNotes.Features.Actions;
using HealthNotes.Features.Documents;
using HealthNotes.Tests.Support;

namespace HealthNotes.Tests.Features.Actions;

/// <summary>Where a cursor may stand, and what is offered there.</summary>
public class PlaceTests
{
    [Theory]
    [InlineData("|", "say-species say-species")]
    [InlineData("pet Marlow\nspecies dog\nborn 2020\n\n|\n\n2026-11-01 log\n  ate all\n", "")]
    [InlineData("pet Marlow\nspecies dog\nborn 2020\n2026-11-01 log|", "")]
    [InlineData("2026-11-01 log\n  hr |", "")]
    [InlineData("2026-11-01 log\n  hr 18/15s|", "")]
    [InlineData("2026-11-01 log\n  coat gl|osssy", "corrected-line")]
    [InlineData("2026-11-01 log\n  coat glosssy|", "corrected-line")]
    [InlineData("2026-11-01 log\n|  coat glosssy", "corrected-line")]
    [InlineData("2026-11-01 log\n  coat glosssy\n|", "")]
    [InlineData("2026-11-01 log\n  > coat glosssy|", "")]
    [InlineData("2026-11-01 log\n  # coat glosssy|", "")]
    public void Everything_about_the_line_is_offered_wherever_the_cursor_stands_in_it(string marked, string expected) =>
        Assert.Equal(expected, string.Join(' ', Offers.At(marked).Select(offer => offer.Id)));

    [Fact]
    public void A_selection_has_the_fixes_of_its_lines() =>
        Assert.Equal(["Write: coat glossy *", "Write: ear L brown *"], Offers.Titles("2026-11-01 log\n  ‹coat glosssy\n  ear L brwn›\n  gums pnik\n", "corrected-line"));

    /// <summary>Some editors always ask for the whole line that the cursor is in: it ends where the next line begins.</summary>
    [Fact]
    public void A_whole_line_is_one_line()
    {
        Assert.Equal(
            "convert-unit add-missing else-ok",
            string.Join(' ', Offers.At("species dog\n2026-11-01 check\n‹  temp 38.6C rectal\n›  weight 21kg\n").Select(offer => offer.Id)));
        Assert.Equal("", string.Join(' ', Offers.At("species dog\n2026-11-01 log\n‹  coat glossy\n›  ear L brwn\n").Select(offer => offer.Id)));
        Assert.Equal(["Write: coat glossy *"], Offers.Titles("2026-11-01 log\n‹  coat glosssy\n›  ear L brwn\n", "corrected-line"));
    }

    [Theory]
    [InlineData(-3, -3)]
    [InlineData(99, 99)]
    [InlineData(1, 999)]
    public void A_place_outside_the_text_counts_as_the_nearest(int line, int character)
    {
        Document document = Cursor.Note("2026-11-01 log\n  coat glosssy");
        _ = ActionFeature.In(document, PlaceRange.At(line, character), FeatureSettings.Default);
        Assert.NotEmpty(ActionFeature.In(document, new PlaceRange(new Place(99, 0), new Place(line, character)), FeatureSettings.Default));
    }

    [Fact]
    public void Windows_line_ends_and_characters_of_two_units()
    {
        var document = Document.Open("file:///a.hnote", 1, "\ufeff2026-11-01 log\r\n  ear L browwn # 🐶 e\u0301\r\n  lump L-nose 3mm # 🐶\r\n", Cursor.Today);
        Assert.Equal("\ufeff2026-11-01 log\r\n  ear L brown # 🐶 e\u0301\r\n  lump nose 3mm # 🐶\r\n", Cursor.Apply(document, ActionFeature.FixAll(document)));
    }
}
