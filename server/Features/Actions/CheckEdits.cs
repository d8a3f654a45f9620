using System.Globalization;
using HealthNotes.Features.Actions.Lines;
using HealthNotes.Features.Checks;
using HealthNotes.Features.Documents;
using HealthNotes.Record.Checks;

namespace HealthNotes.Features.Actions;

/// <summary>A change to a note (null when there is nothing to change), and where the cursor goes once it is made (a place in the text after it).</summary>
public sealed record CheckEdit(DocumentEdit? Edit, Place Cursor);

/// <summary>Changes that commands make.</summary>
public static class CheckEdits
{
    private const int Indent = 2;

    /// <summary>
    /// Adds a check dated <see cref="Document.Today"/> to the end of the note: a line for each part and vital from head to
    /// tail, and for each lump and wound that is still there, to be measured again. The lines wait as comments and hold no values: nothing is
    /// recorded that was not looked at. The cursor stands before the first of them. Where today has a check already,
    /// nothing is added and the cursor goes to the end of its head.
    /// </summary>
    public static CheckEdit AddCheckForToday(Document document)
    {
        if (document.Note.Entries.LastOrDefault(entry => entry.Head.Date == document.Today && entry.Head.Kind == "check") is { } check)
        {
            return new CheckEdit(null, new Place(check.Line, document.Syntax.Lines[check.Line].Text.Length));
        }

        string head = document.Today.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) + " check";
        (DocumentEdit edit, int first) = NewEntry.AtEnd(document, [head, $"{new string(' ', Indent)}{FillIn.HowTo}", .. CheckPlan.Of(document.Analysis.Record).LineStarts.Append("else ok").Select(text => $"{new string(' ', Indent)}# {text}")]);
        return new CheckEdit(edit, new Place(first + 2, Indent));
    }
}
