namespace HealthNotes.Rendering.Drawing.Charts;

/// <summary>Keeps a chart of years small: of each stretch of time the lowest, the highest and the last value stay.</summary>
internal static class Thinning
{
    /// <summary>A chart with more values than this is thinned out; a phone shows no more beside each other.</summary>
    public const int MostMarks = 240;

    private const int Stretches = 80;

    /// <summary>The marks that are drawn.</summary>
    public static IReadOnlyList<Mark> Of(IReadOnlyList<Mark> marks, TimeAxis time)
    {
        if (marks.Count <= MostMarks)
        {
            return marks;
        }

        var kept = new HashSet<Mark>(ReferenceEqualityComparer.Instance);
        foreach (IGrouping<int, Mark> stretch in marks.GroupBy(mark => (int)(time.At(mark.At) * (Stretches - 1))))
        {
            kept.Add(stretch.MinBy(mark => mark.Value)!);
            kept.Add(stretch.MaxBy(mark => mark.Value)!);
            kept.Add(stretch.Last());
        }

        return [.. marks.Where(kept.Contains)];
    }
}
