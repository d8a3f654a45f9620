using HealthNotes.Analysis.Courses;
using HealthNotes.Analysis.Findings;
using HealthNotes.Analysis.Lumps;
using HealthNotes.Grammar.Notes;

namespace HealthNotes.Analysis.Rules;

/// <summary>A wound that is larger than when it was measured before, past what the hand can be off by.</summary>
public sealed class WoundLargerRule : ICourseRule
{
    /// <inheritdoc/>
    public string Name => "wound-larger";

    /// <inheritdoc/>
    public string Topic => "seen";

    /// <inheritdoc/>
    public bool Wants(CourseKey key) => key.Word == "wound";

    /// <inheritdoc/>
    public IEnumerable<NoteFinding> Find(Course course, CourseContext at)
    {
        if (LumpLife.Of(course) is { Ended: null, SizeOfEachDay: [.., var before, var now] } life && !now.Noted.AtVisit
            && new SizeChange(before, now).Verdict == ChangeVerdict.Larger && now.Noted.Item is Finding wound)
        {
            bool us = at.Note.Pet.ShowUsUnits;
            yield return RuleContext.At(Name, FindingLevel.Watch, now.Noted.Line, wound.Size!.Span,
                $"Wound {life.Name}: {SizeWording.WithDay(now, us)}, {SizeWording.WithDay(before, us)}: larger, by more than measuring by hand is off. Measure it again. {Wording.Advice(FindingLevel.Watch)}",
                LumpNumbers.Default.SourceOf("hand-percent"), before.Noted.Line);
        }
    }
}
