using System.Text;
using System.Text.RegularExpressions;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Parsing;
using HealthNotes.Grammar.Syntax;

namespace HealthNotes.Tests.Support;

/// <summary>
/// Checks the problems of a note that is written together with them: under a line, carets mark the exact characters, then
/// come the rule and, after a colon, a piece of the message. All problems must be drawn, one to one; a note without carets
/// must have none.
/// <code>
/// gums pimk
///      ^^^^ unknown-word: did you mean `pink`?
/// </code>
/// </summary>
public static partial class Marked
{
    /// <summary>Reads a whole note: what only the whole note can tell (placement, species) counts too.</summary>
    public static Note Check(string marked)
    {
        Drawing drawing = Drawing.Of(marked);
        var note = Note.Read(drawing.Text);
        drawing.AssertSame(note.Problems.Select(p => (p.Line, p.Problem)));
        return note;
    }

    /// <summary>Reads each line on its own: where it stands in a note does not count.</summary>
    public static NoteSyntax CheckLines(string marked)
    {
        Drawing drawing = Drawing.Of(marked);
        var syntax = NoteSyntax.Parse(drawing.Text);
        drawing.AssertSame(syntax.Lines.SelectMany((line, index) => line.Problems.Select(problem => (index, problem))));
        return syntax;
    }

    /// <summary>The meaning of one line that has no problem.</summary>
    public static NoteItem Item(string line) => CheckLines(line).Lines[0].Item ?? throw new InvalidOperationException($"`{line}` has no meaning");

    /// <summary>The meaning of one line that has no problem.</summary>
    public static T Item<T>(string line)
        where T : NoteItem => Assert.IsType<T>(CheckLines(line).Lines[0].Item);

    [GeneratedRegex(@"^ *(\^+) +([a-z-]+)(?:: (.*))?$")]
    private static partial Regex CaretLine { get; }

    private sealed record Expected(int Line, int Start, int Length, string Rule, string Piece);

    private sealed record Drawing(string Text, List<string> Lines, List<Expected> Expected)
    {
        public static Drawing Of(string marked)
        {
            List<string> lines = [];
            List<Expected> expected = [];
            foreach (string line in marked.ReplaceLineEndings("\n").Split('\n'))
            {
                if (lines.Count > 0 && CaretLine.Match(line) is { Success: true } match)
                {
                    Group carets = match.Groups[1];
                    expected.Add(new(lines.Count - 1, carets.Index, carets.Length, match.Groups[2].Value, match.Groups[3].Value));
                }
                else
                {
                    lines.Add(line);
                }
            }

            return new(string.Join('\n', lines), lines, expected);
        }

        public void AssertSame(IEnumerable<(int Line, Problem Problem)> found)
        {
            List<(int Line, Problem Problem)> all = [.. found.OrderBy(f => f.Line).ThenBy(f => f.Problem.Span.Start)];
            List<Expected> wanted = [.. Expected.OrderBy(e => e.Line).ThenBy(e => e.Start)];
            bool same = all.Count == wanted.Count && all.Zip(wanted).All(pair => IsDrawn(pair.First, pair.Second));
            Assert.True(same, "Expected the drawing, found:\n" + Draw(all));
        }

        private static bool IsDrawn((int Line, Problem Problem) found, Expected wanted) =>
            found.Line == wanted.Line && found.Problem.Span.Start == wanted.Start && found.Problem.Span.Length == wanted.Length
            && found.Problem.Rule == wanted.Rule && found.Problem.Message.Contains(wanted.Piece, StringComparison.Ordinal);

        /// <summary>What was found, drawn the same way, ready to be pasted into the test when it is right.</summary>
        private string Draw(List<(int Line, Problem Problem)> found)
        {
            var text = new StringBuilder();
            for (int index = 0; index < Lines.Count; index++)
            {
                text.AppendLine(Lines[index]);
                foreach ((_, Problem problem) in found.Where(f => f.Line == index))
                {
                    text.AppendLine($"{new string(' ', problem.Span.Start)}{new string('^', problem.Span.Length)} {problem.Rule}: {problem.Message}");
                }
            }

            return text.ToString();
        }
    }
}
