using CsCheck;
using HealthNotes.Features.Documents;
using HealthNotes.Features.Symbols;
using HealthNotes.Tests.Grammar.Properties;
using HealthNotes.Tests.Support;

namespace HealthNotes.Tests.Features.Symbols;

public class SelectionTests
{
    [Theory]
    [InlineData("  hr 18/1|5s # calm", "15s~18/15s~hr 18/15s~  hr 18/15s # calm")]
    [InlineData("  lump L-fl|ank 12mm", "flank~L-flank~lump L-flank 12mm~  lump L-flank 12mm")]
    [InlineData("  lu|mp L-flank", "lump~lump L-flank~  lump L-flank")]
    [InlineData("  weight 21.|4kg", "21.4kg~weight 21.4kg~  weight 21.4kg")]
    [InlineData("  ask is it o|ld?", "old~is it old?~ask is it old?~  ask is it old?")]
    [InlineData("  crt 1s # a w|ord", "word~# a word~  crt 1s # a word")]
    [InlineData("  gums |  pink", "gums   pink~  gums   pink")]
    [InlineData("|", "")]
    [InlineData("gone|", "gone")]
    public void A_selection_grows_by_what_belongs_together(string line, string expected)
    {
        Cursor at = Cursor.In($"pet A\n\n2026-10-04 check\n{line}\n\n2026-10-05 log\n");
        PlaceRange[] ranges = [.. SelectionFeature.Around(at.Document, at.Place)];
        Assert.Equal(expected, string.Join('~', ranges.Where(range => range.Start.Line == 3 && range.End.Line == 3).Select(range => at.Document.Syntax.Lines[3].Text[range.Start.Character..range.End.Character])));
        Assert.Equal(new PlaceRange(new(2, 0), new(3, line.Length - 1)), ranges[^2]);
        Assert.Equal(new PlaceRange(new(0, 0), new(6, 0)), ranges[^1]);
    }

    [Fact]
    public void A_block_of_free_text_comes_before_its_entry()
    {
        Cursor at = Cursor.In("2026-10-04 check\n  > one\n  > tw|o\n  gums pink\n");
        Assert.Contains(new PlaceRange(new(1, 0), new(2, 7)), SelectionFeature.Around(at.Document, at.Place));
    }

    [Fact]
    public void Accents_and_emoji_are_not_cut()
    {
        Cursor at = Cursor.In("2026-10-04 check\n  ask ae\u0301|o \ud83d\udc36\n");
        Assert.Equal(new PlaceRange(new(1, 6), new(1, 10)), SelectionFeature.Around(at.Document, at.Place)[0]);
    }

    [Fact]
    public void At_every_place_ranges_grow_strictly_up_to_the_document() => Soup.Note.ForAll(text =>
    {
        Document note = Document.Open("file:///a.hnote", 1, text, Cursor.Today);
        var whole = new PlaceRange(new Place(0, 0), note.Clamp(new Place(int.MaxValue, 0)));
        for (int line = -1; line <= note.Syntax.Lines.Length; line++)
        {
            for (int character = 0; character < 60; character++)
            {
                Place place = note.Clamp(new Place(line, character));
                PlaceRange[] ranges = [.. SelectionFeature.Around(note, new Place(line, character))];
                Assert.Equal(whole, ranges[^1]);
                Assert.All(ranges, range => Assert.True(range.Touches(place) && note.Clamp(range.Start) == range.Start && note.Clamp(range.End) == range.End));
                Assert.All(ranges.Zip(ranges.Skip(1)), pair => Assert.True(pair.Second.Start <= pair.First.Start && pair.First.End <= pair.Second.End && pair.First != pair.Second));
            }
        }
    }, iter: Effort.Times(60));
}
