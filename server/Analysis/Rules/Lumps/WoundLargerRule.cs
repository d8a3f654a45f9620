using HealthNotes.Analysis.Findings;
using HealthNotes.Grammar.Items;
using HealthNotes.Record;
using HealthNotes.Record.Courses;
using HealthNotes.Record.Lumps;

namespace HealthNotes.Analysis.Rules;

/// <summary>A wound that is larger than when it was measured before, past what the hand can be off by.</summary>
public sealed class WoundLargerRule : ICourseRule
{
    /// <inheritdoc/>
    public RuleKind Kind { get; } = new("wound-larger", "seen", 7);

    /// <inheritdoc/>
    public bool Wants(CourseKey key) => key.Word == "wound";

    /// <inheritdoc/>
    public IEnumerable<NoteFinding> Find(Course course, PetRecord at)
    {
        if (LumpLife.Of(course) is { Ended: null, SizeOfEachDay: [.., var before, var now] } life && !now.Noted.AtVisit
            && new SizeChange(before, now).Verdict == ChangeVerdict.Larger && now.Noted.Item is Finding wound)
        {
            bool us = at.Facts.Pet.ShowUsUnits;
            yield return this.At(FindingLevel.Watch, now.Noted.Line, wound.Size!.Span,
                $"Wound {life.Name}: {SizeWording.WithDay(now, us)}, {SizeWording.WithDay(before, us)}: larger, by more than measuring by hand is off. Measure it again.",
                LumpNumbers.Default.SourceOf("hand-percent"), before.Noted.Line);
        }
    }
}
