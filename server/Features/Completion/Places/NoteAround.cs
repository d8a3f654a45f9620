using HealthNotes.Features.Documents;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Features.Completion.Places;

/// <summary>
/// What the note says around a line: whose it is, which entry the line stands in, what came before. Taken from the note and
/// its record, not from its analysis, so that an offer never waits for rules.
/// </summary>
internal sealed class NoteAround
{
    private readonly int entryIndex;

    public NoteAround(Document document, int line, FeatureSettings settings)
    {
        Document = document;
        Line = line;
        entryIndex = IndexOfEntry(document.Note, line);
        Opening opening = document.Note.Opening;
        Species = opening.Species;
        Male = opening.First<SexFact>()?.Male;
        Us = settings.Units == UnitsShown.Us || (settings.Units == UnitsShown.AsNoted && opening.First<UnitsFact>()?.Units.Word == "us");
    }

    public Document Document { get; }

    /// <summary>The index of the line.</summary>
    public int Line { get; }

    public Species Species { get; }

    /// <summary>Male or not; null when it is not said.</summary>
    public bool? Male { get; }

    /// <summary>True where US units come first.</summary>
    public bool Us { get; }

    /// <summary>The entry of the line; null in the opening.</summary>
    public Entry? Entry => entryIndex < 0 ? null : Document.Note.Entries[entryIndex];

    /// <summary>The day of the entry, or today.</summary>
    public DateOnly Day => Entry?.Head.Date ?? Document.Today;

    /// <summary>The animal as the tables call it; <c>both</c> when it is not said.</summary>
    public string Animal => Species switch { Species.Dog => "dog", Species.Cat => "cat", _ => "both" };

    /// <summary>The entries before the line's, the nearest first.</summary>
    public IEnumerable<Entry> EarlierEntries()
    {
        for (int index = entryIndex - 1; index >= 0; index--)
        {
            yield return Document.Note.Entries[index];
        }
    }

    /// <summary>The items of the line's entry, without the line itself.</summary>
    public IEnumerable<Placed<NoteItem>> OtherItems() => Entry is null
        ? Document.Note.Opening.Facts.Where(fact => fact.Line != Line)
        : Entry.Items.Where(item => item.Line != Line);

    /// <summary>The latest time that the entry writes above the line, else that of its head; null where there is none.</summary>
    public TimeOnly? LatestTime => OtherItems().Where(item => item.Line < Line).Select(item => item.Value.Head.Time).Max() ?? Entry?.Head.Time;

    /// <summary>The line break this note uses, by a line near the cursor.</summary>
    public string LineBreak
    {
        get
        {
            for (int index = Line; index >= 0 && index >= Line - 1; index--)
            {
                LineSyntax line = Document.Syntax.Lines[index];
                if (line.Ending.Length > 0)
                {
                    return line.Ending;
                }
            }

            return "\n";
        }
    }

    private static int IndexOfEntry(Note note, int line)
    {
        int low = 0;
        int high = note.Entries.Length;
        while (low < high)
        {
            int middle = (low + high) / 2;
            (low, high) = note.Entries[middle].Line <= line ? (middle + 1, high) : (low, middle);
        }

        return low - 1;
    }
}
