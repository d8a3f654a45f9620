using System.Collections.Immutable;

namespace HealthNotes.Analysis.Trends;

/// <summary>What a weight is held against: the highest or lowest of the months before it, where one odd weighing does not count.</summary>
public static class WeighedBefore
{
    /// <summary>The change from one weight to another in percent of the first; a loss is below nothing.</summary>
    public static decimal PercentChange(decimal from, decimal to) => (to - from) * 100 / from;

    /// <summary>The highest of some weights: the very highest when a second lies near it, else the second highest; null when there are not two.</summary>
    public static DayValue? Highest(ImmutableArray<DayValue> weights, decimal nearPercent) => Furthest(weights, nearPercent, highest: true);

    /// <summary>The lowest of some weights, in the same way.</summary>
    public static DayValue? Lowest(ImmutableArray<DayValue> weights, decimal nearPercent) => Furthest(weights, nearPercent, highest: false);

    private static DayValue? Furthest(ImmutableArray<DayValue> weights, decimal nearPercent, bool highest)
    {
        DayValue? first = null;
        DayValue? second = null;
        foreach (DayValue weight in weights)
        {
            if (first is not { } best || (highest ? weight.Value > best.Value : weight.Value < best.Value))
            {
                (first, second) = (weight, first);
            }
            else if (second is not { } next || (highest ? weight.Value > next.Value : weight.Value < next.Value))
            {
                second = weight;
            }
        }

        return first is { } one && second is { } two
            ? Math.Abs(PercentChange(one.Value, two.Value)) <= nearPercent ? one : two
            : null;
    }
}
