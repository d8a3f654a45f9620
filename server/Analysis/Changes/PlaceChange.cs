using System.Collections.Immutable;
using HealthNotes.Record;
using HealthNotes.Record.Courses;
using HealthNotes.Record.Lumps;

namespace HealthNotes.Analysis.Changes;

/// <summary>A lump, wound, sore place or node that is new, of another size, or gone.</summary>
/// <param name="Life">Its life.</param>
/// <param name="Then">Its last size up to the day; null when it had none.</param>
/// <param name="Now">Its last size after it; null when none was written.</param>
/// <param name="IsNew">True when its first line is after the day.</param>
/// <param name="Gone">True when it was written as gone after the day.</param>
public sealed record PlaceChange(LumpLife Life, LumpSize? Then, LumpSize? Now, bool IsNew, bool Gone)
{
    private const decimal Percent = 100;
    private static readonly string[] Words = ["lump", "wound", "pain-site", "node"];

    /// <summary>By how much the longest diameter grew, in mm; null where a size is not known as a number.</summary>
    public decimal? Difference => Then?.Typical is { } then && Now?.Typical is { } now ? now - then : null;

    /// <summary>The same in percent of what it was.</summary>
    public decimal? InPercent => Difference is { } difference && Then!.Typical is > 0 and { } then ? difference * Percent / then : null;

    /// <summary>True when what was written of the two sizes may mean the same size.</summary>
    public bool MayBeSame => Then is not null && Now is not null && Then.HandLow <= (Now.HandHigh ?? decimal.MaxValue) && Now.HandLow <= (Then.HandHigh ?? decimal.MaxValue);

    /// <summary>All that are new, were measured again, or are gone since a day.</summary>
    internal static ImmutableArray<PlaceChange> Since(PetRecord record, DateOnly day) =>
        [.. Words.SelectMany(word => record.All(word)).Select(course => Of(course, day)).OfType<PlaceChange>()
            .OrderByDescending(change => change.IsNew).ThenBy(change => change.Life.First.Day).ThenBy(change => change.Life.First.Line)];

    private static PlaceChange? Of(Course course, DateOnly day)
    {
        if (LumpLife.Of(course) is not { } life || (course.Key.Word == "node" && life.Sizes.IsEmpty))
        {
            return null;
        }

        LumpSize? then = life.Sizes.LastOrDefault(size => size.Day <= day);
        LumpSize? now = life.Sizes.LastOrDefault(size => size.Day > day);
        bool isNew = life.First.Day > day;
        bool gone = life.Ended?.Day > day;
        return isNew || gone || now is not null ? new PlaceChange(life, then, now, isNew, gone) : null;
    }
}
