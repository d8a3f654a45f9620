using System.Reflection;
using System.Text;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Features.Completion.Offers;

/// <summary>What there is to say about an offer, found by its key alone.</summary>
internal static class Explanations
{
    private static readonly Lazy<IReadOnlyDictionary<string, string>> Examples = new(() => TsvTable
        .Load(Assembly.GetExecutingAssembly(), "word-examples.tsv").Rows.ToDictionary(row => row["word"], row => row["example"]));

    private static NoteVocabulary Vocabulary => NoteVocabulary.Default;

    /// <summary>An example line of each word.</summary>
    public static IReadOnlyDictionary<string, string> ExampleOf => Examples.Value;

    /// <summary>The explanation in Markdown, or null.</summary>
    public static string? Of(string key)
    {
        int colon = key.IndexOf(':', StringComparison.Ordinal);
        string rest = colon < 0 ? "" : key[(colon + 1)..];
        return (colon < 0 ? "" : key[..colon]) switch
        {
            "word" => Vocabulary.LineWords.Find(rest) is { } word ? Word(word) : null,
            "describing" => Describing(rest.Split(':')),
            "site" => Vocabulary.Regions.Find(rest) is { } region ? Site(region) : null,
            "state" => State(rest.Split(':')),
            "object" => Vocabulary.Objects.Find(rest) is { } thing ? Object(thing) : null,
            "unit" => Vocabulary.Units.Find(rest) is { } unit ? Unit(unit) : null,
            "fixed" => Fixed(rest.Split(':')),
            "ending" => Ending(rest.Split(':')),
            _ => null,
        };
    }

    private static string Word(LineWord word) => Text(
        $"**{word.Word}**: {Sentence(word.Definition)}",
        ExampleOf.TryGetValue(word.Word, out string? example) ? $"Written as: `{example}`" : "",
        Also(word.Synonyms),
        Source(word.Source));

    private static string? Describing(string[] key)
    {
        if (key is not [var part, var spelled, var animal, var sex]
            || Vocabulary.Describing(part).Find(spelled) is not { } word
            || word.For(SpeciesOf(animal), sex == "male") is not { } meaning)
        {
            return null;
        }

        return Text(
            $"**{word.Word}**: {Sentence(meaning.Definition)}",
            $"Level: {PlainLevels.Of(meaning.Level)}.",
            $"Written as: `{part} {word.Word}`",
            Also(word.Synonyms),
            Source(meaning.Source));
    }

    private static string Site(Region region) => Text(
        $"**{region.Word}**: {Sentence(region.Definition)}",
        $"Written as: `{(Sides.Of(region.Sides) is [var side, ..] ? $"{side}-{region.Word}" : region.Word)}`",
        Also(region.Synonyms),
        Source(region.Source));

    private static string? State(string[] key) => key is [var scope, var spelled] && Vocabulary.States(scope).Find(spelled) is { } state
        ? Text($"**{state.Word}**: {Sentence(state.Definition)}", state.Comparable == "none" ? "It is never compared with a resting range." : "", Also(state.Synonyms), Source(state.Source))
        : null;

    private static string Object(ComparisonObject thing) => Text(
        $"**{thing.Word}**: {Sentence(thing.Definition)}",
        thing.LowMm == thing.HighMm ? $"{thing.LowMm:0.##} mm." : $"{thing.LowMm:0.##} to {thing.HighMm:0.##} mm; shown as about {thing.TypicalMm:0.##} mm.",
        $"Written as: `like {thing.Word}`. A ruler is better.",
        Also(thing.Synonyms),
        Source(thing.Source));

    private static string Unit(Unit unit) => Text($"**{unit.Word}**", Also(unit.Synonyms), Source(unit.Source));

    private static string? Fixed(string[] key) => key is [var list, var spelled] && Lists.Contains(list) && Vocabulary.Fixed(list).Find(spelled) is { } word
        ? Text($"**{word.Word}**: {Sentence(word.Definition)}", Also(word.Synonyms))
        : null;

    private static string? Ending(string[] key) => key is [var word, var ending] && NumberEndings.For(word).FirstOrDefault(row => row.Ending == ending) is { } found
        ? Text($"**{found.Ending}**: {found.Meaning}.", Source(found.Source))
        : null;

    private static readonly string[] Lists = ["species", "sex", "neuter", "units", "side", "portion", "mcs", "entry", "ok"];

    private static Species SpeciesOf(string animal) => animal switch { "dog" => Species.Dog, "cat" => Species.Cat, _ => Species.Unknown };

    private static string Sentence(string text) => text.EndsWith('.') ? text : text + ".";

    private static string Also(IReadOnlyList<string> synonyms) => synonyms.Count == 0 ? "" : $"Also: {string.Join(", ", synonyms)}.";

    private static string Source(string source) => source.Length == 0 ? "" : $"Source: {Sentence(source)}";

    private static string Text(params string[] paragraphs)
    {
        var text = new StringBuilder();
        foreach (string paragraph in paragraphs.Where(paragraph => paragraph.Length > 0))
        {
            text.Append(text.Length > 0 ? "\n\n" : "").Append(paragraph);
        }

        return text.ToString();
    }
}
