using HealthNotes.Analysis.Findings;
using HealthNotes.Analysis.Trends;
using HealthNotes.Record;
using HealthNotes.Record.Courses;
using HealthNotes.Record.Pet;

namespace HealthNotes.Analysis.Rules;

/// <summary>A loss of weight that is wanted, compared with the rate that is safe and the rate that was planned.</summary>
public sealed class WeightPlanRule : ICourseRule
{
    private const double Week = 7;

    private static WeightLimits Limits => WeightLimits.Default;

    /// <inheritdoc/>
    public RuleKind Kind { get; } = new("weight-plan", "weight", 3);

    /// <inheritdoc/>
    public bool Wants(CourseKey key) => key == CourseKey.Weight;

    /// <inheritdoc/>
    public IEnumerable<NoteFinding> Find(Course course, PetRecord at)
    {
        if (WeightContext.Of(course, at.Facts.Today, Limits.Days("plan-window")) is not { } all
            || PlannedLoss.On(all.Last.Day, at.Facts.Knowns) is not { } plan
            || Limits.SafeLoss(at.Facts.Pet.Species) is not { } safe
            || WeightContext.Of(course, at.Facts.Today, Limits.Days("plan-window"), plan.Since) is not { } weighed)
        {
            yield break;
        }

        DayValue first = weighed.Weights[0];
        int span = weighed.Last.Day.DayNumber - first.Day.DayNumber;
        if (weighed.Weights.Length < Limits["plan-least"] || span < Limits["plan-span"]
            || TheilSen.Of([.. weighed.Weights.Select(weight => new TrendPoint(weight.Day.DayNumber - first.Day.DayNumber, (double)weight.Value))]) is not { } line)
        {
            yield break;
        }

        decimal lost = (decimal)Math.Round(-line.Slope * Week * 100 / line.Intercept, 4);
        bool fast = lost > safe.PercentAWeek;
        bool slow = !fast && span >= Limits["plan-slow-span"] && lost < plan.SlowestAWeek * Limits["plan-slow"] / 100;
        bool noRate = !fast && plan.PercentAWeek is null;
        if (!fast && !slow && !noRate)
        {
            yield break;
        }

        FindingLevel level = slow || noRate ? FindingLevel.Info : weighed.Weights.Length >= Limits["plan-sure"] ? FindingLevel.Call : FindingLevel.Watch;
        string rate = lost > 0 ? $"about {Wording.Round(lost, 1)}% a week lost" : "nothing lost";
        string against = fast
            ? $"faster than the {Wording.Round(safe.PercentAWeek, 1)}% a week held to be safe."
            : noRate ? $"as wanted (line {plan.Line + 1}). Write the clinic's rate, and it is compared: known overweight, plan {Wording.Round(safe.PercentAWeek / 2, 1)}%/week"
            : $"less than half of the plan of {Wording.Round(plan.SlowestAWeek, 2)}% a week (line {plan.Line + 1}).";
        yield return this.At(level, weighed.Last.At.Line, weighed.Last.At.Span,
            $"Weight {Wording.Show(weighed.Last.Value, "kg", at.Facts.Pet.ShowUsUnits)}: {rate} since {first.Day:yyyy-MM-dd} ({weighed.Weights.Length} weighings), {against}",
            fast ? safe.Source : Limits.SourceOf("plan-slow"), weighed.Weights.Select(weight => weight.At.Line).Append(plan.Line));
    }
}
