using System.Collections.Immutable;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Parsing;
using HealthNotes.Record.Courses;
using HealthNotes.Record.Ranges;
using HealthNotes.Record.Readings;

namespace HealthNotes.Record;

/// <summary>What one entry gives to the record. The same object until an edit touches or moves the entry.</summary>
public sealed class PetEntry
{
    private PetEntry(Entry entry, ImmutableArray<NoteReading> readings, ImmutableArray<Slip> slips, DateOnly today, ILookup<int, Trace>? before)
    {
        Entry = entry;
        Readings = readings;
        Slips = slips;
        Day = entry.Head.Date;
        Weighings = readings.Any(IsWeighing) ? [.. readings.Where(IsWeighing)] : [];
        Traces = Trace.Of(entry, readings, today, before);
    }

    /// <summary>The entry.</summary>
    public Entry Entry { get; }

    /// <summary>Its day; kept here since every edit looks at the days of all entries.</summary>
    public DateOnly? Day { get; }

    /// <summary>Its values that can be right.</summary>
    public ImmutableArray<NoteReading> Readings { get; }

    /// <summary>Its values that cannot be right: they are in nothing else here.</summary>
    public ImmutableArray<Slip> Slips { get; }

    /// <summary>Its weighings.</summary>
    public ImmutableArray<NoteReading> Weighings { get; }

    /// <summary>Its lines as parts of courses.</summary>
    internal ImmutableArray<Trace> Traces { get; }

    /// <summary>All weighings that some pet can have, those among the slips too, by line.</summary>
    internal IEnumerable<NoteReading> AllWeighings => Slips.IsEmpty ? Weighings : Weighings.Concat(WeightSlips.Select(slip => slip.Reading)).OrderBy(weight => weight.Line);

    /// <summary>The weights that do not go with the pet's others.</summary>
    internal ImmutableArray<Slip> WeightSlips => Slips.IsEmpty ? [] : [.. Slips.Where(slip => slip.AgainstKg is not null)];

    /// <summary>Reads the values of an entry. Lines that are as <paramref name="before"/> an edit keep their objects in the courses.</summary>
    internal static PetEntry Read(Entry entry, NoteSyntax syntax, DateOnly today, ILookup<int, Trace>? before)
    {
        ImmutableArray<NoteReading> all = ReadingCollector.Collect(entry, syntax);
        ImmutableArray<NoteReading> right = all.RemoveAll(reading => !ClinicalTables.Default.IsPlausible(reading));
        return new PetEntry(entry, right, right.Length == all.Length ? [] : [.. all.Except(right).Select(reading => new Slip(reading))], today, before);
    }

    /// <summary>The same entry, with other weights that do not go with the pet's others.</summary>
    internal PetEntry With(ImmutableArray<Slip> weightSlips, DateOnly today)
    {
        HashSet<NoteReading> wrong = [.. weightSlips.Select(slip => slip.Reading)];
        ImmutableArray<NoteReading> readings = [.. Readings.Where(reading => !IsWeighing(reading)).Concat(AllWeighings.Where(weight => !wrong.Contains(weight))).OrderBy(reading => reading.Line).ThenBy(reading => reading.Span.Start)];
        return new PetEntry(Entry, readings, [.. Slips.Where(slip => slip.AgainstKg is null), .. weightSlips], today, null);
    }

    /// <summary>The same entry in its new place.</summary>
    internal PetEntry At(Entry moved, DateOnly today)
    {
        int by = moved.Line - Entry.Line;
        return by == 0 ? this : new PetEntry(
            moved, [.. Readings.Select(Moved)], Slips.IsEmpty ? [] : [.. Slips.Select(slip => slip with { Reading = Moved(slip.Reading) })], today, null);

        NoteReading Moved(NoteReading reading) => reading with { Line = reading.Line + by };
    }

    private static bool IsWeighing(NoteReading reading) => reading.What == "weight";
}
