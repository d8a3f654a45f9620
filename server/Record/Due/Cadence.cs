using System.Collections.Immutable;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Record.Data;

namespace HealthNotes.Record.Due;

/// <summary>How often something should be done at a life stage, by the table <c>cadence.tsv</c>.</summary>
/// <param name="What"><c>check</c>, <c>weighing</c> or <c>visit</c>.</param>
/// <param name="Species">dog or cat.</param>
/// <param name="Stages">The keys of the life stages it is for.</param>
/// <param name="Days">How many days apart.</param>
/// <param name="Grace">How many days past due before it is called overdue.</param>
/// <param name="Source">The publication.</param>
public sealed record Cadence(string What, Species Species, ImmutableArray<string> Stages, int Days, int Grace, string Source)
{
    private static readonly Lazy<ImmutableArray<Cadence>> Rows = new(Read);

    /// <summary>All rows.</summary>
    public static ImmutableArray<Cadence> All => Rows.Value;

    /// <summary>The row for a species and stage; null where the table has none.</summary>
    public static Cadence? For(string what, Species species, string stage)
    {
        foreach (Cadence row in All)
        {
            if (row.What == what && row.Species == species && row.Stages.Contains(stage))
            {
                return row;
            }
        }

        return null;
    }

    private static ImmutableArray<Cadence> Read() =>
        [.. ClinicalData.Rows("cadence.tsv").Select(row => new Cadence(
            row["what"], Enum.Parse<Species>(row["species"], ignoreCase: true), [.. row.Several("stage")],
            (int)row.Number("days")!, (int)row.Number("grace")!, row["source"]))];
}
