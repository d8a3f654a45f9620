using HealthNotes.Features.Documents;

namespace HealthNotes.Features.Actions;

/// <summary>A change to a note, and where the cursor goes once it is made (a place in the text after it).</summary>
public sealed record CheckEdit(DocumentEdit Edit, Place Cursor);

/// <summary>Changes that commands make.</summary>
public static class CheckEdits
{
    /// <summary>Adds a check dated <see cref="Document.Today"/> to the end of the note, with a line to fill in for each part and each known lump.</summary>
    public static CheckEdit AddCheckForToday(Document document) =>
        new(DocumentEdit.Insert(document.Syntax.Lines.Length - 1, document.Syntax.Lines[^1].Text.Length, ""), new Place(0, 0));
}
