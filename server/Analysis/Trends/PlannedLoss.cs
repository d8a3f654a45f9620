using System.Globalization;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Notes;

namespace HealthNotes.Analysis.Trends;

/// <summary>A loss of weight that is wanted: <c>known overweight, plan 1%/week</c>.</summary>
/// <param name="PercentAWeek">The rate written; of two, the larger; null where the loss is wanted and no rate a week is written.</param>
/// <param name="SlowestAWeek">Of two rates written, the smaller.</param>
/// <param name="Line">The fact's line.</param>
/// <param name="Since">The day from which it holds; null for one in the opening.</param>
public sealed record PlannedLoss(decimal? PercentAWeek, decimal SlowestAWeek, int Line, DateOnly? Since)
{
    private static readonly string[] Each = ["a ", "per ", "each ", "every "];
    /// <summary>Wordings of a loss that is wanted, where no rate a week is written.</summary>
    private static readonly string[] Wanted = ["weight loss", "weight-loss", "lose weight", "losing weight", "to lose", "should lose", "slimming", "weight reduction", "reduce weight", "reduce his weight", "reduce her weight"];

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
            if (Array.Exists(Words, word => text.Contains(word, StringComparison.OrdinalIgnoreCase)) && RatesIn(text) is { Length: > 0 } rates)
            {
                plan = new PlannedLoss(rates.Max(), rates.Min(), known.Line, known.Day);
            }
            else if (Array.Exists(Wanted, word => text.Contains(word, StringComparison.OrdinalIgnoreCase)))
            {
                plan = new PlannedLoss(null, 0, known.Line, known.Day);
            }
        }

        return plan;
    }

    /// <summary>The numbers before <c>%/week</c>, <c>% a week</c> or <c>% per week</c>: one, or two as in <c>1-1.5%</c>; none when there is no such rate.</summary>
    private static decimal[] RatesIn(string text)
    {
        int percent = text.IndexOf('%', StringComparison.Ordinal);
        while (percent >= 0)
        {
            if (IsAWeek(text.AsSpan(percent + 1)))
            {
                int start = percent;
                while (start > 0 && (char.IsAsciiDigit(text[start - 1]) || text[start - 1] is '.' or '-' or ' '))
                {
                    start--;
                }

                return [.. text[start..percent].Split([' ', '-'], StringSplitOptions.RemoveEmptyEntries).TakeLast(2).Select(Number).OfType<decimal>()];
            }

            percent = text.IndexOf('%', percent + 1);
        }

        return [];
    }

    /// <summary>True for <c>/week</c>, <c> a week</c>, <c> per wk</c>, <c> weekly</c>.</summary>
    private static bool IsAWeek(ReadOnlySpan<char> rest)
    {
        rest = rest.TrimStart(" /");
        foreach (string word in Each)
        {
            if (rest.StartsWith(word, StringComparison.OrdinalIgnoreCase))
            {
                rest = rest[word.Length..].TrimStart();
                break;
            }
        }

        return rest.StartsWith("week", StringComparison.OrdinalIgnoreCase) || rest.StartsWith("wk", StringComparison.OrdinalIgnoreCase)
            || (rest.StartsWith("w", StringComparison.OrdinalIgnoreCase) && (rest.Length == 1 || !char.IsLetter(rest[1])));
    }

    private static decimal? Number(string text) => decimal.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out decimal number) ? number : null;
}
