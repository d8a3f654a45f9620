using System.Collections.Immutable;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Record.Data;
using HealthNotes.Record.Ranges;

namespace HealthNotes.Analysis.Danger;

/// <summary>What cannot wait: a line on the sheet and the card, and the signs by which the rules know it.</summary>
/// <param name="Text">An owner's words; empty where it is not printed.</param>
/// <param name="What">What several signs together are called in a message; empty for single ones.</param>
/// <param name="Animal">both, dog, cat, male-cat, or young: puppies and kittens.</param>
/// <param name="Signs">Any of these.</param>
/// <param name="With">And one of each of these; empty where one sign alone cannot wait.</param>
/// <param name="Hours">How far apart they may be.</param>
/// <param name="Source">The publication.</param>
public sealed record PhoneNow(string Text, string What, string Animal, SignPattern[] Signs, SignPattern[][] With, decimal Hours, string Source)
{
    private static readonly Lazy<ImmutableArray<PhoneNow>> Rows = new(() => [.. ClinicalData.Rows("phone-now.tsv").Select(row => new PhoneNow(
        row["text"], row["what"], row["animal"], [.. row.Several("signs").Select(SignPattern.Of)],
        [.. row["with"].Split('+', StringSplitOptions.RemoveEmptyEntries).Select(one => one.Split('|').Select(SignPattern.Of).ToArray())], row.Number("hours") ?? 0, row["source"]))]);

    /// <summary>All rows: what is printed, and what the rules look for.</summary>
    public static ImmutableArray<PhoneNow> All => Rows.Value;

    /// <summary>What cannot wait, in an owner's words, in the order it is printed. Every row, where the animal is not known.</summary>
    public static IEnumerable<Caution> Printed(Species species, bool? male) =>
        All.Where(row => row.Text.Length > 0 && row.IsFor(species, male)).Select(row => new Caution("", ClinicalData.ForSpecies(row.Text, species), row.Source));

    /// <summary>True for this animal; what is not known may be either. A cat that is not said to be female may be male.</summary>
    public bool IsFor(Species species, bool? male) => Animal is "both" or "young" || species == Species.Unknown || Animal.Equals(species.ToString(), StringComparison.OrdinalIgnoreCase)
        || (Animal == "male-cat" && species == Species.Cat && male != false);

    /// <summary>True at this life stage.</summary>
    public bool IsForStage(string? stage) => Animal != "young" || stage is "newborn" or "growing";
}
