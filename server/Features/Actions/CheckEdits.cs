using System.Globalization;
using HealthNotes.Analysis.Problems;
using HealthNotes.Features.Actions.Lines;
using HealthNotes.Features.Checks;
using HealthNotes.Features.Documents;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Record.Checks;
using HealthNotes.Record.HomeCare;

namespace HealthNotes.Features.Actions;

/// <summary>A change to a note (null when there is nothing to change), and where the cursor goes once it is made (a place in the text after it).</summary>
public sealed record CheckEdit(DocumentEdit? Edit, Place Cursor);

/// <summary>Changes that commands make.</summary>
public static class CheckEdits
{
    private const int Indent = 2;

    /// <summary>Home care of an ordinary day; what else happens is written when it happens.</summary>
    public static IReadOnlyList<string> Daily { get; } = ["ate", "water", "pee", "stool", "walk", "mood"];

    /// <summary>The lines that a visit leaves behind, in order.</summary>
    private static readonly string[] Visit = ["weight", "lab", "known", "med", "stop", "vaccine", "recheck", "due"];

    /// <summary>
    /// Adds a check dated <see cref="Document.Today"/>: a line for each part and vital from head to tail, and for each lump and wound that
    /// is still there, to be measured again.
    /// </summary>
    public static CheckEdit AddCheckForToday(Document document) => AddForToday(document, "check");

    /// <summary>
    /// Adds an entry dated <see cref="Document.Today"/> to the end of the note: a <c>check</c>, a <c>log</c> (the day's home care, and a line for
    /// each medicine of the plan) or a <c>visit</c> (the open questions, and what a visit leaves behind). The lines wait as comments and hold
    /// no values: nothing is recorded that was not looked at. The cursor stands before the first of them. An empty log of today gives way to
    /// it. Where today has such an entry already, nothing is added and the cursor goes to the end of its head.
    /// </summary>
    public static CheckEdit AddForToday(Document document, string kind)
    {
        Entry? empty = EmptyOfToday(document);
        if (document.Note.Entries.LastOrDefault(entry => entry.Head.Date == document.Today && entry.Head.Kind == kind && entry != empty) is { } there)
        {
            return new CheckEdit(null, new Place(there.Line, document.Syntax.Lines[there.Line].Text.Length));
        }

        IEnumerable<string> waiting = kind switch
        {
            "check" => CheckPlan.Of(document.Record).LineStarts.Append("else ok"),
            "log" => MedicineOrder.On(document.Today, document.Record).Select(order => $"gave {order.Plan.Medicine.Text}").Concat(Daily.Where(word => word != "walk" || document.Note.Opening.Species != Species.Cat)),
            _ => OpenQuestion.Of(document.Record).Select(question => $"> {question.Text}").Concat(Visit),
        };
        string[] lines =
        [
            $"{document.Today.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)} {kind}",
            .. waiting.Select(text => "# " + text).Prepend(FillIn.HowTo).Select(text => new string(' ', Indent) + text),
        ];
        (DocumentEdit edit, int first) = empty is not null ? InPlace(document, empty, lines) : NewEntry.AtEnd(document, lines);
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
