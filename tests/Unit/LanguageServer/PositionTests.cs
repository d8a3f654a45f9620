using System.Text;
using CsCheck;
using HealthNotes.Features.Documents;
using HealthNotes.LanguageServer.Convert;
using HealthNotes.LanguageServer.Protocol;
using HealthNotes.Tests.Grammar.Properties;
using HealthNotes.Tests.Support;

namespace HealthNotes.Tests.LanguageServer;

/// <summary>Places and the client's positions, in each encoding.</summary>
public class PositionTests
{
    private static readonly DateOnly Today = new(2026, 11, 25);

    private static Document Open(string text) => Document.Open("file:///n.hnote", 1, text, Today);

    [Theory]
    [InlineData("utf-16", 12, 12)]
    [InlineData("utf-8", 12, 15)]
    [InlineData("utf-32", 12, 11)]
    public void A_place_behind_an_emoji_and_an_accent(string encoding, int character, int units)
    {
        // "é" takes 2 bytes, the dog 4 bytes and two UTF-16 units
        Document document = Open("ask é is 🐕 ok\n");
        PositionEncoding negotiated = PositionEncodings.Negotiate([encoding]);
        Assert.Equal(new Position(0, units), Positions.Of(document, new Place(0, character), negotiated));
        Assert.Equal(new Place(0, character), Places.Of(document, new Position(0, units), negotiated));
    }

    [Theory]
    [InlineData("utf-16", 1)]
    [InlineData("utf-8", 3)]
    [InlineData("utf-32", 1)]
    public void A_byte_order_mark_counts_on_the_first_line_only(string encoding, int mark)
    {
        Document document = Open("\uFEFFpet Marlow\nspecies dog\n");
        PositionEncoding negotiated = PositionEncodings.Negotiate([encoding]);
        Assert.Equal(new Position(0, 4 + mark), Positions.Of(document, new Place(0, 4), negotiated));
        Assert.Equal(new Place(0, 4), Places.Of(document, new Position(0, 4 + mark), negotiated));
        Assert.Equal(new Place(0, 0), Places.Of(document, new Position(0, 0), negotiated));
        Assert.Equal(new Position(1, 4), Positions.Of(document, new Place(1, 4), negotiated));
    }

    [Theory]
    [InlineData(0, 99, 0, 10)]
    [InlineData(0, -1, 0, 0)]
    [InlineData(-5, 3, 0, 0)]
    [InlineData(99, 0, 2, 0)]
    [InlineData(1, int.MaxValue, 1, 11)]
    [InlineData(int.MaxValue, int.MaxValue, 2, 0)]
    public void A_position_that_does_not_exist_becomes_the_nearest(int line, int character, int placeLine, int placeCharacter)
    {
        Document document = Open("pet Marlow\nspecies dog\n");
        foreach (PositionEncoding encoding in Enum.GetValues<PositionEncoding>())
        {
            Assert.Equal(new Place(placeLine, placeCharacter), Places.Of(document, new Position(line, character), encoding));
        }
    }

    [Fact]
    public void A_unit_inside_a_character_counts_as_its_start()
    {
        Document document = Open("ask 🐕");
        Assert.Equal(new Place(0, 4), Places.Of(document, new Position(0, 6), PositionEncoding.Utf8));
        Assert.Equal(new Place(0, 6), Places.Of(document, new Position(0, 8), PositionEncoding.Utf8));
    }

    [Theory]
    [InlineData(null, "utf-16")]
    [InlineData("", "utf-16")]
    [InlineData("utf-8", "utf-8")]
    [InlineData("utf-32,utf-8", "utf-8")]
    [InlineData("utf-32", "utf-32")]
    [InlineData("utf-8,utf-16", "utf-16")]
    [InlineData("ebcdic", "utf-16")]
    public void Negotiation(string? offered, string chosen) =>
        Assert.Equal(chosen, PositionEncodings.NameOf(PositionEncodings.Negotiate(offered?.Split(',', StringSplitOptions.RemoveEmptyEntries))));

    /// <summary>The framework's encoders count the same.</summary>
    [Fact]
    public void Units_are_those_of_the_encoders() => Soup.Odd.ForAll(text =>
    {
        Assert.Equal(Encoding.UTF8.GetByteCount(text), Positions.UnitsOf(text, PositionEncoding.Utf8));
        Assert.Equal(Encoding.UTF32.GetByteCount(text) / 4, Positions.UnitsOf(text, PositionEncoding.Utf32));
    });

    [Fact]
    public void Every_place_between_characters_comes_back() => Soup.Odd.ForAll(text =>
    {
        Document document = Open(text);
        for (int line = 0; line < document.Syntax.Lines.Length; line++)
        {
            string written = document.Syntax.Lines[line].Text;
            for (int character = 0; character <= written.Length; character++)
            {
                bool insidePair = character > 0 && character < written.Length && char.IsSurrogatePair(written[character - 1], written[character]);
                foreach (PositionEncoding encoding in Enum.GetValues<PositionEncoding>())
                {
                    var place = new Place(line, character);
                    Place back = Places.Of(document, Positions.Of(document, place, encoding), encoding);
                    Assert.True(insidePair ? back.Line == line : back == place, $"{place} came back as {back} in {encoding}");
                }
            }
        }
    });
}
