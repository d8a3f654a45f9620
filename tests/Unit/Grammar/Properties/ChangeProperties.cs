using CsCheck;
using HealthNotes.Grammar.Parsing;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Tests.Support;

namespace HealthNotes.Tests.Grammar.Properties;

/// <summary>Lines are read on their own: what one of them holds never reaches another.</summary>
public class ChangeProperties
{
    private static readonly Gen<(string Text, int First, int Count, string[] New)> Change = Gen.Select(
        Soup.PlainNote, Gen.Int[0, 100], Gen.Int[0, 3], Soup.Line.Array[0, 3], (text, first, count, lines) => (text, first, count, lines));

    [Fact]
    public void Changing_lines_is_the_same_as_reading_the_changed_text() => Change.ForAll(
        change =>
        {
            var before = NoteSyntax.Parse(change.Text);
            int first = change.First % before.Lines.Length;
            int count = Math.Min(change.Count, before.Lines.Length - first);
            bool last = first + count == before.Lines.Length;
            string text = string.Join('\n', change.New) + (last || change.New.Length == 0 ? "" : "\n");

            NoteSyntax after = before.WithLines(first, count, text);

            var fresh = NoteSyntax.Parse(after.Print());
            Assert.Equal(fresh.Lines.Select(TextOf), after.Lines.Select(TextOf));
            Assert.All(Enumerable.Range(0, first), index => Assert.Same(before.Lines[index], after.Lines[index]));
            Assert.All(Enumerable.Range(1, before.Lines.Length - first - count), back => Assert.Same(before.Lines[^back], after.Lines[^back]));
        },
        iter: Effort.Times(600));

    [Fact]
    public void A_broken_line_costs_itself_alone() => Gen.Select(Soup.PlainNote, Gen.Int[0, 100], Soup.Odd).ForAll(
        (text, place, odd) =>
        {
            string[] lines = text.Split('\n');
            int broken = place % lines.Length;
            string[] changed = [.. lines[..broken], odd, .. lines[(broken + 1)..]];
            List<string> before = [.. NoteSyntax.Parse(text).Lines.Select(TextOf)];
            List<string> after = [.. NoteSyntax.Parse(string.Join('\n', changed)).Lines.Select(TextOf)];
            before.RemoveAt(broken);
            after.RemoveAt(broken);
            Assert.Equal(before, after);
        },
        iter: Effort.Times(600));

    [Fact]
    public void Lines_read_one_by_one_are_those_of_the_whole_note() => Soup.PlainNote.ForAll(
        text => Assert.Equal(text.Split('\n').Select((line, index) => TextOf(NoteSyntax.Parse(index == 0 ? line : "\n" + line).Lines[^1])), NoteSyntax.Parse(text).Lines.Select(line => TextOf(line with { Ending = "" }))),
        iter: Effort.Times(600));

    [Fact]
    public void There_is_no_line_to_change_behind_the_last()
    {
        var note = NoteSyntax.Parse("pet Marlow\n");
        Assert.Throws<ArgumentOutOfRangeException>(() => note.WithLines(1, 2, ""));
        Assert.Throws<ArgumentOutOfRangeException>(() => note.WithLines(3, 0, ""));
        Assert.Throws<ArgumentOutOfRangeException>(() => note.WithLines(-1, 1, ""));
    }

    private static string TextOf(LineSyntax line) =>
        $"{line.Kind}|{line.Text}|{line.Ending}|{string.Join(' ', line.Marks)}|{Meaning.Of(line.Items)}|{line.EntryHead}|{string.Join(' ', line.Problems)}";
}
