using System.Collections.Immutable;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Record;
using HealthNotes.Record.Courses;
using HealthNotes.Record.Readings;

namespace HealthNotes.Analysis.Changes;

/// <summary>A vital now, beside how it was.</summary>
/// <param name="Key">What was measured, and how.</param>
/// <param name="Then">The last reading up to the day; null when there was none.</param>
/// <param name="Now">The last reading after it.</param>
/// <param name="Count">How many readings there are after it.</param>
public sealed record ValueChange(CourseKey Key, NoteReading? Then, NoteReading Now, int Count)
{
    private const decimal Percent = 100;

    /// <summary>By how much it rose, in the canonical unit; null where either is only a bound, or there was none.</summary>
    public decimal? Difference => Then is { } then && IsPoint(then) && IsPoint(Now) ? NowValue.Number - then.Value.OnScaleOfNine().Number : null;

    /// <summary>The same in percent of what it was.</summary>
    public decimal? InPercent => Difference is { } difference && Then!.Value.Number != 0 ? difference * Percent / Then.Value.Number : null;

    /// <summary>True when a count more or less could make up the whole difference.</summary>
    public bool WithinCounting => Difference is not null and not 0
        && Then is { Value: { Low: { } low, High: { } high, Unit: "/min" } } && Now is { Value: { Low: { } nowLow, High: { } nowHigh } } && nowLow <= high && low <= nowHigh;

    private ReadValue NowValue => Now.Value.OnScaleOfNine();

    /// <summary>All vitals that were measured after a day, in the order of the vocabulary.</summary>
    internal static ImmutableArray<ValueChange> Since(PetRecord record, DateOnly day) =>
        [.. NoteVocabulary.Default.LineWords.Terms.Where(word => word.Kind == WordKind.Vital).OrderBy(word => word.Order)
            .SelectMany(word => record.All(word.Word).Select(course => SameVital.Of(course, record.All)).DistinctBy(course => course.Key))
            .Select(course => Of(course, day)).OfType<ValueChange>()];

    private static ValueChange? Of(Course course, DateOnly day)
    {
        int then = course.CountUpTo(day);
        Noted[] after = [.. course.Lines[then..].Where(line => line.Reading is not null)];
        return after.Length == 0 ? null
            : new ValueChange(course.Key, course.Lines[..then].LastOrDefault(line => line.Reading is not null)?.Reading, after[^1].Reading!, after.Length);
    }

    private static bool IsPoint(NoteReading reading) => reading.Value.Bound is Bound.Exact or Bound.About;
}
