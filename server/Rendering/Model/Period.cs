using System.Collections.Immutable;
using HealthNotes.Analysis;
using HealthNotes.Grammar.Notes;

namespace HealthNotes.Rendering.Model;

/// <summary>An entry with the day it counts for: its own, or that of the entry above it when its date could not be read.</summary>
internal sealed record DatedEntry(Entry Entry, DateOnly? Day)
{
    /// <summary>True for a look over the whole pet.</summary>
    public bool IsCheck => Entry.IsCheck;
}

/// <summary>
/// What the page shows: everything since the clinic last saw the pet. Entries are in the order of their days, and those of one
/// day in the order of the file.
/// </summary>
/// <param name="Check">The last check in it, or null.</param>
/// <param name="From">The first day, or null when no entry has a day.</param>
/// <param name="Current">The entries of the period.</param>
/// <param name="Earlier">The entries before it.</param>
internal sealed record Period(DatedEntry? Check, DateOnly? From, ImmutableArray<DatedEntry> Current, ImmutableArray<DatedEntry> Earlier)
{
    /// <summary>True for the check, and for any other of the same day: a look over the pet may take two entries.</summary>
    public bool IsCheck(DatedEntry entry) => entry.IsCheck && Check is not null && entry.Day == Check.Day;

    /// <summary>Splits the entries of a note at the day where its current period starts.</summary>
    public static Period Of(NoteAnalysis analysis)
    {
        ILookup<bool, DatedEntry> split = Dated(analysis.Note.Entries)
            .OrderBy(e => e.Day).ThenBy(e => e.Entry.Line)
            .ToLookup(e => analysis.Record.Period.Holds(e.Entry));
        return new Period(split[true].LastOrDefault(e => e.IsCheck && !(e.Day > analysis.Today)) ?? split[true].LastOrDefault(e => e.IsCheck), analysis.Record.CurrentFrom, [.. split[true]], [.. split[false]]);
    }

    private static IEnumerable<DatedEntry> Dated(IEnumerable<Entry> entries)
    {
        DateOnly? above = null;
        foreach (Entry entry in entries)
        {
            above = entry.Head.Date ?? above;
            yield return new DatedEntry(entry, above);
        }
    }
}
