using CsCheck;
using HealthNotes.Features.Documents;
using HealthNotes.LanguageServer.Convert;
using HealthNotes.LanguageServer.Protocol;
using HealthNotes.LanguageServer.State;
using HealthNotes.Tests.Grammar.Properties;
using HealthNotes.Tests.Support;
using Range = HealthNotes.LanguageServer.Protocol.Range;

namespace HealthNotes.Tests.LanguageServer;

/// <summary>Incremental edits: our text stays the client's.</summary>
public class ContentChangeTests
{
    private static readonly DateOnly Today = new(2026, 11, 25);

    private static OpenNote Open(string text) => new(Document.Open("file:///n.hnote", 1, text, Today), null);

    private static OpenNote Apply(string text, params TextDocumentContentChangeEvent[] changes) =>
        ContentChanges.Apply(Open(text), changes, 2, PositionEncoding.Utf16);

    private static TextDocumentContentChangeEvent Edit(int line, int from, int toLine, int to, string text) =>
        new(new Range(new Position(line, from), new Position(toLine, to)), text);

    [Fact]
    public void Several_changes_are_applied_in_order_each_to_the_text_after_the_one_before()
    {
        OpenNote note = Apply("gums pink\n", Edit(0, 5, 0, 9, "red"), Edit(0, 8, 0, 8, " moist"), Edit(1, 0, 1, 0, "crt 1s"));
        Assert.Equal("gums red moist\ncrt 1s", note.Document.Syntax.Print());
        Assert.Equal(2, note.Document.Version);
        Assert.Equal(new Place(1, 6), note.Caret);
    }

    [Fact]
    public void A_change_without_a_range_is_the_whole_text() =>
        Assert.Equal("crt 1s", Apply("gums pink\n", Edit(0, 0, 0, 4, "x"), new TextDocumentContentChangeEvent(null, "crt 1s")).Document.Syntax.Print());

    [Theory]
    [InlineData("red", 0, 8)]
    [InlineData("red\n", 1, 0)]
    [InlineData("red\r\ncrt", 1, 3)]
    [InlineData("red\rcrt 1s\r", 2, 0)]
    [InlineData("", 0, 5)]
    public void Where_the_last_change_ended(string text, int line, int character) =>
        Assert.Equal(new Place(line, character), Apply("gums pink\n", Edit(0, 5, 0, 9, text)).Caret);

    [Theory]
    [InlineData(0, 0, 0, 1, "", "pet M\n")] // the mark alone is taken away
    [InlineData(0, 0, 0, 4, "", " M\n")]
    [InlineData(0, 0, 0, 0, "x", "x\uFEFFpet M\n")] // before the mark
    [InlineData(0, 1, 0, 4, "dog", "\uFEFFdog M\n")]
    [InlineData(0, 0, 1, 0, "new", "new")]
    [InlineData(1, 0, 1, 0, "y", "\uFEFFpet M\ny")]
    public void A_byte_order_mark_is_a_character_to_the_client(int line, int from, int toLine, int to, string text, string after) =>
        Assert.Equal(after, Apply("\uFEFFpet M\n", Edit(line, from, toLine, to, text)).Document.Syntax.Print());

    [Theory]
    [InlineData(-3, -3, 99, 99)]
    [InlineData(5, 0, 9, 9)]
    [InlineData(1, 0, 0, 2)]
    public void Edits_out_of_range_or_back_to_front_do_no_harm(int line, int from, int toLine, int to) =>
        Assert.NotNull(Apply("gums pink\n", Edit(line, from, toLine, to, "x")).Document.Analysis);

    /// <summary>A client that applies the same edits to a plain string ends with the same text, in every encoding.</summary>
    [Fact]
    public void Random_edits_leave_both_sides_with_the_same_text() =>
        Gen.Select(Soup.PlainNote, Gen.Select(Gen.Int[0, 10_000], Gen.Int[0, 40], Soup.Odd).Array[1, 6], Gen.Enum<PositionEncoding>()).ForAll(
            (start, edits, encoding) =>
            {
                string text = start;
                OpenNote note = Open(text);
                foreach ((int at, int length, string put) in edits)
                {
                    int from = OutsidePair(text, at % (text.Length + 1));
                    int to = OutsidePair(text, Math.Min(text.Length, from + length));
                    var range = new Range(PositionOf(text, from, encoding), PositionOf(text, to, encoding));
                    text = string.Concat(text.AsSpan(0, from), put, text.AsSpan(to));
                    note = ContentChanges.Apply(note, [new TextDocumentContentChangeEvent(range, put)], note.Document.Version + 1, encoding);
                    Assert.Equal(text, note.Document.Syntax.Print());
                }
            },
            iter: Effort.Times(400));

    private static int OutsidePair(string text, int at) => at > 0 && at < text.Length
        && (char.IsSurrogatePair(text[at - 1], text[at]) || (text[at - 1] == '\r' && text[at] == '\n')) ? at - 1 : at;

    private static Position PositionOf(string text, int at, PositionEncoding encoding)
    {
        int line = 0;
        int start = 0;
        for (int i = 0; i < at; i++)
        {
            if (text[i] == '\n' || (text[i] == '\r' && !(i + 1 < text.Length && text[i + 1] == '\n')))
            {
                line++;
                start = i + 1;
            }
        }

        return new Position(line, Positions.UnitsOf(text.AsSpan(start, at - start), encoding));
    }
}
