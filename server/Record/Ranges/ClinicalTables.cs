using System.Globalization;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Record.Data;
using HealthNotes.Record.Readings;

namespace HealthNotes.Record.Ranges;

/// <summary>The clinical data of the <c>Data</c> folder, read once. Every number has a source in its row.</summary>
public sealed class ClinicalTables
{
    private static readonly Lazy<ClinicalTables> Shared = new(() => new ClinicalTables());
    private readonly ILookup<(string, string), NormalRange> normals;
    private readonly List<(string Species, string[] Sizes, LifeStage Stage, AgeMark From, AgeMark? To)> stages;
    private readonly List<(string Species, string Size, decimal? From, decimal? To)> sizes;

    private readonly Caution[] cautions;

    private ClinicalTables()
    {
        normals = ClinicalData.Rows("normal-ranges.tsv")
            .Select(row => new NormalRange(Selector.Of(row), row.Number("low"), row.Number("high"), row["unit"], row["source"], row["note"]))
            .ToLookup(range => (range.For.What, range.For.Species));
        stages = [.. ClinicalData.Rows("life-stages.tsv").Select(row => (row["species"], row.Several("size"), new LifeStage(row["stage"], row["name"], row["source"]), AgeMark.Of(row["from"]), row["to"].Length == 0 ? (AgeMark?)null : AgeMark.Of(row["to"])))];
        sizes = [.. ClinicalData.Rows("size-classes.tsv").Select(row => (row["species"], row["size"], row.Number("from-kg"), row.Number("to-kg")))];
        cautions = [.. ClinicalData.Rows("cautions.tsv").Select(row => new Caution(row["key"], row["text"], row["source"]))];
        Plausible = ClinicalData.Rows("plausible.tsv").ToDictionary(row => row["what"], row => new NormalRange(
            new Selector(row["what"], "both", ["any"], ["any"], ["any"], ["any"]), row.Number("low"), row.Number("high"), row["unit"], row["source"], row["note"]));
        HumanPainkillers = [.. ClinicalData.Rows("human-painkillers.tsv").Select(row => new HumanPainkiller(row["name"], row.Several("synonyms"), row["never-safe"], row["source"]))];
    }

    /// <summary>The tables that are built in.</summary>
    public static ClinicalTables Default => Shared.Value;

    /// <summary>The cautions, in the order they are printed, for any animal.</summary>
    public IReadOnlyList<Caution> Cautions => CautionsFor(Species.Unknown);

    /// <summary>The cautions in the words for a species.</summary>
    public IReadOnlyList<Caution> CautionsFor(Species species) => [.. cautions.Select(caution => caution with { Text = ClinicalData.ForSpecies(caution.Text, species) })];

    /// <summary>By vital, the values beyond which a number is a slip of the pen.</summary>
    public IReadOnlyDictionary<string, NormalRange> Plausible { get; }

    /// <summary>True when a living pet can have the value: it lies within the row of its word, if there is one, and within its scale.</summary>
    public bool IsPlausible(NoteReading reading) =>
        Fits(reading.Value.Unit, reading.Value.Number)
        && (!Plausible.TryGetValue(reading.What, out NormalRange? range)
            || range.Unit != reading.Value.Unit
            || ((range.Low is null || reading.Value.Number >= range.Low) && (range.High is null || reading.Value.Number <= range.High)));

    /// <summary>Painkillers made for people.</summary>
    public IReadOnlyList<HumanPainkiller> HumanPainkillers { get; }

    /// <summary>The range to show beside a reading, or null when no row is for it.</summary>
    public NormalRange? NormalFor(ReadingKey key) => Selector.Fullest(normals[Selector.Animal(key)], range => range.For, key).FirstOrDefault();

    /// <summary>The size class of a grown animal of this weight.</summary>
    public string? SizeOf(Species species, decimal kg)
    {
        string animal = Animal(species);
        foreach ((string of, string size, decimal? from, decimal? to) in sizes)
        {
            if (of == animal && !(kg < from) && !(kg >= to))
            {
                return size;
            }
        }

        return null;
    }

    /// <summary>The life stage at an age; a row for the size class goes before one for any.</summary>
    public LifeStage? StageOf(Species species, string? size, Age age)
    {
        string animal = Animal(species);
        LifeStage? ofAnySize = null;
        foreach ((string of, string[] classes, LifeStage stage, AgeMark from, AgeMark? to) in stages)
        {
            bool any = classes is ["any"];
            if (of != animal || !(any || (size is not null && Array.IndexOf(classes, size) >= 0)) || !from.ReachedBy(age) || to?.ReachedBy(age) == true)
            {
                continue;
            }

            if (!any)
            {
                return stage;
            }

            ofAnySize ??= stage;
        }

        return ofAnySize;
    }

    /// <summary>A score cannot be past the end of its scale.</summary>
    private static bool Fits(string unit, decimal number) =>
        !unit.StartsWith('/') || !decimal.TryParse(unit.AsSpan(1), out decimal scale) || number <= scale;

    private static string Animal(Species species) => species switch { Species.Dog => "dog", Species.Cat => "cat", _ => "" };
}

/// <summary>An age that a row names: <c>28d</c> in days, <c>7y</c> in birthdays.</summary>
internal readonly record struct AgeMark(int Number, bool Birthdays)
{
    /// <summary>Reads a mark.</summary>
    public static AgeMark Of(string mark) => new(int.Parse(mark.AsSpan(0, mark.Length - 1), CultureInfo.InvariantCulture), mark[^1] == 'y');

    /// <summary>True when the age has come to it.</summary>
    public bool ReachedBy(Age age) => Birthdays ? age.Years >= Number : age.Days >= Number;
}

/// <summary>A painkiller made for people; the name is generic.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Synonyms">Its other names.</param>
/// <param name="NeverSafe">The animal for which no plan line makes it safe: dog, cat or both; empty where a vet may order it.</param>
/// <param name="Source">The publication.</param>
public sealed record HumanPainkiller(string Name, IReadOnlyList<string> Synonyms, string NeverSafe, string Source)
{
    /// <summary>True when no plan line makes it safe for the animal; one that is not known may be either.</summary>
    public bool IsNeverSafe(Species species) => NeverSafe == "both" || (NeverSafe.Length > 0 && (species == Species.Unknown || NeverSafe.Equals(species.ToString(), StringComparison.OrdinalIgnoreCase)));

    /// <summary>True when a text names it.</summary>
    public bool IsIn(string text) => Synonyms.Append(Name).Any(name => text.Contains(name, StringComparison.OrdinalIgnoreCase));
}

/// <summary>The range shown as normal beside a reading; a null end is open.</summary>
public sealed record NormalRange(Selector For, decimal? Low, decimal? High, string Unit, string Source, string Note);

/// <summary>A life stage.</summary>
/// <param name="Key">Its key in the tables.</param>
/// <param name="Name">The name shown to an owner.</param>
/// <param name="Source">The publication.</param>
public sealed record LifeStage(string Key, string Name, string Source);

/// <summary>A caution in an owner's words.</summary>
public sealed record Caution(string Key, string Text, string Source);
