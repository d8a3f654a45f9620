using System.Collections.Immutable;
using HealthNotes.Record.Lumps;

namespace HealthNotes.Record.Checks;

/// <summary>
/// This pet's next check, step by step, head to tail: the check sheet on paper and the entry to be filled in are made from it,
/// so that one can be typed from the other.
/// </summary>
/// <param name="Items">The parts and measures.</param>
/// <param name="Places">The lumps and wounds that are still there, to be measured again, as they were first noted.</param>
public sealed record CheckPlan(ImmutableArray<CheckStep> Items, ImmutableArray<LumpLife> Places)
{
    private static readonly string[] Words = ["lump", "wound"];

    /// <summary>The plan for a pet on the day its note is read.</summary>
    public static CheckPlan Of(PetRecord record) => new(
        [.. CheckItems.For(record.Pet).Select(item => CheckStep.Of(record, item))],
        [.. Words.SelectMany(word => record.All(word)).Select(LumpLife.Of).OfType<LumpLife>().Where(life => life.Ended is null)
            .OrderBy(life => life.Key.Word, StringComparer.Ordinal).ThenBy(life => life.First.Line)]);

    /// <summary>How the lines of the check start, in order.</summary>
    public IEnumerable<string> LineStarts => Items.Select(step => step.LineStart).Concat(Places.Select(life => $"{life.Key.Word} {life.Name}"));
}
