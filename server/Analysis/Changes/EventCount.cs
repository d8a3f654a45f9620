using System.Collections.Immutable;
using HealthNotes.Record;
using HealthNotes.Record.Courses;
using HealthNotes.Record.HomeCare;

namespace HealthNotes.Analysis.Changes;

/// <summary>How often something happened after a day.</summary>
/// <param name="Word">The note's word: vomit, stool (loose ones), cough, sneeze, seizure, missed.</param>
/// <param name="Times">How often.</param>
/// <param name="Days">On how many days.</param>
/// <param name="Last">The last day.</param>
public sealed record EventCount(string Word, int Times, int Days, DateOnly Last)
{
    private static readonly string[] Words = ["seizure", "vomit", "stool", "cough", "sneeze", "missed"];

    /// <summary>All that happened since a day.</summary>
    internal static ImmutableArray<EventCount> Since(PetRecord record, DateOnly day) =>
        [.. Words.Select(word => Of(word, [.. record.All(word).SelectMany(course => course.Lines).Where(line => line.Day > day && Counts(word, line))])).OfType<EventCount>()];

    private static bool Counts(string word, Noted line) => word == "missed" || CareWords.Counts(line);

    private static EventCount? Of(string word, Noted[] lines) => lines.Length == 0 ? null
        : new EventCount(word, lines.Sum(CareWords.Times), lines.DistinctBy(line => line.Day).Count(), lines.Max(line => line.Day));
}
