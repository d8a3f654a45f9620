using System.Text;
using HealthNotes.Features.Documents;
using HealthNotes.Features.Hover;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Tests.Support;

namespace HealthNotes.Tests.Features.Hover;

/// <summary>Every hover of the opening and the last check of a sample, for a person to read.</summary>
public class HoverSnapshotTests
{
    [Theory]
    [InlineData("marlow")]
    [InlineData("tansy")]
    [InlineData("brutus-giant")]
    [InlineData("hazel-puppy")]
    public void What_is_said(string sample)
    {
        Document note = Document.Open("file:///a.hnote", 1, File.ReadAllText(Repository.PathOf($"samples/{sample}.hnote")), Cursor.Today);
        Entry check = note.Note.Entries.Last(entry => entry.Head.Kind == "check");
        int until = note.Note.Entries.FirstOrDefault(entry => entry.Line > check.Line)?.Line ?? note.Syntax.Lines.Length;
        var text = new StringBuilder();
        for (int line = 0; line < until; line++)
        {
            if (line >= note.Note.Entries[0].Line && line < check.Line)
            {
                continue;
            }

            text.Append("== ").Append(note.Syntax.Lines[line].Text).Append('\n');
            foreach (Token token in note.Syntax.Lines[line].Marks)
            {
                if (HoverFeature.At(note, new Place(line, token.Span.Start), FeatureSettings.Default) is { } hover)
                {
                    text.Append("-- ").Append(token.Span.In(note.Syntax.Lines[line].Text)).Append('\n').Append(hover.Markdown).Append('\n');
                }
            }
        }

        Snapshots.Match(text.ToString(), sample);
    }
}
