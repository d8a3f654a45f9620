using HealthNotes.Features.Completion;
using HealthNotes.Features.Completion.Items;
using HealthNotes.Features.Documents;
using HealthNotes.Tests.Support;

namespace HealthNotes.Tests.Features.Completion;

/// <summary>Where something is offered at all, and what an offer replaces.</summary>
public class CompletionPlaceTests
{
    [Theory]
    [InlineData("# a comm|ent")]
    [InlineData("pet Marlow # the d|og")]
    [InlineData("pet Marlow #|")]
    [InlineData("2026-10-04\n  > he sha|")]
    [InlineData("2026-10-04\n  >|")]
    [InlineData("2026-10-04\n  #|")]
    [InlineData("pet Ma|")]
    [InlineData("pet Marlow\nbreed co|")]
    [InlineData("2026-10-04\n  ask is it |")]
    [InlineData("2026-10-04\n  photo le|")]
    [InlineData("2026-10-04\n  gave benazepril 5mg he spat |")]
    [InlineData("2026-10-04\n  skip anus he would not have |")]
    [InlineData("2026-10-04\n  nothing known he|")]
    public void Free_words_and_comments_are_the_writers_own(string marked) => Assert.Empty(Offered.At(marked).Items);

    [Theory]
    [InlineData("2026-10-04 check\n  gums pin|", "pink", "  gums pink")]
    [InlineData("2026-10-04 check\n  gums p|nik moist", "pink", "  gums pink moist")]
    [InlineData("2026-10-04 check\n  gums |moist", "pink", "  gums pink moist")]
    [InlineData("2026-10-04 check\n  gums pink|, moist", "pink", "  gums pink, moist")]
    [InlineData("2026-10-04 check\n  gums moist pi|   # by daylight", "pink", "  gums moist pink   # by daylight")]
    [InlineData("2026-10-04 check\n  |gums pink", "eye", "  eye gums pink")]
    [InlineData("2026-10-04 check\n  gu| pink", "gums", "  gums pink")]
    [InlineData("2026-10-04 check\n  ear \ud83d\udc36 bro|", "brown", "  ear \ud83d\udc36 brown")]
    [InlineData("2026-10-04 check\n  ear e\u0301 bro|wn", "brown", "  ear e\u0301 brown")]
    public void An_offer_takes_the_place_of_the_word_and_of_nothing_else(string marked, string label, string expected) =>
        Assert.EndsWith(expected, Offered.Taking(marked, label), StringComparison.Ordinal);

    [Fact]
    public void Line_breaks_of_windows_stay()
    {
        string text = "pet Tansy\r\n2026-10-04 check\r\n  gums pi\r\n  eye ok\r\n";
        var document = Document.Open("file:///a.hnote", 1, text, Cursor.Today);
        CompletionItem pink = CompletionFeature.At(document, new Place(2, 9), FeatureSettings.Default).Items.First(item => item.Label == "pink");
        Assert.Equal(text.Replace("gums pi", "gums pink", StringComparison.Ordinal), Cursor.Apply(document, [pink.Edit]));
    }

    [Fact]
    public void A_place_outside_the_text_counts_as_its_end()
    {
        Document document = Cursor.Note("2026-10-04 check\n  gums pin");
        Assert.Contains(CompletionFeature.At(document, new Place(99, 99), FeatureSettings.Default).Items, item => item.Label == "pink");
        Assert.NotEmpty(CompletionFeature.At(document, new Place(-3, -1), FeatureSettings.Default).Items);
    }

    [Fact]
    public void A_line_too_long_to_be_read_gets_no_offers() =>
        Assert.Empty(Offered.At("2026-10-04\n  gums " + new string('x', 5000) + " |").Items);

    [Fact]
    public void Without_a_word_that_starts_so_the_nearest_is_offered_under_what_was_typed()
    {
        CompletionItem knee = Offered.Item("species dog\n2026-10-04 check\n  joint stifel|", "L-knee");
        Assert.Equal("stifel", knee.FilterText);
        Assert.Equal(["gums"], Offered.Labels("2026-10-04 check\n  gusm|"));
    }
}
