using System.Text;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Tests.Grammar.Reference;

/// <summary>The lists of the language reference, written from the vocabulary. A marker <c>words:gums</c> names its list.</summary>
internal static class WordLists
{
    private static readonly NoteVocabulary Words = NoteVocabulary.Default;

    private static readonly (Level Level, string Name)[] Levels =
        [(Level.Expected, "as expected"), (Level.Watch, "watch"), (Level.Call, "call"), (Level.Urgent, "urgent")];

    /// <summary>The list for a marker, and whether it stands in a running line.</summary>
    public static (string Text, bool Inline) Of(string marker)
    {
        string[] name = marker.Split(':');
        return name[0] switch
        {
            "line-words" => (LineWords(name[1].Split(',')), false),
            "words" => (Describing(name[1]), false),
            "all-words" => (AllWords(), false),
            "units" => (Units(), false),
            "sites" => (Sites(), false),
            "nodes" => (string.Join(", ", Words.Regions.Terms.Where(region => region.Roles.Contains("node")).Select(Spelled)), true),
            "objects" => (string.Join(", ", Words.Objects.Terms.OrderBy(thing => thing.TypicalMm).Select(Object)) + ".", false),
            "states" when name.Length == 1 => (States(), false),
            "states" => (string.Join(", ", Words.States(name[1]).Terms.Where(state => state.Kind == StateKind.Route).Select(Spelled)), true),
            "abbreviations" => (Abbreviations(head: name[1] == "head"), false),
            _ => throw new ArgumentOutOfRangeException(nameof(marker), marker, "a marker without a list"),
        };
    }

    private static string LineWords(string[] kinds)
    {
        var text = new StringBuilder("| Word | Also | What it is |\n| --- | --- | --- |\n");
        foreach (LineWord word in Words.LineWords.Terms.Where(word => kinds.Contains($"{word.Kind}".ToLowerInvariant())).OrderBy(word => word.Order))
        {
            text.Append($"| `{word.Word}` | {string.Join(", ", word.Synonyms)} | {word.Definition} |\n");
        }

        return text.ToString().TrimEnd();
    }

    private static string AllWords()
    {
        var text = new StringBuilder();
        foreach (LineWord word in Words.LineWords.Terms.Where(word => Words.Describing(word.Word).Terms.Any(w => w.Part != "any")).OrderBy(word => word.Kind).ThenBy(word => word.Order))
        {
            text.Append($"**{word.Word}**\n\n<!-- words:{word.Word} -->\n{Describing(word.Word)}\n<!-- end:{word.Word} -->\n\n");
        }

        return text.ToString().TrimEnd();
    }

    private static string Describing(string part)
    {
        IEnumerable<DescribingWord> words = part == "any"
            ? Words.Describing("skin").Terms.Where(word => word.Part == "any")
            : Words.Describing(part).Terms.Where(word => word.Part != "any");
        IEnumerable<(Level Level, string Text)> all = words.SelectMany(word => word.Meanings.Select(meaning => (meaning.Level, Spelled(word) + Animal(meaning.Animal))));
        return string.Join('\n', Levels
            .Select(level => (level.Name, Words: all.Where(word => word.Level == level.Level).Select(word => word.Text).ToList()))
            .Where(level => level.Words.Count > 0)
            .Select(level => $"- *{level.Name}:* {string.Join(", ", level.Words)}"));
    }

    private static string Animal(string animal) => animal switch { "both" => "", "male-cat" => " — *in a male cat*", _ => $" — *in a {animal}*" };

    private static string Sites()
    {
        var text = new StringBuilder("| Region | Also | Sides | |\n| --- | --- | --- | --- |\n");
        foreach (Region region in Words.Regions.Terms)
        {
            string sides = region.Sides switch
            {
                SideRule.Pair => "L R both",
                SideRule.Mid => "mid, or none",
                SideRule.Any => "L R mid both, or none",
                SideRule.Four => "LF RF LH RH L R both",
                SideRule.Front => "L R both LF RF",
                _ => "L R both LH RH",
            };
            string species = region.Species == "both" ? "" : $" ({region.Species}s only)";
            text.Append($"| `{region.Word}` | {string.Join(", ", region.Synonyms)} | {sides} | {region.Definition}{species} |\n");
        }

        return text.ToString().TrimEnd();
    }

    private static string Units()
    {
        var text = new StringBuilder("| Measures | Units |\n| --- | --- |\n");
        foreach (IGrouping<Quantity, Unit> group in Words.Units.Terms.GroupBy(unit => unit.Quantity))
        {
            string name = group.Key switch
            {
                Quantity.Dose => "counted doses",
                Quantity.DoseRate => "dose for a weight",
                Quantity.Portion => "part of a meal",
                _ => $"{group.Key}".ToLowerInvariant(),
            };
            text.Append($"| {name} | {string.Join(", ", group.Select(Spelled))} |\n");
        }

        return text.ToString().TrimEnd();
    }

    private static string Object(ComparisonObject thing) => thing.LowMm == thing.HighMm
        ? FormattableString.Invariant($"`{thing.Word}` {thing.LowMm:0.##} mm")
        : FormattableString.Invariant($"`{thing.Word}` {thing.LowMm:0.##}–{thing.HighMm:0.##} mm");

    private static string States() => string.Join('\n', Words.LineWords.Terms
        .Where(word => word.Kind == WordKind.Vital && Words.States(word.Word).Terms.Any())
        .Select(word => $"- `{word.Word}`: {string.Join(", ", Words.States(word.Word).Terms.Select(Spelled))}"));

    private static string Abbreviations(bool head)
    {
        var text = new StringBuilder("| Written | Means | |\n| --- | --- | --- |\n");
        foreach (Abbreviation abbreviation in Words.AbbreviationPlaces.Where(place => place == "head" == head).SelectMany(place => Words.Abbreviations(place).Terms)
            .DistinctBy(abbreviation => (abbreviation.Word, abbreviation.StandsFor)))
        {
            text.Append($"| {abbreviation.Word} | `{abbreviation.StandsFor}` | {abbreviation.Definition} |\n");
        }

        return text.ToString().TrimEnd();
    }

    private static string Spelled(ITerm term) => $"`{term.Word}`" + (term.Synonyms.Count == 0 ? "" : $" ({string.Join(", ", term.Synonyms)})");
}
