using System.Collections.Immutable;
using HealthNotes.Analysis.Findings;
using HealthNotes.Analysis.Trends;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Notes;
using HealthNotes.Record;
using HealthNotes.Record.Courses;
using HealthNotes.Record.Pet;

namespace HealthNotes.Analysis.Rules;

/// <summary>Weight gained by a grown animal, against the lowest of the last six months. A weight that has come back isn't a gain.</summary>
public sealed class WeightGainRule : ICourseRule
{
    private static readonly string[] NeuterWords = ["neuter", "spay", "castrat"];
    private static readonly CourseKey Done = new("done", "");

    private static WeightLimits Limits => WeightLimits.Default;

    /// <inheritdoc/>
    public RuleKind Kind { get; } = new("weight-gain", "weight", 4);

    /// <inheritdoc/>
    public bool Wants(CourseKey key) => key == CourseKey.Weight;

    /// <inheritdoc/>
    public IEnumerable<NoteFinding> Find(Course course, PetRecord at)
    {
        // without a birth nobody can tell a gain from growth
        if (Limits.GrownOn(at.Facts.Pet) is not { } grown || WeightContext.Of(course, at.Facts.Today, 0) is not { Last.Day: var lastDay })
        {
            yield break;
        }

        // after neutering weight comes slowly: the months back to it count as well
        (DateOnly Day, int Line)? neutered = NeuteredBefore(lastDay, at);
        int days = Math.Max(Limits.Days("window"), neutered is { } since ? lastDay.DayNumber - since.Day.DayNumber : 0);
        if (WeightContext.Of(course, at.Facts.Today, days, grown) is not { Weights.Length: > 2 } weighed
            || WeighedBefore.Lowest(weighed.Before, Limits["near"]) is not { } lowest)
        {
            yield break;
        }

        decimal gained = WeightDrop.PercentChange(lowest.Value, weighed.Last.Value);
        DayValue before = weighed.Weights[^2];
        bool twice = before.Day > lowest.Day && WeightDrop.PercentChange(lowest.Value, before.Value) >= Limits["gain"];
        if (gained < Limits["gain"] || !twice || HasComeBack(course, at.Facts.Today, lowest, weighed.Last))
        {
            yield break;
        }

        FindingLevel level = gained >= Limits["gain-watch"] ? FindingLevel.Watch : FindingLevel.Info;
        bool us = at.Facts.Pet.ShowUsUnits;
        string after = neutered is { } on ? $" Neutered on {on.Day:yyyy-MM-dd}." : "";
        yield return this.At(level, weighed.Last.At.Line, weighed.Last.At.Span,
            $"Weight {Wording.Show(weighed.Last.Value, "kg", us)}: {Wording.Round(gained, 1)}% more than {Wording.Show(lowest.Value, "kg", us)} on {lowest.Day:yyyy-MM-dd}.{after}",
            Limits.SourceOf(level == FindingLevel.Watch ? "gain-watch" : "gain"), neutered is { } line ? [lowest.At.Line, line.Line] : [lowest.At.Line]);
    }

    /// <summary>True when it weighed as much before the low.</summary>
    private static bool HasComeBack(Course course, DateOnly today, DayValue lowest, DayValue last)
    {
        ImmutableArray<DayValue> year = WeightContext.Of(course, today, Limits.Days("gain-back"))?.Weights ?? [];
        return year.Any(weight => weight.Day < lowest.Day && WeightDrop.PercentChange(weight.Value, last.Value) <= Limits["near"]);
    }

    /// <summary>The line that says that it was neutered, when that is not long ago.</summary>
    private static (DateOnly Day, int Line)? NeuteredBefore(DateOnly day, PetRecord at)
    {
        DateOnly from = DayValue.Before(day, Limits.Days("after-neutering"));
        (DateOnly Day, int Line)? found = null;
        foreach (Noted line in at.Of(Done).Between(from, day))
        {
            found = line.Item is TextTask done && Tells(done.Text.Text) ? (line.Day, line.Line) : found;
        }

        foreach (DatedFact<TextFact> known in at.Facts.Knowns)
        {
            found = known.Day is { } since && since >= from && since <= day && Tells(known.Fact.Text.Text) ? (since, known.Line) : found;
        }

        return found;
    }

    private static bool Tells(string text) => Array.Exists(NeuterWords, word => text.Contains(word, StringComparison.OrdinalIgnoreCase)) && !text.Contains("talk", StringComparison.OrdinalIgnoreCase);
}
