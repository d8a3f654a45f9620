using CsCheck;
using HealthNotes.Grammar.Formatting;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Tests.Support;

namespace HealthNotes.Tests.Grammar.Properties;

/// <summary>What <c>format</c> may do to a note: change its looks, never what it says.</summary>
public class FormatProperties
{
    [Fact]
    public void Format_is_idempotent() => Soup.Note.Sample(
        text =>
        {
            string once = Formatted(text);
            Assert.Equal(once, Formatted(once));
        },
        iter: Effort.Times(600));

    [Fact]
    public void Format_keeps_the_meaning() => Soup.Note.Sample(
        text => Assert.Equal(Meaning.Of(Note.Read(text)), Meaning.Of(Note.Read(Formatted(text)))),
        iter: Effort.Times(600));

    /// <summary>The same line by line, where more lines can be tried.</summary>
    [Fact]
    public void The_canonical_line_reads_back_to_the_same_meaning() => Soup.Item.Sample(
        text =>
        {
            LineSyntax line = NoteSyntax.Parse(text).Lines[0];
            if (line.Problems.IsEmpty && line.Item is { } item)
            {
                string canonical = ItemPrinter.Print(item);
                LineSyntax again = NoteSyntax.Parse(canonical).Lines[0];
                Assert.True(again.Problems.IsEmpty, $"{text} -> {canonical}: {again.Problems.FirstOrDefault()?.Message}");
                Assert.Equal(Meaning.Of(item), Meaning.Of(again.Item));
                Assert.Equal(canonical, ItemPrinter.Print(again.Item!));
            }
        },
        iter: Effort.Times(10_000));

    [Fact]
    public void Format_keeps_every_comment_every_free_text_and_every_line_with_a_problem() => Soup.Note.Sample(
        text => Assert.Equal(Kept(text), Kept(Formatted(text))), iter: Effort.Times(600));

    private static string Formatted(string text) => NoteFormatter.Format(NoteSyntax.Parse(text));

    private static IEnumerable<string> Kept(string text) => NoteSyntax.Parse(text).Lines.SelectMany(line => line.Marks
        .Where(mark => mark.Kind == TokenKind.Comment)
        .Select(mark => mark.Span.In(line.Text).TrimEnd().ToString())
        .Append(line.Kind == LineKind.FreeText ? line.FreeText : line.Problems.IsEmpty ? "" : line.Text)
        .Where(kept => kept.Length > 0));
}
