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
    public void At_every_place_of_every_note_a_hover_is_about_that_place() => Soup.Note.ForAll(text =>
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
}
