using System.Globalization;
using System.Reflection;
using HealthNotes.Analysis.Danger;
using HealthNotes.Analysis.Findings;
using HealthNotes.Analysis.Pet;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Analysis.Ranges;

/// <summary>The clinical data of the <c>Data</c> folder, read once. Every number has a source in its row.</summary>
public sealed class ClinicalTables
{
    private static readonly Lazy<ClinicalTables> Shared = new(() => new ClinicalTables());
    private readonly ILookup<(string, string), NormalRange> normals;
    private readonly ILookup<(string, string), LevelLine> lines;
    private readonly List<(string Species, string[] Sizes, LifeStage Stage, AgeMark From, AgeMark? To)> stages;
    private readonly List<(string Species, string Size, decimal? From, decimal? To)> sizes;


    private ClinicalTables()
    {
        normals = Rows("normal-ranges.tsv")
            .Select(row => new NormalRange(Selector.Of(row), row.Number("low"), row.Number("high"), row["unit"], row["source"], row["note"]))
            .ToLookup(range => (range.For.What, range.For.Species));
        lines = Rows("bounds.tsv")
            .Select(row => new LevelLine(
                Selector.Of(row), row["side"] == "above", Enum.Parse<FindingLevel>(row["level"], ignoreCase: true), (decimal)row.Number("value")!,
                row["inclusive"] == "yes", (int)row.Number("repeat")!, row["unit"], row["source"]))
            .ToLookup(line => (line.For.What, line.For.Species));
        stages = [.. Rows("life-stages.tsv").Select(row => (row["species"], row.Several("size"), new LifeStage(row["stage"], row["name"], row["source"]), AgeMark.Of(row["from"]), row["to"].Length == 0 ? (AgeMark?)null : AgeMark.Of(row["to"])))];
        sizes = [.. Rows("size-classes.tsv").Select(row => (row["species"], row["size"], row.Number("from-kg"), row.Number("to-kg")))];
        Cautions = [.. Rows("cautions.tsv").Select(row => new Caution(row["key"], row["text"], row["source"]))];
        AllPhoneNow = [.. Rows("phone-now.tsv").Select(row => new PhoneNow(
            row["text"], row["what"], row["animal"], [.. row.Several("signs").Select(SignPattern.Of)],
            [.. row["with"].Split('+', StringSplitOptions.RemoveEmptyEntries).Select(one => one.Split('|').Select(SignPattern.Of).ToArray())], row.Number("hours") ?? 0, row["source"]))];
        Plausible = Rows("plausible.tsv").ToDictionary(row => row["what"], row => new NormalRange(
            new Selector(row["what"], "both", ["any"], ["any"], ["any"], ["any"]), row.Number("low"), row.Number("high"), row["unit"], row["source"], row["note"]));
        HumanPainkillers = [.. Rows("human-painkillers.tsv").Select(row => new HumanPainkiller(row["name"], row.Several("synonyms"), row["never-safe"], row["source"]))];
    }

    /// <summary>The tables that are built in.</summary>
    public static ClinicalTables Default => Shared.Value;

    /// <summary>The cautions, in the order they are printed.</summary>
    public IReadOnlyList<Caution> Cautions { get; }

    /// <summary>What cannot wait: what is printed, and what the rules look for.</summary>
    public IReadOnlyList<PhoneNow> AllPhoneNow { get; }

    /// <summary>What cannot wait, in an owner's words, in the order it is printed. Of an animal that is not said everything is told.</summary>
    public IEnumerable<Caution> PhoneNow(Species species, bool? male) =>
        AllPhoneNow.Where(row => row.Text.Length > 0 && row.IsFor(species, male)).Select(row => new Caution("", row.Text, row.Source));

    /// <summary>By vital, the values beyond which a number is a slip of the pen.</summary>
    public IReadOnlyDictionary<string, NormalRange> Plausible { get; }

    /// <summary>Painkillers made for people.</summary>
    public IReadOnlyList<HumanPainkiller> HumanPainkillers { get; }

    /// <summary>The range to show beside a reading, or null when no row is for it.</summary>
    public NormalRange? NormalFor(ReadingKey key)
    {
        NormalRange? best = null;
        foreach (NormalRange range in normals[(key.What, Animal(key.Species))])
        {
            if (range.For.Matches(key) && (best is null || range.For.Fullness > best.For.Fullness))
            {
                best = range;
            }
        }

        return best;
    }

    /// <summary>The lines a reading is held against; empty when no row is for it.</summary>
    public IReadOnlyList<LevelLine> LinesFor(ReadingKey key)
    {
        var best = new List<LevelLine>();
        foreach (LevelLine line in lines[(key.What, Animal(key.Species))])
        {
            if (!line.For.Matches(key) || (best.Count > 0 && line.For.Fullness < best[0].For.Fullness))
            {
                continue;
            }

            if (best.Count > 0 && line.For.Fullness > best[0].For.Fullness)
            {
                best.Clear();
            }

            best.Add(line);
        }

        return best;
    }

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

    private static string Animal(Species species) => species switch { Species.Dog => "dog", Species.Cat => "cat", _ => "" };

    private static IReadOnlyList<TsvRow> Rows(string table) => TsvTable.Load(Assembly.GetExecutingAssembly(), table).Rows;
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
    /// <summary>True for this animal; what is not known may be either. A cat that is not said to be female may be male.</summary>
    public bool IsFor(Species species, bool? male) => Animal is "both" or "young" || species == Species.Unknown || Animal.Equals(species.ToString(), StringComparison.OrdinalIgnoreCase)
        || (Animal == "male-cat" && species == Species.Cat && male != false);

    /// <summary>True at this life stage.</summary>
    public bool IsForStage(string? stage) => Animal != "young" || stage is "newborn" or "growing";
}
