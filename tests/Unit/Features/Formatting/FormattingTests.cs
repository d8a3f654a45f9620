using System.Text;
using CsCheck;
using HealthNotes.Features.Documents;
using HealthNotes.Features.Formatting;
using HealthNotes.Grammar.Formatting;
using HealthNotes.Grammar.Parsing;
using HealthNotes.Tests.Grammar.Properties;
using HealthNotes.Tests.Support;

namespace HealthNotes.Tests.Features.Formatting;

public class FormattingTests
{
    [Fact]
    public void Each_line_gets_the_smallest_edit()
    {
        Document note = Cursor.Note("pet Marlow\n2026-10-4 check\n  gums pink\n    ear  L   RED # x\n  gums purplish\n  > free");
        DocumentEdit[] expected =
        [
            DocumentEdit.Insert(1, 8, "0"),
            new(new(new(3, 2), new(3, 16)), "ear L red"),
            DocumentEdit.Insert(5, 8, "\n"),
        ];
        Assert.Equal(expected, FormattingFeature.Whole(note).AsEnumerable());
        Assert.Equal("pet Marlow\n2026-10-04 check\n  gums pink\n  ear L red # x\n  gums purplish\n  > free\n", Applied(note, FormattingFeature.Whole(note)));
    }

    [Fact]
    public void A_formatted_note_gets_none() =>
        Assert.All(Repository.Samples, file =>
        {
            string formatted = NoteFormatter.Format(NoteSyntax.Parse(File.ReadAllText(file)));
            Assert.Empty(FormattingFeature.Whole(Document.Open("file:///a.hnote", 1, formatted, Cursor.Today)));
        });

    [Theory]
    [InlineData("2026-10-04 check\n gums  pink\n‹ ear  L red\n›   hr  72\n", new[] { 2 })]
    [InlineData("2026-10-04 check\n gums  pink\n ear‹›  L red\n   hr  72\n", new[] { 2 })]
    [InlineData("2026-10-04 check\n gums  ‹pink\n ear  L red\n  › hr  72\n", new[] { 1, 2, 3 })]
    public void A_range_means_its_lines(string marked, int[] lines)
    {
        Cursor at = Cursor.In(marked);
        Assert.Equal(lines, FormattingFeature.InRange(at.Document, at.Range).Select(edit => edit.Range.Start.Line));
    }

    [Theory]
    [InlineData("2026-10-04\n|\n", "2026-10-04\n  \n")]
    [InlineData("2026-10-04 check\n|", "2026-10-04 check\n  ")]
    [InlineData("2026-10-04 check\n  |\n", "2026-10-04 check\n  \n")]
    [InlineData("2026-10-04 check\n\t|\n", "2026-10-04 check\n  \n")]
    [InlineData("2026-10-04 check\n  gums pink\n|ear L red\n", "2026-10-04 check\n  gums pink\n  ear L red\n")]
    [InlineData("2026-10-04 check\n  gums pink\n  \n  |\n", "2026-10-04 check\n  gums pink\n\n\n")]
    [InlineData("2026-10-04 check\n  gums pink\n\n|\n", "2026-10-04 check\n  gums pink\n\n\n")]
    [InlineData("2026-10-04 check\n    > one\n    |two\n", "2026-10-04 check\n    > one\n    > two\n")]
    [InlineData("2026-10-04 check\n    > one\n    |\n", "2026-10-04 check\n    > one\n  \n")]
    [InlineData("2026-10-04 check\n  > one\n  > \n  |\n", "2026-10-04 check\n  > one\n  \n")]
    [InlineData("2026-10-04 check\n|2026-10-05 log\n", "2026-10-04 check\n2026-10-05 log\n")]
    [InlineData("pet A\n  |\n", "pet A\n  \n")]
    [InlineData("|\n", "\n")]
    public void An_Enter_indents_inside_an_entry(string marked, string expected)
    {
        Cursor at = Cursor.In(marked);
        Assert.Equal(expected, Applied(at.Document, FormattingFeature.OnType(at.Document, at.Place, "\n")));
    }

