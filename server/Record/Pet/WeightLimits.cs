using System.Collections.Frozen;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Record.Data;
using HealthNotes.Record.Ranges;

namespace HealthNotes.Record.Pet;

/// <summary>The numbers of <c>weight-change.tsv</c>.</summary>
public sealed class WeightLimits
{
    private static readonly Lazy<WeightLimits> Shared = new(() => new WeightLimits());
    private readonly FrozenDictionary<string, (string Species, string[] Sizes, decimal Value, string Source)[]> rows;

    private WeightLimits() => rows = ClinicalData.Rows("weight-change.tsv")
        .GroupBy(row => row["key"])
        .ToFrozenDictionary(key => key.Key, key => key.Select(row => (row["species"], row.Several("size"), (decimal)row.Number("value")!, row["source"])).ToArray());

    /// <summary>The table that is built in.</summary>
    public static WeightLimits Default => Shared.Value;

    /// <summary>The number under a key that holds for both species.</summary>
    public decimal this[string key] => rows[key][0].Value;

    /// <summary>The source of the number under a key.</summary>
    public string SourceOf(string key) => rows[key][0].Source;

    /// <summary>So many days.</summary>
    public int Days(string key) => (int)this[key];

    /// <summary>From when on a pet is grown in weight: large dogs fill out longer. Null when no birth is written.</summary>
    public DateOnly? GrownOn(PetProfile pet) => pet.GrownOn((int)ForSize("grown", pet));

    /// <summary>Up to which age, in days, a young animal surely gains every week.</summary>
    public decimal GrowsUntil(PetProfile pet) => ForSize("grow-until", pet);

    /// <summary>The number under a key for the pet's species and the size it has when grown; the row for any size comes last.</summary>
    private decimal ForSize(string key, PetProfile pet)
    {
        string? size = pet.AdultWeightKg is { } kg ? ClinicalTables.Default.SizeOf(pet.Species, kg) : null;
        return rows[key].First(row => row.Species == (pet.Species == Species.Cat ? "cat" : "dog")
            && (row.Sizes is ["any"] || (size is not null && Array.IndexOf(row.Sizes, size) >= 0))).Value;
    }

    /// <summary>The safe loss in percent a week, and its source; null when the species is not known.</summary>
    public (decimal PercentAWeek, string Source)? SafeLoss(Species species)
    {
        foreach ((string of, _, decimal value, string source) in rows["plan-safe"])
        {
            if (species != Species.Unknown && of == (species == Species.Cat ? "cat" : "dog"))
            {
                return (value, source);
            }
        }

        return null;
    }
}
