using System.Collections.Immutable;

namespace HealthNotes.Record.Lumps;

/// <summary>Growth of the latest sizes against a settled stretch of earlier ones, past what measuring by hand scatters.</summary>
/// <param name="Change">From the middle size of the stretch to the last size.</param>
/// <param name="Confirmed">The size of the measuring before the last, when both together show the growth surely; null when only the last does.</param>
public sealed record SizeGrowth(SizeChange Change, LumpSize? Confirmed)
{
    private const int MostTogether = 3;
    private const int MostInStretch = 3;

    private static LumpNumbers Numbers => LumpNumbers.Default;

    /// <summary>Growth by the last of these sizes, one a day and in order; null when it shows none.</summary>
    public static SizeGrowth? In(ImmutableArray<LumpSize> sizes)
    {
        for (int together = Math.Min(MostTogether, sizes.Length - 1); together > 1; together--)
        {
            if (Surely(sizes, together, (double)Numbers[sizes.Length - together < MostInStretch ? "sure-call" : "sure-call-settled"]) is { } change)
            {
                return new SizeGrowth(change, sizes[^2]);
            }
        }

        return sizes.Length > 1 && Surely(sizes, 1, (double)Numbers["sure-watch"]) is { } once ? new SizeGrowth(once, null) : null;
    }

    /// <summary>
    /// The change from the smaller of two stretches, the first sizes and the ones just before the latest, where each of the
    /// latest sizes is growth and their mean lies so many standard errors above it. The error of the hand goes with the size. Of two sizes
    /// the smaller is taken, which tells no more than one.
    /// </summary>
    private static SizeChange? Surely(ImmutableArray<LumpSize> sizes, int together, double sure)
    {
        ImmutableArray<LumpSize> before = sizes[..^together];
        ImmutableArray<LumpSize> latest = sizes[^together..];
        int stretch = Math.Min(MostInStretch, before.Length);
        LumpSize from = new[] { Middle(before[..stretch]), Middle(before[^stretch..]) }.MinBy(Upper)!;
        double hand = Math.Log(1 + ((double)Numbers["hand-percent"] / 100));
        double error = hand * Math.Sqrt((1.0 / together) + (stretch < MostInStretch ? 1 : Math.PI / 2 / stretch));
        return latest.All(size => new SizeChange(from, size).IsGrowth)
            && (from.Typical is not { } typical || latest.Average(size => Math.Log((double)((size.Typical ?? size.Low) / typical))) >= sure * error)
                ? new SizeChange(from, sizes[^1]) : null;
    }

    private static LumpSize Middle(ImmutableArray<LumpSize> sizes) => sizes.Sort((one, other) => Upper(one).CompareTo(Upper(other)))[(sizes.Length - 1) / 2];

    /// <summary>Its upper end; a size without one is never the smallest.</summary>
    private static decimal Upper(LumpSize size) => size.High ?? decimal.MaxValue;
}
