using System.Globalization;
using HealthNotes.Features.Actions.Lines;
using HealthNotes.Features.Checks;
using HealthNotes.Features.Documents;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Syntax;
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
    /// recorded that was not looked at. The cursor stands before the first of them. An empty log of today gives way to it. Where today has a check already,
    /// nothing is added and the cursor goes to the end of its head.
    /// </summary>
    public static CheckEdit AddCheckForToday(Document document)
    {
        if (document.Note.Entries.LastOrDefault(entry => entry.Head.Date == document.Today && entry.Head.Kind == "check") is { } check)
        {
            return new CheckEdit(null, new Place(check.Line, document.Syntax.Lines[check.Line].Text.Length));
        }

        string[] lines =
        [
            document.Today.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) + " check",
            .. CheckPlan.Of(document.Analysis.Record).LineStarts.Append("else ok").Prepend(FillIn.HowTo).Select(text => $"{new string(' ', Indent)}{(text == FillIn.HowTo ? "" : "# ")}{text}"),
        ];
        (DocumentEdit edit, int first) = EmptyOfToday(document) is { } empty ? InPlace(document, empty, lines) : NewEntry.AtEnd(document, lines);
        return new CheckEdit(edit, new Place(first + 2, Indent));
    }

    /// <summary>The last entry, where it is of today and nothing is written below its head.</summary>
    private static Entry? EmptyOfToday(Document document) => document.Note.Entries is [.., var last] && last.Head.Date == document.Today && last.Head.Kind == "log"
        && document.Syntax.Lines[(last.Line + 1)..].All(line => line.Kind == LineKind.Blank) ? last : null;

    private static (DocumentEdit Edit, int First) InPlace(Document document, Entry empty, string[] lines)
    {
        int end = document.Syntax.Lines.Length - 1;
        string ending = WholeLines.EndingNear(document, empty.Line);
        var range = new PlaceRange(new Place(empty.Line, 0), new Place(end, document.Syntax.Lines[end].Text.Length));
        return (new DocumentEdit(range, string.Concat(lines.Select(line => line + ending))), empty.Line);
    }
}
