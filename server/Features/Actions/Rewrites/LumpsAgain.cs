using HealthNotes.Features.Actions.Lines;
using HealthNotes.Features.Actions.Offered;
using HealthNotes.Features.Documents;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Record.Lumps;

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
        string[] known = [.. NotIn(document, entry)];
        if (known.Length == 0)
        {
            yield break;
        }

        (int below, int indent) = EntryLines.PlaceFor(document, entry, NoteVocabulary.Default.LineWords.Find("lump")!);
        string title = known.Length == 1 ? $"Add a line for the known lump {known[0]}, to measure it again" : $"Add lines for the {known.Length} known lumps, to measure them again";
        yield return Rewrite.Offer("record-lumps", title, WholeLines.InsertBelow(document, below, known.Select(lump => $"{new string(' ', indent)}lump {lump}")));
        foreach (string lump in place.Line == entry.Line ? known.Take(MostOfferedAsGone) : [])
        {
            yield return Rewrite.Offer("record-gone", $"Record the lump {lump} as gone",
                WholeLines.InsertBelow(document, below, [$"{new string(' ', indent)}lump {lump} gone"]));
        }
    }

    /// <summary>False for a lump at a place that cannot be, such as a fifth gland in a cat: its line is to be corrected, not repeated.</summary>
    public static bool CanBe(Document document, string name) =>
        new Trial(document.Note.Opening.Species, "check", document.Today).Read("lump " + name).Errors.Length == 0;

    /// <summary>The lumps that were there when last noted up to the day of an entry, and that it does not name yet, in the order they were first noted.</summary>
    private static IEnumerable<string> NotIn(Document document, Entry entry)
    {
        HashSet<string> named = [.. entry.Items.Select(item => item.Value).Where(item => item.Site is not null && (item.About ?? item.Word).Word == "lump").Select(item => $"{item.Site!.Name}{(item.Tag is { } tag ? $" @{tag.Name}" : "")}")];
        return document.Record.All("lump")
            .Where(course => !named.Contains(course.Key.Detail) && course.LastUpTo(entry.Head.Date ?? document.Today) is { } last && LumpWords.End(last.Item) is null && CanBe(document, course.Key.Detail))
            .OrderBy(course => course.Lines[0].Line).Select(course => course.Key.Detail);
    }
}
