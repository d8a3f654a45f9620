using System.Collections.Immutable;
using HealthNotes.Record.Pet;

namespace HealthNotes.Analysis.Trends;

/// <summary>How far the latest weighings lie below a settled stretch of earlier ones. A stretch is compared by its median: one odd weighing hardly moves it, and it does not drift up as a maximum does.</summary>
/// <param name="Weighings">How many of the latest weighings are taken together.</param>
/// <param name="Stretch">The earlier weighings that they are compared with.</param>
/// <param name="From">The median of the stretch.</param>
/// <param name="Percent">The mean loss of the latest weighings in percent of it.</param>
/// <param name="LastPercent">The loss of the last weighing alone.</param>
/// <param name="Sure">The mean loss in standard errors: what weighings of a steady animal scatter by.</param>
/// <param name="SureOfPet">The same where the pet's own scatter and the ordinary one are taken together, each for as many steps between weighings as it is from.</param>
/// <param name="Steps">From how many steps that is.</param>
/// <param name="Days">How many days the latest weighings span.</param>
public sealed record WeightDrop(int Weighings, ImmutableArray<DayValue> Stretch, decimal From, decimal Percent, decimal LastPercent, double Sure, double SureOfPet, int Steps, int Days)
{
    private const int MostTogether = 3;
    private const int FewInStretch = 3;

    private static WeightLimits Limits => WeightLimits.Default;

    /// <summary>The last weighings, one to three of them, against each stretch: the beginning of the last months, a year ago, two years ago.</summary>
    public static IEnumerable<WeightDrop> Of(ImmutableArray<DayValue> weights)
    {
        for (int together = 1; together <= MostTogether && together < weights.Length; together++)
        {
            ImmutableArray<DayValue> before = weights[..^together];
            Scatter noise = Noise(before);
            WeightDrop lately = Against(Lately(before, weights[^1].Day), weights, together, noise);
            yield return lately;
            if (lately.LastPercent < Limits["long-still"])
            {
                continue;
            }

            for (int days = Limits.Days("year"); days <= 2 * Limits.Days("year"); days += Limits.Days("year"))
            {
                ImmutableArray<DayValue> stretch = Around(before, DayValue.Before(weights[^1].Day, days));
                if (stretch.Length > 0)
                {
                    yield return Against(stretch, weights, together, noise);
                }
            }
        }
    }

    private static WeightDrop Against(ImmutableArray<DayValue> stretch, ImmutableArray<DayValue> weights, int together, Scatter noise)
    {
        decimal from = Robust.Median(stretch.Select(weight => weight.Value));
        decimal percent = -PercentChange(from, weights[^together..].Average(weight => weight.Value));
        double ofStretch = (stretch.Length < FewInStretch ? 1 : Robust.OfMedian) / stretch.Length;
        double loss = (double)percent / Math.Sqrt((1.0 / together) + ofStretch);
        return new WeightDrop(
            together, stretch, from, percent, -PercentChange(from, weights[^1].Value), loss / noise.Widest, loss / noise.Together, noise.Steps,
            weights[^1].Day.DayNumber - weights[^together].Day.DayNumber);
    }

    /// <summary>The change from one weight to another in percent of the first; a loss is below nothing.</summary>
    public static decimal PercentChange(decimal from, decimal to) => from == 0 ? 0 : (to - from) * 100 / from;

    /// <summary>The first weighings of the last months: those before the window when few lie in it.</summary>
    private static ImmutableArray<DayValue> Lately(ImmutableArray<DayValue> before, DateOnly last)
    {
        DateOnly from = DayValue.Before(last, Limits.Days("window"));
        int start = before.Length;
        while (start > 0 && (before[start - 1].Day >= from || before.Length - start < FewInStretch))
        {
            start--;
        }

        int end = start + 1;
        while (end < before.Length && (end - start < FewInStretch || before[end].Day.DayNumber - before[start].Day.DayNumber <= Limits["stretch"]))
        {
            end++;
        }

        return before[start..end];
    }

    private static ImmutableArray<DayValue> Around(ImmutableArray<DayValue> before, DateOnly day) =>
        before.RemoveAll(weight => Math.Abs(weight.Day.DayNumber - day.DayNumber) > Limits["year-around"]);

    /// <summary>
    /// The scatter of one weighing in percent: this pet's own where it is wider, from the steps between weighings, which a slow
    /// change hardly moves. The ordinary wobble counts as <c>noise-prior</c> steps, so that few steps already tell something.
    /// </summary>
    private static Scatter Noise(ImmutableArray<DayValue> weights)
    {
        var steps = new List<double>();
        for (int index = Math.Max(1, weights.Length - Limits.Days("noise-last")); index < weights.Length; index++)
        {
            steps.Add((double)Math.Abs(PercentChange(weights[index - 1].Value, weights[index].Value)));
        }

        // "74.2-69.6kg": the errors of two readings of a scale for people
        double person = weights[^1].At.Written.Contains('-', StringComparison.Ordinal) ? (double)(Limits["noise-person"] * 100 / weights[^1].Value) : 0;
        double least = Math.Sqrt(Math.Pow((double)Limits["noise"], 2) + (person * person));

        // an odd weighing makes two long steps: none counts for more than three usual ones. Few steps are given some room.
        double most = steps.Count == 0 ? 0 : 3 * Robust.Median(steps);
        double own = steps.Select(step => Math.Min(step, most)).DefaultIfEmpty().Average() * Math.Sqrt(Math.PI) / 2;
        int prior = Limits.Days("noise-prior");
        double both = Math.Sqrt(((prior * least * least) + (steps.Count * own * own)) / (prior + steps.Count));
        return new Scatter(Math.Max(Math.Max(least, both), steps.Count < Limits["noise-least"] ? 0 : own * (1 + (1.0 / steps.Count))), both, prior + steps.Count);
    }

    /// <summary>The scatter of one weighing in percent: the widest that it may be taken for; ordinary and own together; from how many steps that is.</summary>
    private readonly record struct Scatter(double Widest, double Together, int Steps);
}
