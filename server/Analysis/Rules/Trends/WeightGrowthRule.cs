using HealthNotes.Analysis.Findings;
using HealthNotes.Analysis.Trends;
using HealthNotes.Record;
using HealthNotes.Record.Courses;
using HealthNotes.Record.Pet;

namespace HealthNotes.Analysis.Rules;

/// <summary>A newborn or a young animal that gains less than any of its age should. A clear loss is <see cref="WeightLossRule"/>'s.</summary>
public sealed class WeightGrowthRule : ICourseRule
{
    private const int Week = 7;

    private static WeightLimits Limits => WeightLimits.Default;

    /// <inheritdoc/>
    public RuleKind Kind { get; } = new("weight-growth", "weight", 2);

    /// <inheritdoc/>
    public bool Wants(CourseKey key) => key == CourseKey.Weight;

    /// <inheritdoc/>
    public IEnumerable<NoteFinding> Find(Course course, PetRecord at)
    {
        if (WeightContext.Of(course, at.Facts.Today, Limits.Days("grow-days")) is not { Weights.Length: > 1 } weighed
            || at.Facts.Pet.AgeOn(weighed.Last.Day) is not { Days: >= 0 } age)
        {
            yield break;
        }

        bool newborn = weighed.StageKey(at) == "newborn";
        if (!newborn && age.Days > Limits.GrowsUntil(at.Facts.Pet))
        {
            yield break;
        }

        // a newborn's last days count, from the second day of its life on
        int days = newborn ? Limits.Days("newborn-days") : Limits.Days("grow-days");
        DayValue[] weights = [.. weighed.Weights.Where(weight => weighed.Last.Day.DayNumber - weight.Day.DayNumber <= days
            && !(newborn && age.Days - (weighed.Last.Day.DayNumber - weight.Day.DayNumber) < Limits["newborn-settled"]))];
        int span = weights.Length == 0 ? 0 : weighed.Last.Day.DayNumber - weights[0].Day.DayNumber;
        if (span < (newborn ? Limits["newborn-days"] : Limits["grow-span"])
            || TheilSen.Of([.. weights.Select(weight => new TrendPoint(weight.Day.DayNumber - weights[0].Day.DayNumber, (double)weight.Value))]) is not { } line)
        {
            yield break;
        }

        decimal gain = (decimal)Math.Round(line.Slope * (newborn ? 1 : Week) * 100 / (double)Robust.Median(weights.Select(weight => weight.Value)), 4);
        if (gain >= (newborn ? Limits["newborn-gain"] : Limits["grow-gain"]))
        {
            yield break;
        }

        FindingLevel level = newborn || (span >= Limits["grow-call-span"] && weights.Length > 2) ? FindingLevel.Call : FindingLevel.Watch;
        bool us = at.Facts.Pet.ShowUsUnits;
        yield return this.At(level, weighed.Last.At.Line, weighed.Last.At.Span,
            $"Weight {Wording.Show(weighed.Last.Value, "kg", us)}: hardly any gain in {span} days, from {Wording.Show(weights[0].Value, "kg", us)}. {(newborn ? "A newborn should gain every day." : "An animal of this age should gain every week.")}",
            Limits.SourceOf(newborn ? "newborn-gain" : "grow-gain"), weights.Select(weight => weight.At.Line));
    }
}
