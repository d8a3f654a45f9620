using HealthNotes.Analysis.Findings;
using HealthNotes.Analysis.Trends;
using HealthNotes.Record;
using HealthNotes.Record.Courses;
using HealthNotes.Record.Pet;

namespace HealthNotes.Analysis.Rules;

/// <summary>An estimate of the ideal weight of a grown animal that scores above it. Where a vet's plan is written, it speaks instead.</summary>
public sealed class IdealWeightRule : ICourseRule
{
    private static readonly string[] NotNow = ["pregnan", "in whelp", "nursing"];

    private static WeightLimits Limits => WeightLimits.Default;

    /// <inheritdoc/>
    public RuleKind Kind { get; } = new("ideal-weight", "ideal weight", 1);

    /// <inheritdoc/>
    public bool Wants(CourseKey key) => key == CourseKey.Weight;

    /// <inheritdoc/>
    public IEnumerable<NoteFinding> Find(Course course, PetRecord at)
    {
        if (WeightContext.Of(course, at.Facts.Today, 0) is not { Last: var weight }
            || Limits.GrownOn(at.Facts.Pet) is not { } grown || weight.Day < grown
            || PlannedLoss.On(weight.Day, at.Facts.Knowns) is not null
            || at.Facts.Knowns.Any(known => Array.Exists(NotNow, word => known.Fact.Text.Text.Contains(word, StringComparison.OrdinalIgnoreCase))))
        {
            yield break;
        }

        Course scores = at.Of(CourseKey.BodyCondition);
        if (DayValue.Of(scores, at.Facts.Today, 0, 1) is not [{ IsPoint: true } score]
            || Math.Abs(score.Day.DayNumber - weight.Day.DayNumber) > Limits["ideal-days"] || score.Value < Limits["ideal-from"])
        {
            yield break;
        }

        var ideal = IdealWeight.Of(weight.Value, score.Value, Limits["ideal-least"], Limits["ideal-most"]);
        bool us = at.Facts.Pet.ShowUsUnits;
        yield return this.At(FindingLevel.Info, weight.At.Line, weight.At.Span,
            $"With a body condition of {Wording.Show(score.Value, "/9")} on {score.Day:yyyy-MM-dd}, the ideal weight would be about {Wording.Show(ideal.LowKg, "kg", us)} to {Wording.Show(ideal.HighKg, "kg", us)}: {Wording.Round(Limits["ideal-least"], 0)} to {Wording.Round(Limits["ideal-most"], 0)}% is held to be too much for each point above 5. Only a vet who sees the pet can set a goal.",
            $"{Limits.SourceOf("ideal-least")}; {Limits.SourceOf("ideal-most")}", score.At.Line);
    }
}
