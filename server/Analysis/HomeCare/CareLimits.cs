using System.Collections.Immutable;
using HealthNotes.Analysis.Findings;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Record;
using HealthNotes.Record.Data;

namespace HealthNotes.Analysis.HomeCare;

/// <summary>A limit for home care, a row of <c>home-care.tsv</c>.</summary>
/// <param name="What">The rule it is for.</param>
/// <param name="Species">dog or cat; null for both.</param>
/// <param name="Stages">The life stages it is for; <c>any</c>, <c>toy</c> or <c>on-insulin</c>.</param>
/// <param name="Level">The level it raises.</param>
/// <param name="Value">The limit.</param>
/// <param name="Unit">Its unit: hours, days, doses, intervals between doses, percent.</param>
/// <param name="Source">The publication.</param>
public sealed record CareLimit(string What, Species? Species, ImmutableArray<string> Stages, FindingLevel Level, decimal Value, string Unit, string Source);

/// <summary>The limits of <c>home-care.tsv</c>.</summary>
public static class CareLimits
{
    private const string Any = "any";
    private const string OnInsulin = "on-insulin";
    private const string Toy = "toy";
    private static readonly Lazy<ImmutableArray<CareLimit>> Rows = new(Read);

    /// <summary>All rows.</summary>
    public static ImmutableArray<CareLimit> All => Rows.Value;

    /// <summary>The rows for a pet on a day, by rising level; the most particular stage is used whole. Empty for an unknown species.</summary>
    public static ImmutableArray<CareLimit> For(string what, PetRecord at, DateOnly day)
    {
        if (at.Facts.Pet.Species == Species.Unknown)
        {
            return [];
        }

        string stage = at.Facts.Pet.StageOn(day)?.Key ?? "";
        string[] wanted = [.. at.Facts.Pet.OnInsulin ? [OnInsulin] : Array.Empty<string>(), stage, .. IsToy(at, day) ? [Toy] : Array.Empty<string>(), Any];
        foreach (string one in wanted)
        {
            ImmutableArray<CareLimit> rows = [.. All.Where(row => row.What == what && (row.Species is null || row.Species == at.Facts.Pet.Species) && row.Stages.Contains(one)).OrderBy(row => row.Level)];
            if (rows.Length > 0)
            {
                return rows;
            }
        }

        return [];
    }

    /// <summary>The one row of a limit that has no levels; null for an unknown species.</summary>
    public static CareLimit? One(string what, PetRecord at) => For(what, at, at.Facts.Today) is [var row, ..] ? row : null;

    /// <summary>True for a dog whose grown weight is below that of the toy breeds.</summary>
    private static bool IsToy(PetRecord at, DateOnly day) =>
        at.Facts.Pet.Species == Species.Dog && (at.Facts.Pet.AdultWeightKg ?? at.WeightOn(day)?.Value.Number) < All.First(row => row.What == "toy-below").Value;

    private static ImmutableArray<CareLimit> Read() =>
        [.. ClinicalData.Rows("home-care.tsv").Select(row => new CareLimit(
            row["what"], row["species"] == "both" ? null : Enum.Parse<Species>(row["species"], ignoreCase: true), [.. row.Several("stage")],
            Enum.Parse<FindingLevel>(row["level"], ignoreCase: true), row.Number("value")!.Value, row["unit"], row["source"]))];
}
