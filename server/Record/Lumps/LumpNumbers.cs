using System.Collections.Frozen;
using HealthNotes.Record.Data;

namespace HealthNotes.Record.Lumps;

/// <summary>The numbers of the table <c>lumps.tsv</c>, each with its source.</summary>
public sealed class LumpNumbers
{
    private static readonly Lazy<LumpNumbers> Shared = new(() => new LumpNumbers());

    private readonly FrozenDictionary<string, (decimal Value, string Source)> rows = ClinicalData.Rows("lumps.tsv")
        .ToFrozenDictionary(row => row["key"], row => (row.Number("value") ?? throw new InvalidDataException($"lumps.tsv line {row.Line}: no value"), row["source"]));

    private LumpNumbers()
    {
    }

    /// <summary>The table that is built in.</summary>
    public static LumpNumbers Default => Shared.Value;

    /// <summary>The number of a row.</summary>
    public decimal this[string key] => rows[key].Value;

    /// <summary>Where the number of a row comes from.</summary>
    public string SourceOf(string key) => rows[key].Source;
}
