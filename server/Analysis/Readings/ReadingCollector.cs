using System.Collections.Immutable;
using HealthNotes.Grammar.Notes;

namespace HealthNotes.Analysis.Readings;

/// <summary>Collects every value of a note, in the order of its lines.</summary>
public static class ReadingCollector
{
    /// <summary>The readings of <paramref name="note"/>: vitals, sizes of lumps, wounds and nodes, water, and how long a seizure lasted.</summary>
    public static ImmutableArray<NoteReading> Collect(Note note)
    {
        ImmutableArray<NoteReading>.Builder readings = ImmutableArray.CreateBuilder<NoteReading>();
        foreach (Entry entry in note.Entries)
        {
            foreach (Placed<NoteItem> item in entry.Items)
            {
                if (Read(note, entry, item) is { } reading)
                {
                    readings.Add(reading);
                }
            }
        }

        return readings.DrainToImmutable();
    }

    private static NoteReading? Read(Note note, Entry entry, Placed<NoteItem> item) => item.Value switch
    {
        Reading reading => Make(note, entry, item, reading.Value, reading.Place?.Word ?? reading.Site?.Name, null, reading.State?.Word, Comparable(reading)),
        Finding { Size: { } size } finding => Make(note, entry, item, size, finding.Site.Name, finding.Tag?.Name, null, "any"),
        Examined { Size: { } size } examined => Make(note, entry, item, size, examined.Site?.Name, examined.Tag?.Name, null, "any"),
        CareEvent { Word.Word: "water" or "pee", Quantity: { } volume } => Make(note, entry, item, volume, null, null, null, "any"),
        CareEvent { Word.Word: "seizure", Duration: { } } seizure => Seizure(note, entry, item, seizure),
        _ => null,
    };

    /// <summary>Awake and nothing said count as at rest: a reading is held to be calm unless its line says otherwise.</summary>
    private static string? Comparable(Reading reading) => reading.State?.Comparable switch
    {
        "none" => null,
        { } state => state,
        null => reading.Word.Word is "hr" or "rr" ? "rest" : "any",
    };

    private static NoteReading? Seizure(Note note, Entry entry, Placed<NoteItem> item, CareEvent seizure)
    {
        Amount duration = seizure.Duration!.Value;
        var measure = new Measure(seizure.Head.Span, duration.Bound, [duration]);
        return Make(note, entry, item, measure, null, null, null, "any") is { } made
            ? made with { Written = Grammar.Tidying.ValuePrinter.Print(duration) }
            : null;
    }

    private static NoteReading? Make(Note note, Entry entry, Placed<NoteItem> item, NoteValue value, string? site, string? tag, string? state, string? comparable)
    {
        if (ReadValue.Of(value) is not { } read)
        {
            return null;
        }

        string written = value.Span.In(note.Syntax.Lines[item.Line].Text).ToString();
        return new NoteReading(item.Line, value.Span, entry.Head.Date, item.Value.Head.Time ?? entry.Head.Time, item.Value.Word.Word, site, tag, state, comparable, written, read);
    }
}
