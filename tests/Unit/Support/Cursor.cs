using HealthNotes.Features.Documents;

namespace HealthNotes.Tests.Support;

/// <summary>
/// A document whose cursor is drawn: <c>|</c> where it stands, or <c>‹</c> and <c>›</c> around a range. None of the
/// three occurs in a real note of the tests.
/// </summary>
public sealed record Cursor(Document Document, Place Place, PlaceRange Range)
{
    /// <summary>The day the notes of these tests are read on.</summary>
    public static readonly DateOnly Today = new(2026, 11, 25);

    /// <summary>Reads a text with one <c>|</c>, or with one <c>‹</c> and one <c>›</c>.</summary>
    public static Cursor In(string marked)
    {
        string text = marked.ReplaceLineEndings("\n");
        int bar = text.IndexOf('|');
        if (bar >= 0)
        {
            Assert.Equal(bar, text.LastIndexOf('|'));
            return At(text.Remove(bar, 1), bar, bar);
        }

        int start = text.IndexOf('‹');
        int end = text.IndexOf('›') - 1;
        Assert.True(0 <= start && start <= end, "no cursor is drawn");
        return At(text.Replace("‹", "", StringComparison.Ordinal).Replace("›", "", StringComparison.Ordinal), start, end);
    }

    /// <summary>A document without a cursor.</summary>
    public static Document Note(string text) => Document.Open("file:///notes/test.hnote", 1, text.ReplaceLineEndings("\n"), Today);

    /// <summary>The text after the edits, as an editor applies them: all places are those of the text before.</summary>
    public static string Apply(Document document, IEnumerable<DocumentEdit> edits)
    {
        Document edited = document;
        foreach (DocumentEdit edit in edits.OrderByDescending(e => e.Range.Start).ThenByDescending(e => e.Range.End))
        {
            edited = edited.Edit(edit, edited.Version + 1);
        }

        return edited.Syntax.Print();
    }

    private static Cursor At(string text, int start, int end)
    {
        var range = new PlaceRange(PlaceOf(text, start), PlaceOf(text, end));
        return new Cursor(Note(text), range.Start, range);
    }

    private static Place PlaceOf(string text, int offset)
    {
        int line = text.AsSpan(0, offset).Count('\n');
        return new Place(line, offset - (text.AsSpan(0, offset).LastIndexOf('\n') + 1));
    }
}
