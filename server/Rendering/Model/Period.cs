using System.Collections.Immutable;
using HealthNotes.Grammar.Notes;

namespace HealthNotes.Rendering.Model;

/// <summary>An entry with the day it counts for: its own, or that of the entry above it when its date could not be read.</summary>
internal sealed record DatedEntry(Entry Entry, DateOnly? Day)
{
    /// <summary>True for a look over the whole pet.</summary>
    public bool IsCheck => Entry.Head.Kind == "check";
}

/// <summary>
/// What the page shows in full: from the last check on, or the last days when there is no check. Entries are in the order
/// of their days, and those of one day in the order of the file.
/// </summary>
/// <param name="Check">The last check, or null.</param>
/// <param name="From">The first day, or null when no entry has a day.</param>
/// <param name="Current">The entries of the period.</param>
/// <param name="Earlier">The entries before it.</param>
internal sealed record Period(DatedEntry? Check, DateOnly? From, ImmutableArray<DatedEntry> Current, ImmutableArray<DatedEntry> Earlier)
{
    /// <summary>Finds the period of a note as read on <paramref name="today"/>.</summary>
    public static Period Of(Note note, DateOnly today)
    {
        ImmutableArray<DatedEntry> entries = [.. Dated(note.Entries)];
        DatedEntry? check = LastCheck(entries, today);
        DateOnly? from = check?.Day ?? DaysBack(LastDay(entries, today));
        ILookup<bool, DatedEntry> split = entries
            .OrderBy(e => e.Day).ThenBy(e => e.Entry.Line)
            .ToLookup(e => check is null ? e.Day is null || e.Day >= from : IsFrom(e, check));
        return new Period(check, from, [.. split[true]], [.. split[false]]);
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

    /// <summary>The latest check; one dated after today is most likely a slip and counts only when there is no other.</summary>
    private static DatedEntry? LastCheck(IEnumerable<DatedEntry> entries, DateOnly today) => entries
        .Where(e => e.IsCheck)
        .OrderBy(e => e.Day is null || e.Day <= today).ThenBy(e => e.Day).ThenBy(e => e.Entry.Line)
        .LastOrDefault();

    private static DateOnly? LastDay(ImmutableArray<DatedEntry> entries, DateOnly today) =>
        entries.Where(e => e.Day <= today).Max(e => e.Day) ?? entries.Max(e => e.Day);

    private static DateOnly? DaysBack(DateOnly? day) =>
        day is { } last ? DateOnly.FromDayNumber(Math.Max(0, last.DayNumber - PageLimits.DaysWithoutCheck)) : null;

    private static bool IsFrom(DatedEntry entry, DatedEntry check) =>
        entry.Day != check.Day
            ? entry.Day is { } day ? check.Day is null || day > check.Day : entry.Entry.Line > check.Entry.Line
            : entry.Entry.Line >= check.Entry.Line || entry.Entry.Head.Time > check.Entry.Head.Time;
}
