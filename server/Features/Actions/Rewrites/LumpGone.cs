using System.Globalization;
using HealthNotes.Features.Actions.Lines;
using HealthNotes.Features.Actions.Offered;
using HealthNotes.Features.Documents;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Record.Courses;
using HealthNotes.Record.Lumps;

namespace HealthNotes.Features.Actions.Rewrites;

/// <summary>
/// On a line about a lump: records that it is there no longer. A line of today that says nothing yet gets the word; else
/// a line is added to the check of today, or to a new entry of today where there is no check: the finding is of today,
/// so it never goes into an older entry.
/// </summary>
internal static class LumpGone
{
    public static IEnumerable<ActionOffer> At(Document document, int line)
    {
        if (document.Syntax.Lines[line].Items.OfType<Finding>().FirstOrDefault(found => found.Word.Word == "lump") is not { } lump || document.Note.EntryAt(line) is not { } here
            || !(here.Head.Date <= document.Today))
        {
            yield break;
        }

        CourseKey key = CourseKey.Of(lump);
        string title = $"Record the lump {key.Detail} as gone";
        Noted? last = document.Record.Of(key).Last;
        if (last is null || LumpWords.End(last.Item) is not null || !LumpsAgain.CanBe(document, key.Detail))
        {
            yield break;
        }

        if (last.Day == document.Today)
        {
            LineSyntax said = document.Syntax.Lines[last.Line];
            if (last.Item is Finding { Size: null, Words.Length: 0, Ok: false } && said.Problems.Length == 0)
            {
                yield return Rewrite.Offer("record-gone", title, DocumentEdit.Insert(last.Line, LineAt.ContentEnd(said), " gone"));
            }

            yield break;
        }

        yield return Rewrite.Offer("record-gone", title, Add(document, $"lump {key.Detail} gone"));
    }

    private static DocumentEdit Add(Document document, string text)
    {
        if (document.Note.Entries.LastOrDefault(entry => entry.Head.Date == document.Today && entry.Head.Kind == "check") is { } check)
        {
            (int below, int indent) = EntryLines.PlaceFor(document, check, Grammar.Vocabulary.NoteVocabulary.Default.LineWords.Find("lump")!);
            return WholeLines.InsertBelow(document, below, [new string(' ', indent) + text]);
        }

        string head = document.Today.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) + " log";
        return NewEntry.AtEnd(document, [head, "  " + text]).Edit;
    }
}