    [Fact]
    public void Other_characters_do_nothing()
    {
        Cursor at = Cursor.In("2026-10-04 check\n|gums");
        Assert.Empty(FormattingFeature.OnType(at.Document, at.Place, "g"));
    }

    [Fact]
    public void An_Enter_works_in_a_note_of_another_system()
    {
        Document note = Document.Open("file:///a.hnote", 1, "2026-10-04 check\r\n\r\n", Cursor.Today);
        Assert.Equal("2026-10-04 check\r\n  \r\n", Applied(note, FormattingFeature.OnType(note, new Place(1, 0), "\n")));
    }

    [Fact]
    public void The_edits_give_the_formatted_note_and_none_the_second_time() => Soup.Note.ForAll(text =>
    {
        Document note = Document.Open("file:///a.hnote", 1, text, Cursor.Today);
        DocumentEdit[] edits = [.. FormattingFeature.Whole(note)];
        Assert.Equal(edits.Length, edits.Select(edit => edit.Range.Start.Line).Distinct().Count());
        string formatted = Applied(note, edits);
        Assert.Equal(NoteFormatter.Format(note.Syntax), formatted);
        Assert.Empty(FormattingFeature.Whole(Document.Open("file:///a.hnote", 2, formatted, Cursor.Today)));
    }, iter: Effort.Times(500));

    [Fact]
    public void The_edits_of_a_range_are_those_of_its_lines() => Gen.Select(Soup.Note, Gen.Int[0, 15], Gen.Int[0, 5]).ForAll((text, first, count) =>
    {
        Document note = Document.Open("file:///a.hnote", 1, text, Cursor.Today);
        first = Math.Min(first, note.Syntax.Lines.Length - 1);
        int last = Math.Min(first + count, note.Syntax.Lines.Length - 1);
        var range = new PlaceRange(new Place(first, 0), new Place(last, note.Syntax.Lines[last].Text.Length));
        bool lastIsEmpty = last > first && range.End.Character == 0;
        Assert.Equal(
            FormattingFeature.Whole(note).Where(edit => edit.Range.Start.Line >= first && edit.Range.Start.Line <= last - (lastIsEmpty ? 1 : 0)),
            FormattingFeature.InRange(note, range));
    }, iter: Effort.Times(500));

    [Fact]
    public void An_Enter_anywhere_changes_blanks_only() => Gen.Select(Soup.Note, Gen.Int[0, 15]).ForAll((text, line) =>
    {
        Document note = Document.Open("file:///a.hnote", 1, text, Cursor.Today);
        string after = Applied(note, FormattingFeature.OnType(note, new Place(line, 0), "\n"));
        Assert.Equal(Solid(note.Syntax.Print()), Solid(after));
    }, iter: Effort.Times(300));

    /// <summary>The text without blanks and marks of free text.</summary>
    private static string Solid(string text) => string.Concat(text.Where(c => !char.IsWhiteSpace(c) && c != '>'));

    /// <summary>The text after the edits, by the offsets of the text before: how editors do it.</summary>
    private static string Applied(Document document, IEnumerable<DocumentEdit> edits)
    {
        var text = new StringBuilder(document.Syntax.Print());
        int[] starts = new int[document.Syntax.Lines.Length + 1];
        starts[0] = document.Syntax.ByteOrderMark ? 1 : 0;
        for (int line = 0; line < document.Syntax.Lines.Length; line++)
        {
            starts[line + 1] = starts[line] + document.Syntax.Lines[line].Text.Length + document.Syntax.Lines[line].Ending.Length;
        }

        int before = int.MaxValue;
        foreach (DocumentEdit edit in edits.Reverse())
        {
            int start = starts[edit.Range.Start.Line] + edit.Range.Start.Character;
            int end = starts[edit.Range.End.Line] + edit.Range.End.Character;
            Assert.True(start <= end && end <= before);
            text.Remove(start, end - start).Insert(start, edit.NewText);
            before = start;
        }

        return text.ToString();
    }
}
