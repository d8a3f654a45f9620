using HealthNotes.Analysis.Findings;
using HealthNotes.Record.Data;
using HealthNotes.Record.Ranges;

namespace HealthNotes.Analysis.Ranges;

/// <summary>A line that raises a level when it is crossed: a row of <c>bounds.tsv</c>.</summary>
/// <param name="For">Which readings it is for.</param>
/// <param name="Above">True when it is crossed upwards.</param>
/// <param name="Level">The level it raises.</param>
/// <param name="Value">Where it lies.</param>
/// <param name="Inclusive">True when exactly the value already counts.</param>
/// <param name="Repeat">How many comparable readings in a row it takes.</param>
/// <param name="Unit">The unit of the value.</param>
/// <param name="Source">The publication.</param>
public sealed record LevelLine(Selector For, bool Above, FindingLevel Level, decimal Value, bool Inclusive, int Repeat, string Unit, string Source)
{
    private static readonly Lazy<ILookup<(string, string), LevelLine>> Rows = new(() => ClinicalData.Rows("bounds.tsv")
        .Select(row => new LevelLine(
            Selector.Of(row), row["side"] == "above", Enum.Parse<FindingLevel>(row["level"], ignoreCase: true), (decimal)row.Number("value")!,
            row["inclusive"] == "yes", (int)row.Number("repeat")!, row["unit"], row["source"]))
        .ToLookup(line => (line.For.What, line.For.Species)));

    /// <summary>The lines a reading is compared with; empty when no row is for it.</summary>
    public static IReadOnlyList<LevelLine> Of(ReadingKey key) => Selector.Fullest(Rows.Value[Selector.Animal(key)], line => line.For, key);
}
