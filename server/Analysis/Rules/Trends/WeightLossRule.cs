using System.Collections.Immutable;
using HealthNotes.Analysis.Findings;
using HealthNotes.Analysis.Trends;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Record;
using HealthNotes.Record.Courses;
using HealthNotes.Record.Pet;

namespace HealthNotes.Analysis.Rules;

/// <summary>Weight lost without a plan, against a settled stretch of earlier weighings (<see cref="WeightDrop"/>); in a growing animal, any clear loss.</summary>
public sealed class WeightLossRule : ICourseRule
{
    /// <summary>Days in a month, on average.</summary>
    private const double Month = 365.25 / 12;

    private static int LongestDays => (2 * Limits.Days("year")) + Limits.Days("year-around");

    private static WeightLimits Limits => WeightLimits.Default;

    /// <inheritdoc/>
    public RuleKind Kind { get; } = new("weight-loss", "weight", 1);

    /// <inheritdoc/>
    public bool Wants(CourseKey key) => key == CourseKey.Weight;

    /// <inheritdoc/>
    public IEnumerable<NoteFinding> Find(Course course, PetRecord at)
    {
        if (WeightContext.Of(course, at.Facts.Today, LongestDays) is not { Weights.Length: > 1 } weighed
            || PlannedLoss.On(weighed.Last.Day, at.Facts.Knowns) is not null)
        {
            return [];
        }

        NoteFinding? found = weighed.StageKey(at) switch
        {
            "newborn" => OfNewborn(weighed, at),
            "growing" => OfYoung(weighed, at),
            var stage => OfGrown(weighed.Weights, at, stage == "senior"),
        };
        return found is null ? [] : [found];
    }

    private NoteFinding? OfNewborn(WeightContext weighed, PetRecord at)
    {
        DayValue before = weighed.Weights[^2];
        bool settled = at.Facts.Pet.AgeOn(before.Day) is { } age && age.Days >= Limits["newborn-settled"];
        return settled && weighed.Last.Value < before.Value
            ? Speak(weighed.Last, before, "newborn-settled", at, "A newborn should gain every day.")
            : null;
    }

    /// <summary>
    /// One weighing is enough: an animal that should gain has lost. It is compared with the weighing before; with the highest
    /// where it has fallen twice since, as the highest alone may be a slip of the pen.
    /// </summary>
    private NoteFinding? OfYoung(WeightContext weighed, PetRecord at)
    {
        DayValue before = weighed.Weights[^2];
        DayValue highest = weighed.Before.Where(weight => weighed.Last.Day.DayNumber - weight.Day.DayNumber <= Limits["window"]).DefaultIfEmpty(before).MaxBy(weight => weight.Value);
        DayValue from = before.Value < highest.Value && weighed.Last.Value < before.Value ? highest : before;
        return Lost(from, weighed.Last) >= Limits["loss-young"]
            ? Speak(weighed.Last, from, "loss-young", at, "An animal of this age should still be gaining.")
            : null;
    }

    /// <summary>The strongest that any of the comparisons asks for; of equal ones the one that is surest.</summary>
    private NoteFinding? OfGrown(ImmutableArray<DayValue> weights, PetRecord at, bool senior)
    {
        bool careful = at.Facts.Pet.Species == Species.Cat || senior || weights[0].Value < Limits["careful-below"];
        (WeightDrop Drop, FindingLevel Level)? found = null;
        foreach (WeightDrop drop in WeightDrop.Of(weights))
        {
            if (LevelOf(drop, careful) is { } level && !(found is { } best && (best.Level, best.Drop.Sure).CompareTo((level, drop.Sure)) >= 0))
            {
                found = (drop, level);
            }
        }

        return found is { } one ? Speak(weights[^1], one.Drop, one.Level, at) : null;
    }

    private static FindingLevel? LevelOf(WeightDrop drop, bool careful)
    {
        bool once = drop.Weighings == 1;
        decimal call = once ? Limits["loss-call"] : !careful ? Limits[drop.Weighings == 2 ? "loss-twice" : "loss-thrice"] : drop.Days < Limits["loss-quick"] ? Limits["loss"] : Limits["loss-twice-careful"];
        decimal watch = once && !careful ? Limits["loss-call"] : Limits["loss"];
        return drop.LastPercent < Limits["loss-last"] ? null
            : drop.Percent >= call && IsSure(careful ? "sure-call-careful" : "sure-call") && (careful || !once) ? FindingLevel.Call
            : drop.Percent >= watch && IsSure("sure-watch") ? FindingLevel.Watch
            : null;

        // where a loss need not be found early, a scatter that is known from few weighings asks for more
        bool IsSure(string row) => drop.Sure >= (double)Limits[row] && (careful || drop.SureOfPet >= Robust.OfFew((double)Limits[row], drop.Steps));
    }

    private static decimal Lost(DayValue from, DayValue to) => -WeightDrop.PercentChange(from.Value, to.Value);

    private NoteFinding Speak(DayValue last, WeightDrop drop, FindingLevel level, PetRecord at)
    {
        bool us = at.Facts.Pet.ShowUsUnits;
        DayValue then = drop.Stretch[drop.Stretch.Length / 2];
        int days = last.Day.DayNumber - then.Day.DayNumber;
        string ago = days < 2 * Month ? $"{days} days" : $"{(int)Math.Round(days / Month)} months";
        string again = drop.Weighings == 1 ? ". Weigh again in a few days, on the same scales." : $", by the last {drop.Weighings} weighings.";
        return this.At(level, last.At.Line, last.At.Span,
            $"Weight {Wording.Show(last.Value, "kg", us)}: {Wording.Round(drop.LastPercent, 0)} % less than about {Wording.Show(drop.From, "kg", us)} {ago} before{again}",
            Limits.SourceOf(drop.Percent >= Limits["loss-call"] ? "loss-call" : "loss"), drop.Stretch.Select(weight => weight.At.Line));
    }

    private NoteFinding Speak(DayValue last, DayValue from, string row, PetRecord at, string more)
    {
        bool us = at.Facts.Pet.ShowUsUnits;
        return this.At(FindingLevel.Call, last.At.Line, last.At.Span,
            $"Weight {Wording.Show(last.Value, "kg", us)}: {Wording.Round(Lost(from, last), 0)} % less than {Wording.Show(from.Value, "kg", us)} on {Wording.Day(from.Day, at.Facts.Today)}. {more}",
            Limits.SourceOf(row), from.At.Line);
    }
}
