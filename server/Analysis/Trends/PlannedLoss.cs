using System.Globalization;
using System.Text.RegularExpressions;
using HealthNotes.Grammar.Notes;

namespace HealthNotes.Analysis.Trends;

/// <summary>A loss of weight that is wanted: <c>known overweight, plan 1%/week</c>.</summary>
/// <param name="PercentAWeek">The rate written; of two, the larger.</param>
/// <param name="SlowestAWeek">Of two rates written, the smaller.</param>
/// <param name="Line">The fact's line.</param>
/// <param name="Since">The day from which it holds; null for one in the opening.</param>
public sealed partial record PlannedLoss(decimal PercentAWeek, decimal SlowestAWeek, int Line, DateOnly? Since)
{
    private static readonly string[] Words = ["overweight", "obese", "plan", "diet", "slimming"];

    /// <summary>The latest plan that holds on a day; null when there is none.</summary>
    public static PlannedLoss? On(DateOnly day, IEnumerable<DatedFact<TextFact>> knowns)
    {
        PlannedLoss? plan = null;
        foreach (DatedFact<TextFact> known in knowns)
        {
            if (known.Day is { } since && since > day)
            {
                continue;
            }

            string text = known.Fact.Text.Text;
            Match rate = Rate().Match(text);
            if (rate.Success && Array.Exists(Words, word => text.Contains(word, StringComparison.OrdinalIgnoreCase))
                && decimal.TryParse(rate.Groups["one"].ValueSpan, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out decimal one))
            {
                decimal two = decimal.TryParse(rate.Groups["two"].ValueSpan, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out decimal other) ? other : one;
                plan = new PlannedLoss(Math.Max(one, two), Math.Min(one, two), known.Line, known.Day);
            }
        }

        return plan;
    }

    [GeneratedRegex(@"(?<one>[0-9]{1,2}(\.[0-9]{1,2})?)( ?(-|to) ?(?<two>[0-9]{1,2}(\.[0-9]{1,2})?))? ?% ?(/|a |per |each |every )? ?(week|wk|w)\b", RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture | RegexOptions.CultureInvariant)]
    private static partial Regex Rate();
}
