using HealthNotes.Features.Actions.Lines;
using HealthNotes.Features.Actions.Offered;
using HealthNotes.Features.Checks;
using HealthNotes.Features.Documents;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Features.Actions.Rewrites;

/// <summary>
/// Makes a check whole, in two ways.
/// <para>
/// Each part and vital that it does not name gets a line <c>skip PART</c>, put where it belongs from head to tail. At that
/// moment the line is true, it is read without complaint, and the page lists it as not looked at. Looking at the part
/// turns it into an observation: <c>skip</c> gives way, the part's name stays. Bare words would each be flagged as half
/// typed, comments would be seen by nobody, and any value put in would say something that was not seen.
/// </para>
/// <para>
/// Or one line says that all the rest was looked at and as expected; only the writer can know that, so it is never preferred.
/// </para>
/// </summary>
internal static class CompleteCheck
{
    private const int MostNamed = 4;

    public static IEnumerable<ActionOffer> In(Document document, Entry check)
    {
        List<LineWord> missing = [.. MissingItems.Of(document, check).Select(item => item.Word)];
        if (missing.Count > 0)
        {
            string rest = missing.Count > MostNamed ? $" and {missing.Count - MostNamed} more" : "";
            yield return Rewrite.Offer("add-missing", $"Add what this check does not name, as skipped: {string.Join(", ", missing.Take(MostNamed).Select(word => word.Word))}{rest}",
                [.. Skipped(document, check, missing)]);
        }

        if (missing.Exists(word => word.Kind == WordKind.Exam) && check.Items.LastOrDefault(item => EntryLines.IsLookedAt(EntryLines.Subject(item.Value))) is { } last)
        {
            string indent = new(' ', document.Syntax.Lines[last.Line].Indent);
            yield return Rewrite.Offer("else-ok", "Add `else ok`: all other parts were looked at, and as expected",
                WholeLines.InsertBelow(document, WholeLines.LastOf(document, last.Line), [indent + "else ok"]));
        }
    }

    private static IEnumerable<DocumentEdit> Skipped(Document document, Entry check, List<LineWord> missing) => missing
        .Select(word => (word.Word, Place: EntryLines.PlaceFor(document, check, word)))
        .GroupBy(line => line.Place.Below)
        .Select(place => WholeLines.InsertBelow(document, place.Key, place.Select(line => $"{new string(' ', line.Place.Indent)}skip {line.Word}")));
}
