using System.Collections.Immutable;

namespace HealthNotes.Analysis.Lumps;

/// <summary>Growth of the last size against the smallest earlier one.</summary>
/// <param name="Change">From the size it is held against to the last.</param>
/// <param name="Confirmed">The size of the measuring before the last, when it shows the growth too; null when only the last does.</param>
public sealed record SizeGrowth(SizeChange Change, LumpSize? Confirmed)
{
    /// <summary>
    /// Growth by the last of these sizes, one a day and in order; null when it shows none. Confirmed when the size before it
    /// is also larger than what was there before both.
    /// </summary>
    public static SizeGrowth? In(ReadOnlySpan<LumpSize> sizes)
    {
        if (sizes.Length < 2)
        {
            return null;
        }

        LumpSize last = sizes[^1];
        if (Smallest(sizes[..^2]) is { } before && new SizeChange(before, sizes[^2]).IsGrowth && new SizeChange(before, last) is { IsGrowth: true } confirmed)
        {
            return new SizeGrowth(confirmed, sizes[^2]);
        }

        return Smallest(sizes[..^1]) is { } smallest && new SizeChange(smallest, last) is { IsGrowth: true } change ? new SizeGrowth(change, null) : null;
    }

    /// <summary>
    /// The smallest of earlier sizes. Of many measurements by hand one is always too small by chance: from
    /// <c>steady-count</c> of <c>lumps.tsv</c> on it is the smallest middle one of three in a row.
    /// </summary>
    private static LumpSize? Smallest(ReadOnlySpan<LumpSize> sizes)
    {
        bool steady = sizes.Length >= LumpNumbers.Default["steady-count"];
        LumpSize? smallest = null;
        for (int index = steady ? 2 : 0; index < sizes.Length; index++)
        {
            LumpSize? size = steady ? Middle(sizes[index - 2], sizes[index - 1], sizes[index]) : sizes[index];
            smallest = Upper(size) < Upper(smallest) ? size : smallest;
        }

        return smallest;
    }

    private static LumpSize Middle(LumpSize first, LumpSize second, LumpSize third)
    {
        ImmutableArray<LumpSize> ordered = [.. new[] { first, second, third }.OrderBy(Upper)];
        return ordered[1];
    }

    /// <summary>Its upper end; a size without one is never the smallest.</summary>
    private static decimal Upper(LumpSize? size) => size?.High ?? decimal.MaxValue;
}
