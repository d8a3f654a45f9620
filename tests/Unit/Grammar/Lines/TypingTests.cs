using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Parsing;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Tests.Support;

namespace HealthNotes.Tests.Grammar.Lines;

/// <summary>Lines that are not finished, comments, and free text.</summary>
public class TypingTests
{
    [Theory]
    [InlineData("2026-10-04 08:15 check by Ann  # at home")]
    [InlineData("  lump L-flank @lower 12x9mm soft, moves  # new")]
    [InlineData("med benazepril 5mg PO every 12h from 2026-01-20 with food")]
    [InlineData("usual rr 16-24 asleep per vet 2026-01-20")]
    [InlineData("07:30 gave benazepril 1 1/2 tablets with food spat it out")]
    [InlineData("recheck lump L-flank @lower in 2w at 08:30")]
    public void A_half_typed_line_is_read_as_far_as_it_goes(string whole)
    {
        for (int length = 0; length <= whole.Length; length++)
        {
            LineSyntax line = NoteSyntax.Parse(whole[..length]).Lines[0];
            Assert.Equal(whole[..length], string.Concat(line.Tokens.Select(token => token.Span.In(line.Text).ToString())));
        }
    }

    /// <summary>Whole or nothing: what was typed so far is marked, and none of it counts.</summary>
    [Fact]
    public void What_is_there_already_is_marked_but_counts_for_nothing_while_the_rest_is_typed()
    {
        LineSyntax line = NoteSyntax.Parse("lump L-flank 12").Lines[0];
        Assert.Empty(line.Items);
        Assert.Equal([TokenKind.LineWord, TokenKind.Site, TokenKind.Unknown], line.Marks.Select(mark => mark.Kind));
    }

    [Theory]
    [InlineData("gums pink # after the walk", "# after the walk")]
    [InlineData("gums pink\t#x", "#x")]
    [InlineData("# only", "# only")]
    [InlineData("   #", "#")]
    [InlineData("2026-10-04 # first", "# first")]
    [InlineData("ask is that the #1 thing?", "#1 thing?")]
    public void Comments(string line, string comment)
    {
        LineSyntax read = NoteSyntax.Parse(line).Lines[0];
        Assert.Equal(comment, read.Marks.Single(mark => mark.Kind == TokenKind.Comment).Span.In(line).ToString());
    }

    [Theory]
    [InlineData("ask is a#b a word?")]
    [InlineData("> free text # is free text")]
    [InlineData("gums pink")]
    public void No_comments(string line) => Assert.DoesNotContain(NoteSyntax.Parse(line).Lines[0].Marks, mark => mark.Kind == TokenKind.Comment);

    [Theory]
    [InlineData("> He **limps**.", "He **limps**.")]
    [InlineData(">no blank", "no blank")]
    [InlineData(">   three", "  three")]
    [InlineData(">", "")]
    [InlineData("    > deep", "deep")]
    [InlineData(">> quoted", "> quoted")]
    public void Free_text_is_what_stands_behind_its_mark(string line, string text) => Assert.Equal(text, NoteSyntax.Parse(line).Lines[0].FreeText);

    [Fact]
    public void Free_text_belongs_to_the_line_it_is_indented_below_or_to_the_entry()
    {
        Note note = Marked.Check("""
            pet Marlow
            > Found as a stray.
            2026-10-04 check
              > He was calm.
              ear L wax
                > Only at the edge.
                > Since Sunday.
              > Then we stopped.
              gums pink

                > After a blank line.
              eye both clear
                # a comment between
                > Still about the eyes.
            """);
        Assert.Equal(("Found as a stray.", null), Block(note.Opening.Texts[0]));
        Assert.Equal(
            [
                ("He was calm.", null),
                ("Only at the edge.\nSince Sunday.\nThen we stopped.", 4),
                ("After a blank line.", null),
                ("Still about the eyes.", 11),
            ],
            note.Entries[0].Texts.Select(Block));
    }

    [Fact]
    public void Free_text_below_a_broken_line_stays_below_it()
    {
        var note = Note.Read("2026-10-04\n  lump 12mm\n     > It moves.\n  gmus pink\n     > Not about gums.\n");
        Assert.Equal([("It moves.", 1), ("Not about gums.", null)], note.Entries[0].Texts.Select(Block));
    }

    private static (string, int?) Block(FreeTextBlock block) => (block.Markdown, block.BelongsTo);
}
