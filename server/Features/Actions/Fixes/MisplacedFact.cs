using HealthNotes.Analysis.Findings;
using HealthNotes.Features.Actions.Lines;
using HealthNotes.Features.Actions.Offered;
using HealthNotes.Features.Documents;
using HealthNotes.Grammar.Formatting;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Features.Actions.Fixes;

/// <summary>
/// A fact in an entry moves to the end of the opening's facts, with what is written below it. One that the opening has
/// said already is not moved: the same again can go, something else is for the writer to sort out. Moving is not preferred
/// for what a vet may have said that day: making the entry a visit would be right too.
/// </summary>
internal static class MisplacedFact
{
    private static readonly string[] MoreThanOnce = ["usual", "call-if", "phone-now-if", "med-range", "med-strength"];

    public static IEnumerable<ActionOffer> Of(Document document, NoteFinding finding)
    {
        if (document.Note.EntryAt(finding.Line) is null || document.Syntax.Lines[finding.Line].Item is not { Word.Kind: WordKind.Fact } fact)
        {
            yield break;
        }

        Placed<NoteItem>? said = MoreThanOnce.Contains(fact.Word.Word) ? null : document.Note.Opening.Facts.FirstOrDefault(other => other.Value.Word == fact.Word);
        int last = WholeLines.LastOf(document, finding.Line);
        if (said is null)
        {
            yield return NoteFix.Offer("move-to-opening", $"Move `{fact.Word.Word}` to the facts at the top", finding, preferred: !MoreThanOnce.Contains(fact.Word.Word),
                InsertFact(document, WholeLines.Reindented(document, finding.Line, 0)), WholeLines.Remove(document, finding.Line, last));
        }
        else if (ItemPrinter.Print(said.Value) == ItemPrinter.Print(fact) && last == finding.Line)
        {
            yield return NoteFix.Offer("say-once", $"Take this line away, line {said.Line + 1} says it", finding, preferred: true, FactSaidTwice.Remove(document, finding.Line));
        }
    }

    /// <summary>Puts lines below the last fact of the opening; where there is none, below the comments the note starts with.</summary>
    public static DocumentEdit InsertFact(Document document, IEnumerable<string> lines)
    {
        int end = document.Note.Entries.Length > 0 ? document.Note.Entries[0].Line : document.Syntax.Lines.Length;
        for (int index = end - 1; index >= 0; index--)
        {
            if (LineAt.WordOf(document.Syntax.Lines[index])?.Kind == WordKind.Fact)
            {
                return WholeLines.InsertBelow(document, WholeLines.LastOf(document, index), lines);
            }
        }

        int first = 0;
        while (first < end && document.Syntax.Lines[first].Kind == LineKind.Comment)
        {
            first++;
        }

        return first > 0 ? WholeLines.InsertBelow(document, first - 1, lines) : WholeLines.InsertAbove(document, 0, lines);
    }
}
