using System.Text;
using CsCheck;
using HealthNotes.Features.Documents;
using HealthNotes.Features.Hover;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Tests.Grammar.Properties;
using HealthNotes.Tests.Support;

namespace HealthNotes.Tests.Features.Hover;

/// <summary>What holds of every hover.</summary>
public class HoverProperties
{
    [Fact]
    public void At_every_place_of_every_note_a_hover_is_about_that_place() => Soup.Note.Sample(text =>
    {
        var document = Document.Open("file:///a.hnote", 1, text, Cursor.Today);
        for (int line = 0; line < document.Syntax.Lines.Length; line++)
        {
            foreach (Token token in document.Syntax.Lines[line].Tokens)
            {
                var place = new Place(line, token.Span.Start);
                if (HoverFeature.At(document, place, FeatureSettings.Default) is { } hover)
                {
                    Assert.True(hover.Range.Touches(place) && hover.Range.End.Line == line);
                    Assert.NotEqual("", hover.Markdown.Trim());
                    Assert.DoesNotContain("<b>", hover.Markdown, StringComparison.Ordinal);
                    Assert.True(token.Kind is not (TokenKind.Comment or TokenKind.Text or TokenKind.Unknown) || hover.Range.End == place);
                }
            }
        }
    }, iter: Effort.Times(1_000));

    /// <summary>All words and values of the last check of a sample, for a person to read.</summary>
    [Fact]
    public void What_is_said_of_a_sample()
    {
        var document = Document.Open("file:///a.hnote", 1, File.ReadAllText(Repository.PathOf("samples/marlow.hnote")), Cursor.Today);
        int first = document.Note.Entries.Last(entry => entry.Head.Kind == "check").Line;
        int last = document.Note.Entries.First(entry => entry.Line > first).Line;
        var text = new StringBuilder();
        for (int line = first; line < last; line++)
        {
            foreach (Token token in document.Syntax.Lines[line].Marks)
            {
                if (HoverFeature.At(document, new Place(line, token.Span.Start), FeatureSettings.Default) is { } hover)
                {
                    text.Append("### ").AppendLine(token.Span.In(document.Syntax.Lines[line].Text).ToString()).AppendLine(hover.Markdown).AppendLine();
                }
            }
        }

        Snapshots.Match(text.ToString().ReplaceLineEndings("\n"), "marlow");
    }
}
