using System.Collections.Immutable;
using HealthNotes.Record.Lumps;

namespace HealthNotes.Record.Checks;

/// <summary>
/// This pet's next check, step by step, in the order of an examination: the check sheet on paper and the entry to be filled in
/// are made from it, so that one can be typed from the other.
/// </summary>
/// <param name="Items">The parts and measures.</param>
/// <param name="Places">The lumps and wounds that are still there, to be measured again, under their numbers.</param>
/// <param name="Asked">What is asked of the days before.</param>
public sealed record CheckPlan(ImmutableArray<CheckStep> Items, ImmutableArray<(int Number, LumpLife Life)> Places, ImmutableArray<CheckItem> Asked)
{
    /// <summary>The plan for a pet on the day its note is read.</summary>
    public static CheckPlan Of(PetRecord record) => new(
        [.. CheckItems.For(record.Pet).OrderBy(item => item.Stage).Select(item => CheckStep.Of(record, item))],
        [.. LumpNumbering.Of(record).Where(place => place.Life.Key.Word is "lump" or "wound" && place.Life.Ended is null)],
        CheckItems.Asked);

    /// <summary>How the lines of the check start, in order.</summary>
    public IEnumerable<string> LineStarts => Items.Select(step => step.LineStart).Concat(Places.Select(place => $"{place.Life.Key.Word} {place.Life.Name}")).Concat(Asked.Select(item => item.Word.Word));
}
