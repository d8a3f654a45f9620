using HealthNotes.Features.Documents;
using HealthNotes.Grammar.Parsing;
using HealthNotes.Tests.Support;

namespace HealthNotes.Tests.Features;

public class DocumentTests
{
    [Theory]
    [InlineData("hr 1‹8›/15s\n", "9", "hr 19/15s\n")]
    [InlineData("a‹\nb\nc›d\n", "-", "a-d\n")]
    [InlineData("one‹›", "\r\ntwo\r\n", "one\r\ntwo\r\n")]
    [InlineData("‹pet Marlow\n›species dog\n", "", "species dog\n")]
    [InlineData("pet Marlow\nspecies‹ dog\n›", "", "pet Marlow\nspecies")]
    public void An_edit_replaces_its_range(string marked, string text, string expected)
    {
        Cursor at = Cursor.In(marked);
        Document edited = at.Document.Edit(new DocumentEdit(at.Range, text), 2);
        Assert.Equal(expected, edited.Syntax.Print());
        Assert.Equal(2, edited.Version);
    }

    [Theory]
    [InlineData(99, 0, 99, 5)]
    [InlineData(1, 99, 1, 100)]
    [InlineData(-1, -5, 99, 99)]
    [InlineData(1, 3, 0, 2)]
    public void An_edit_outside_the_text_counts_as_its_end(int line, int character, int endLine, int endCharacter)
    {
        Document edited = Cursor.Note("pet Marlow\nspecies dog").Edit(new DocumentEdit(new(new(line, character), new(endLine, endCharacter)), "!"), 2);
        Assert.Equal(NoteSyntax.Parse(edited.Syntax.Print()).Lines.Length, edited.Syntax.Lines.Length);
        Assert.Contains("!", edited.Syntax.Print(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_carriage_return_and_a_line_feed_that_meet_become_one_line_break()
    {
        Document before = Document.Open("file:///a.hnote", 1, "pet A\rx\nspecies dog", Cursor.Today);
        Document after = before.Edit(new DocumentEdit(new(new(1, 0), new(1, 1)), ""), 2);
        Assert.Equal("pet A\r\nspecies dog", after.Syntax.Print());
        Assert.Equal(2, after.Syntax.Lines.Length);
    }
}
