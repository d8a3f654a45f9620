using System.Collections.Immutable;
using HealthNotes.Features.Documents;
using HealthNotes.Grammar.Formatting;

namespace HealthNotes.Features.Formatting;

/// <summary>Formats a note with the smallest edits: at most one a line, none where nothing changes.</summary>
/// <remarks>The formatted form is one for everybody: what an editor says about tabs and their width changes nothing.</remarks>
public static class FormattingFeature
{
    /// <summary>The edits that format the whole note.</summary>
    public static ImmutableArray<DocumentEdit> Whole(Document document) => Format(document, 0, document.Syntax.Lines.Length - 1);

    /// <summary>Those of the lines that a range holds characters of; the line of the cursor when it is empty.</summary>
    public static ImmutableArray<DocumentEdit> InRange(Document document, PlaceRange range)
    {
        Place start = document.Clamp(range.Start);
        Place end = document.Clamp(range.End);
        return Format(document, start.Line, end.Character == 0 && end.Line > start.Line ? end.Line - 1 : end.Line);
    }

    /// <summary>What follows from a character just typed before <paramref name="place"/>; only an Enter does anything.</summary>
    public static ImmutableArray<DocumentEdit> OnType(Document document, Place place, string typed) =>
        typed == "\n" ? NewLine.After(document, document.Clamp(place).Line) : [];

    private static ImmutableArray<DocumentEdit> Format(Document document, int first, int last)
    {
        // nothing above the head of an entry has an effect on its lines
        int from = document.Note.EntryAt(first) is { } entry ? entry.Line : 0;
        string ending = NoteFormatter.EndingOf(document.Syntax);
        ImmutableArray<DocumentEdit>.Builder edits = ImmutableArray.CreateBuilder<DocumentEdit>();
        int index = from;
        foreach (string formatted in NoteFormatter.FormatLines(document.Syntax, from))
        {
            if (index > last)
            {
                break;
            }

            if (index >= first && LineEdit.Between(document.Syntax, index, formatted, ending) is { } edit)
            {
                edits.Add(edit);
            }

            index++;
        }

        return edits.DrainToImmutable();
    }
}
