using HealthNotes.Features.Actions.Lines;
using HealthNotes.Features.Documents;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Features.Actions.Rewrites;

/// <summary>
/// In a check: a line for each lump that was there before and that the check does not name yet. Its size is left to type:
/// what was measured last time is never copied. On the head of the check each of them can also be recorded as gone.
/// </summary>
internal static class LumpsAgain
{
    private const int MostOfferedAsGone = 5;

    public static IEnumerable<ActionOffer> In(Document document, Entry entry, Place place)
    {
        List<FoundLine> known = KnownLumps.NotIn(document, entry, entry.Head.Date);
        if (known.Count == 0)
        {
            yield break;
        }

        (int below, int indent) = EntryLines.PlaceFor(document, entry, NoteVocabulary.Default.LineWords.Find("lump")!);
        string title = known.Count == 1 ? $"Add a line for the known lump {known[0].Name}, to measure it again" : $"Add lines for the {known.Count} known lumps, to measure them again";
        yield return Rewrite.Offer("record-lumps", title, WholeLines.InsertBelow(document, below, known.Select(lump => $"{new string(' ', indent)}lump {lump.Name}")));
        foreach (FoundLine lump in place.Line == entry.Line ? known.Take(MostOfferedAsGone) : [])
        {
            yield return Rewrite.Offer("record-gone", $"Record the lump {lump.Name} as gone",
                WholeLines.InsertBelow(document, below, [$"{new string(' ', indent)}lump {lump.Name} gone"]));
        }
    }
}
