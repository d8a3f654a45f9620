using System.Collections.Immutable;

namespace HealthNotes.Analysis.Trends;

/// <summary>What a gain is compared with: the lowest weight of the months before it, where one odd weighing does not count.</summary>
public static class WeighedBefore
{
    /// <summary>The lowest of some weights: the very lowest when a second lies near it, else the second lowest; null when there are not two.</summary>
    public static DayValue? Lowest(ImmutableArray<DayValue> weights, decimal nearPercent)
    {
        DayValue? first = null;
        DayValue? second = null;
        foreach (DayValue weight in weights)
        {
            if (first is not { } best || weight.Value < best.Value)
            {
                (first, second) = (weight, first);
            }
            else if (second is not { } next || weight.Value < next.Value)
            {
                second = weight;
            }
        }

        return first is { } one && second is { } two
            ? Math.Abs(WeightDrop.PercentChange(one.Value, two.Value)) <= nearPercent ? one : two
            : null;
    }
}
