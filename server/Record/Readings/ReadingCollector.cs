using System.Collections.Immutable;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Parsing;
using HealthNotes.Grammar.Text;

namespace HealthNotes.Record.Readings;

/// <summary>Collects every value of an entry, in the order of its lines.</summary>
public static class ReadingCollector
{
    private const int Nine = 9;

    /// <summary>The readings of an entry: vitals, sizes of lumps, wounds and nodes, water, and how long a seizure lasted.</summary>
    public static ImmutableArray<NoteReading> Collect(Entry entry, NoteSyntax syntax)
    {
        ImmutableArray<NoteReading>.Builder? readings = null;
        foreach (Placed<NoteItem> item in entry.Items)
        {
            if (Read(syntax, entry, item) is { } reading)
            {
                (readings ??= ImmutableArray.CreateBuilder<NoteReading>()).Add(reading);
            }
        }

        return readings?.DrainToImmutable() ?? [];
    }

    /// <summary>Where the value of an item stands.</summary>
    public static TextSpan? SpanOf(NoteItem item) => item is CareEvent { Word.Word: "seizure" } ? item.Head.Span : item.Value?.Span;

    private static NoteReading? Read(NoteSyntax syntax, Entry entry, Placed<NoteItem> item) => item.Value switch
    {
        Reading reading => Make(syntax, entry, item, reading.Value, reading.Place?.Word ?? reading.Site?.Name, null, reading.State?.Word, Comparable(reading)),
        Finding { Size: { } size } finding => Make(syntax, entry, item, size, finding.Site.Name, finding.Tag?.Name, null, "any"),
        Examined { Size: { } size } examined => Make(syntax, entry, item, size, examined.Site?.Name, examined.Tag?.Name, null, "any"),
        CareEvent { Word.Word: "water" or "pee", Quantity: { } volume } => Make(syntax, entry, item, volume, null, null, null, "any"),
        CareEvent { Word.Word: "seizure", Duration: { } } seizure => Seizure(syntax, entry, item, seizure),
        _ => null,
    };

    /// <summary>Awake and nothing said count as at rest: a reading is held to be calm unless its line says otherwise.</summary>
    private static string? Comparable(Reading reading) => reading.State?.Comparable switch
    {
        "none" => null,
        { } state => state,
        null => reading.Word.Word is "hr" or "rr" ? "rest" : "any",
    };

    private static NoteReading? Seizure(NoteSyntax syntax, Entry entry, Placed<NoteItem> item, CareEvent seizure)
    {
        Amount duration = seizure.Duration!.Value;
        var measure = new Measure(seizure.Head.Span, duration.Bound, [duration]);
        return Make(syntax, entry, item, measure, null, null, null, "any") is { } made
            ? made with { Written = Grammar.Formatting.ValuePrinter.Print(duration) }
            : null;
    }

    private static NoteReading? Make(NoteSyntax syntax, Entry entry, Placed<NoteItem> item, NoteValue value, string? site, string? tag, string? state, string? comparable)
    {
        if (ReadValue.Of(value) is not { } read)
        {
            return null;
        }

        string written = value.Span.In(syntax.Lines[item.Line].Text).ToString();
        read = item.Value.Word.Scales.Contains(Nine) ? read with { IsOfNine = true } : read;
        return new NoteReading(item.Line, value.Span, entry.Head.Date, item.Value.Head.Time ?? entry.Head.Time, item.Value.Word.Word, site, tag, state, comparable, written, read);
    }
}
