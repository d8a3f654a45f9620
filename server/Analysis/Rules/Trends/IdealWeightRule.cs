using HealthNotes.Analysis.Courses;
using HealthNotes.Analysis.Findings;
using HealthNotes.Analysis.Trends;
using HealthNotes.Record.Pet;

namespace HealthNotes.Analysis.Rules;

/// <summary>An estimate of the ideal weight of a grown animal that scores above it. Where a vet's plan is written, it speaks instead.</summary>
public sealed class IdealWeightRule : ICourseRule
{
    private static readonly string[] NotNow = ["pregnan", "in whelp", "nursing"];

    private static WeightLimits Limits => WeightLimits.Default;

    /// <inheritdoc/>
    public string Name => "ideal-weight";

    /// <inheritdoc/>
    public string Topic => "ideal weight";

    /// <inheritdoc/>
    public bool Wants(CourseKey key) => key == CourseKey.Weight;

    /// <inheritdoc/>
    public IEnumerable<NoteFinding> Find(Course course, CourseContext at)
    {
        if (WeightContext.Of(course, at.Note.Today, 0) is not { Last: var weight }
            || Limits.GrownOn(at.Note.Pet) is not { } grown || weight.Day < grown
            || PlannedLoss.On(weight.Day, at.Note.Knowns) is not null
            || at.Note.Knowns.Any(known => Array.Exists(NotNow, word => known.Fact.Text.Text.Contains(word, StringComparison.OrdinalIgnoreCase))))
        {
            yield break;
        }

        Course scores = at.Of(CourseKey.BodyCondition);
        if (DayValue.Of(scores, at.Note.Today, 0, 1) is not [{ IsPoint: true } score]
            || Math.Abs(score.Day.DayNumber - weight.Day.DayNumber) > Limits["ideal-days"] || score.Value < Limits["ideal-from"])
        {
            yield break;
        }

        var ideal = IdealWeight.Of(weight.Value, score.Value, Limits["ideal-least"], Limits["ideal-most"]);
        bool us = at.Note.Pet.ShowUsUnits;
        yield return RuleContext.At(Name, FindingLevel.Info, weight.At.Line, weight.At.Span,
            $"With a body condition of {Wording.Show(score.Value, "/9")} on {score.Day:yyyy-MM-dd}, the ideal weight would be about {Wording.Show(ideal.LowKg, "kg", us)} to {Wording.Show(ideal.HighKg, "kg", us)}: {Wording.Round(Limits["ideal-least"], 0)} to {Wording.Round(Limits["ideal-most"], 0)}% is held to be too much for each point above 5. Only a vet who sees the pet can set a goal.",
            $"{Limits.SourceOf("ideal-least")}; {Limits.SourceOf("ideal-most")}", score.At.Line);
    }
}
