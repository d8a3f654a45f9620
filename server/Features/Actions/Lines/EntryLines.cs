using HealthNotes.Features.Documents;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Features.Actions.Lines;

/// <summary>Where the lines of an entry are, and where new ones go.</summary>
internal static class EntryLines
{
    private const int UsualIndent = 2;

    /// <summary>The last line of an entry: the one before the next entry's head.</summary>
    public static int LastOf(Document document, Entry entry)
    {
        int low = 0;
        int high = document.Note.Entries.Length;
        while (low < high)
        {
            int middle = (low + high) / 2;
            (low, high) = document.Note.Entries[middle].Line <= entry.Line ? (middle + 1, high) : (low, middle);
        }

        return low < document.Note.Entries.Length ? document.Note.Entries[low].Line - 1 : document.Syntax.Lines.Length - 1;
    }

    /// <summary>
    /// Where a line of a word belongs from head to tail: below the line whose word comes nearest before it in that order.
    /// What was skipped is often listed at the end, and says nothing about the place of others there.
    /// </summary>
    public static (int Below, int Indent) PlaceFor(Document document, Entry entry, LineWord word)
    {
        int lastSeen = -1;
        foreach (Placed<NoteItem> item in entry.Items)
        {
            lastSeen = item.Value is not Skipped && IsLookedAt(item.Value.Word) ? item.Line : lastSeen;
        }

        Placed<NoteItem>? before = Before(entry, word, item => item.Value is not Skipped || item.Line < lastSeen) ?? Before(entry, word, _ => true);
        int indent = entry.Items.Length > 0 ? document.Syntax.Lines[entry.Items[0].Line].Indent : UsualIndent;
        return before is null ? (entry.Line, indent) : (WholeLines.LastOf(document, before.Line), document.Syntax.Lines[before.Line].Indent);
    }

    /// <summary>The word a line is about: what <c>skip</c> names, else its own.</summary>
    public static LineWord Subject(NoteItem item) => item is Skipped skipped ? skipped.Item : item.Word;

    /// <summary>True for a word of a check: a part, a vital, or something found.</summary>
    public static bool IsLookedAt(LineWord word) => word.Kind is WordKind.Exam or WordKind.Vital or WordKind.Scan;

    private static Placed<NoteItem>? Before(Entry entry, LineWord word, Func<Placed<NoteItem>, bool> counts)
    {
        Placed<NoteItem>? before = null;
        foreach (Placed<NoteItem> item in entry.Items)
        {
            LineWord subject = Subject(item.Value);
            if (IsLookedAt(subject) && subject.Order <= word.Order && counts(item) && (before is null || subject.Order >= Subject(before.Value).Order))
            {
                before = item;
            }
        }

        return before;
    }
}
