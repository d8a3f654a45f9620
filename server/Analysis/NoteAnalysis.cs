using System.Collections.Immutable;
using HealthNotes.Analysis.Findings;
using HealthNotes.Analysis.Pet;
using HealthNotes.Analysis.Ranges;
using HealthNotes.Analysis.Readings;
using HealthNotes.Analysis.Rules;
using HealthNotes.Grammar.Notes;

namespace HealthNotes.Analysis;

/// <summary>
/// Everything worked out from one note on one day. Pure: the same note and day give the same result; nothing is read
/// from disk or clock.
/// </summary>
/// <param name="Note">The note.</param>
/// <param name="Today">The day it is read on.</param>
/// <param name="Pet">Who it is about.</param>
/// <param name="Readings">Every value, in line order.</param>
/// <param name="Findings">Everything a reader should know, in line order; what could not be read is among them.</param>
public sealed record NoteAnalysis(
    Note Note,
    DateOnly Today,
    PetProfile Pet,
    ImmutableArray<NoteReading> Readings,
    ImmutableArray<NoteFinding> Findings)
{
    /// <summary>Works out the note as read on <paramref name="today"/>.</summary>
    public static NoteAnalysis Of(Note note, DateOnly today)
    {
        ImmutableArray<NoteReading> readings = ReadingCollector.Collect(note);
        PetProfile pet = PetProfile.Of(note, readings);
        var context = new RuleContext(note, pet, readings, ClinicalTables.Default, today);
        return new NoteAnalysis(note, today, pet, readings, RuleBook.FindAll(context));
    }

    /// <summary>The first day of the current period; see <see cref="CurrentPeriod"/>.</summary>
    public DateOnly? CurrentFrom { get; } = CurrentPeriod.FirstDay(Note, Today);

    /// <summary>True for a finding in the opening, in an entry of the current period, or in one without a date.</summary>
    public bool IsCurrent(NoteFinding finding) => EntryAt(finding.Line) is not { Head.Date: { } date } || date >= CurrentFrom;

    /// <summary>The entry that a line stands in; null for the opening.</summary>
    public Entry? EntryAt(int line)
    {
        int low = 0;
        int high = Note.Entries.Length;
        while (low < high)
        {
            int middle = (low + high) / 2;
            (low, high) = Note.Entries[middle].Line <= line ? (middle + 1, high) : (low, middle);
        }

        return low == 0 ? null : Note.Entries[low - 1];
    }

    /// <summary>The key under which a reading's normal range is looked up; null when it is not compared.</summary>
    public ReadingKey? KeyOf(NoteReading reading) => RuleContext.KeyOf(reading, Pet, ClinicalTables.Default);

    /// <summary>The range shown as normal beside a reading, or null.</summary>
    public NormalRange? NormalFor(NoteReading reading) =>
        KeyOf(reading) is { } key && reading.Value.OnScaleOfNine().Unit == UnitOf(key) ? ClinicalTables.Default.NormalFor(key) : null;

    private static string? UnitOf(ReadingKey key) => ClinicalTables.Default.NormalFor(key)?.Unit;
}
