using HealthNotes.Analysis.Courses;
using HealthNotes.Analysis.Findings;
using HealthNotes.Analysis.Trends;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Analysis.Rules;

/// <summary>Weight lost without a plan, against the highest of the last six months; in a growing animal, any clear loss.</summary>
public sealed class WeightLossRule : ICourseRule
{
    private static WeightLimits Limits => WeightLimits.Default;

    /// <inheritdoc/>
    public string Name => "weight-loss";

    /// <inheritdoc/>
    public string Topic => "weight";

    /// <inheritdoc/>
    public bool Wants(CourseKey key) => key == CourseKey.Weight;

    /// <inheritdoc/>
    public IEnumerable<NoteFinding> Find(Course course, CourseContext at)
    {
        if (WeightContext.Of(course, at.Note.Today, Limits.Days("window")) is not { Weights.Length: > 1 } weighed
            || PlannedLoss.On(weighed.Last.Day, at.Note.Knowns) is not null)
        {
            return [];
        }

        NoteFinding? found = weighed.StageKey(at) switch
        {
            "newborn" => OfNewborn(weighed, at),
            "growing" => OfYoung(weighed, at),
            var stage => OfGrown(weighed, at, stage == "senior"),
        };
        return found is null ? [] : [found];
    }

    private NoteFinding? OfNewborn(WeightContext weighed, CourseContext at)
    {
        DayValue before = weighed.Weights[^2];
        bool settled = at.Note.Pet.AgeOn(before.Day) is { } age && age.Days >= Limits["newborn-settled"];
        return settled && weighed.Last.Value < before.Value
            ? Speak(weighed.Last, before, FindingLevel.Call, "newborn-settled", at, "A newborn should gain every day.")
            : null;
    }

    /// <summary>
    /// One weighing is enough: an animal that should gain has lost. It is held against the weighing before; against the highest
    /// where it has fallen twice since, as the highest alone may be a slip of the pen.
    /// </summary>
    private NoteFinding? OfYoung(WeightContext weighed, CourseContext at)
    {
        DayValue before = weighed.Weights[^2];
        DayValue highest = weighed.Before.MaxBy(weight => weight.Value);
        DayValue from = before.Value < highest.Value && weighed.Last.Value < before.Value ? highest : before;
        return Lost(from, weighed.Last) >= Limits["loss-young"]
            ? Speak(weighed.Last, from, FindingLevel.Call, "loss-young", at, "An animal of this age should still be gaining.")
            : null;
    }

    private NoteFinding? OfGrown(WeightContext weighed, CourseContext at, bool senior)
    {
        if (WeighedBefore.Highest(weighed.Before, Limits["near"]) is not { } highest || Lost(highest, weighed.Last) is var lost && lost < Limits["loss"])
        {
            return null;
        }

        DayValue before = weighed.Weights[^2];
        bool twice = before.Day > highest.Day && Lost(highest, before) >= Limits["loss"];
        bool careful = at.Note.Pet.Species == Species.Cat || senior || highest.Value < Limits["careful-below"];
        bool much = lost >= Limits["loss-call"];
        FindingLevel? level = twice && (careful || much) ? FindingLevel.Call
            : careful && much ? FindingLevel.Call
            : twice || careful || much ? FindingLevel.Watch
            : null;
        string again = twice ? $"{Wording.Round(Limits["loss"], 0)}% or more was gone on {before.Day:yyyy-MM-dd} already." : "Weigh again in a few days, on the same scales.";
        return level is { } found ? Speak(weighed.Last, highest, found, much ? "loss-call" : "loss", at, again) : null;
    }

    private static decimal Lost(DayValue from, DayValue to) => -WeighedBefore.PercentChange(from.Value, to.Value);

    private NoteFinding Speak(DayValue last, DayValue from, FindingLevel level, string row, CourseContext at, string more)
    {
        bool us = at.Note.Pet.ShowUsUnits;
        return RuleContext.At(Name, level, last.At.Line, last.At.Span,
            $"Weight {Wording.Show(last.Value, "kg", us)}: {Wording.Round(Lost(from, last), 1)}% less than {Wording.Show(from.Value, "kg", us)} on {from.Day:yyyy-MM-dd}. {more} {Wording.Advice(level)}",
            Limits.SourceOf(row), from.At.Line);
    }
}
