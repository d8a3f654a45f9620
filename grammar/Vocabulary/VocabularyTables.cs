using System.Globalization;
using System.Reflection;

namespace HealthNotes.Grammar.Vocabulary;

/// <summary>Turns the embedded tables into words. One method a table.</summary>
internal static class VocabularyTables
{
    public static List<LineWord> LineWords() => [.. Rows("words.tsv", row => new LineWord(
        row["word"], Named<WordKind>(row, "kind"), row.Several("synonyms"), row["species"], (int)row.Number("order")!,
        [.. row["takes"].Split(' ').Select(Slot)], row["definition"], row["source"],
        row["name"] is { Length: > 0 } name ? name : char.ToUpperInvariant(row["word"][0]) + row["word"][1..].Replace('-', ' '),
        [.. row.Several("scale").Select(scale => int.Parse(scale, CultureInfo.InvariantCulture))])).Select((word, index) => word with { Index = index })];

    public static List<(string Part, DescribingWord Word)> DescribingWords()
    {
        var words = new Dictionary<(string Part, string Word), (List<string> Synonyms, List<Meaning> Meanings)>();
        foreach (TsvRow row in Load("describing.tsv").Rows)
        {
            string[] synonyms = row.Several("synonyms");
            foreach (string part in row.Several("part"))
            {
                if (!words.TryGetValue((part, row["word"]), out (List<string> Synonyms, List<Meaning> Meanings) word))
                {
                    words.Add((part, row["word"]), word = ([], []));
                }

                word.Synonyms.AddRange(word.Synonyms.Count == 0 ? synonyms : synonyms.Except(word.Synonyms));
                bool neutral = row["level"] == "neutral";
                word.Meanings.Add(new Meaning(row["species"], neutral ? Level.Expected : Named<Level>(row, "level"), row["definition"], row["source"]) { IsNeutral = neutral });
            }
        }

        return [.. words.Select(w => (w.Key.Part, new DescribingWord(w.Key.Word, w.Key.Part, w.Value.Synonyms, w.Value.Meanings)))];
    }

    public static List<Region> Regions() => Rows("sites.tsv", row => new Region(
        row["region"], row.Several("synonyms"), row["species"], Named<SideRule>(row, "sides"), row.Several("roles"),
        row["surface"], (int)row.Number("x")!, (int)row.Number("y")!, row["definition"], row["source"]));

    public static List<Unit> Units() => Rows("units.tsv", row => new Unit(
        row["unit"], row.Several("synonyms"), Named<Quantity>(row, "quantity"), (decimal)row.Number("factor")!,
        (decimal)row.Number("divisor")!, (decimal)row.Number("offset")!, row["canonical"], row["source"], row.Number("bare-from"), row.Number("bare-to")));

    public static List<ComparisonObject> Objects() => Rows("objects.tsv", row => new ComparisonObject(
        row["object"], row.Several("synonyms"), (decimal)row.Number("low-mm")!, (decimal)row.Number("high-mm")!,
        (decimal)row.Number("typical-mm")!, row["definition"], row["source"]));

    public static List<Abbreviation> Abbreviations() => Rows("abbreviations.tsv", row => new Abbreviation(
        row["abbreviation"], row["stands-for"], row["where"], row["definition"], row["source"]));

    public static List<StateWord> States() => Rows("states.tsv", row => new StateWord(
        row["word"], row.Several("synonyms"), Named<StateKind>(row, "kind"), row.Several("for"), row["comparable"],
        row["definition"], row["source"]));

    public static List<FixedWord> FixedWords() => Rows("fixed-words.tsv", row => new FixedWord(
        row["word"], row.Several("synonyms"), row["kind"], row["definition"]));

    public static List<ToothSet> Teeth() => Rows("teeth.tsv", row => new ToothSet(
        Named<Species>(row, "species"), row["set"], row.Several("numbers").SelectMany(Numbers).ToHashSet(), row["source"]));

    public static List<LeadWord> Leads() => Rows("leads.tsv", row => row.Several("phrase") is not [var first, .. var others] ? throw new InvalidDataException($"row {row.Line}: no phrase") : new LeadWord(
        first, others,
        [.. row["stands-for"].Split(" ; ").Select(line => line.Split(' ')).Select(words => new LeadLine(words[0], [.. words[1..]]))],
        Named<LeadMeans>(row, "means"), row["definition"], row["source"]));

    public static List<ModifierWord> Modifiers() => [.. Load("modifiers.tsv").Rows.SelectMany(row => row.Several("phrase").Select(phrase =>
        new ModifierWord(phrase, [], Named<ModifierKind>(row, "kind"), row["definition"], row["source"])))];

    public static List<MedicineName> Medicines() => Rows("medicines.tsv", row => new MedicineName(
        row["medicine"], row.Several("synonyms"), row["group"], row["source"]));

    private static IEnumerable<int> Numbers(string fromTo)
    {
        string[] ends = fromTo.Split('-');
        int from = int.Parse(ends[0], CultureInfo.InvariantCulture);
        return Enumerable.Range(from, int.Parse(ends[1], CultureInfo.InvariantCulture) - from + 1);
    }

    private static Slot Slot(string text)
    {
        bool needed = text.EndsWith('!');
        string name = needed ? text[..^1] : text;
        return Enum.TryParse(name, ignoreCase: true, out SlotKind kind)
            ? new Slot(kind, needed)
            : throw new InvalidDataException($"words.tsv: {name} is not a slot");
    }

    private static T Named<T>(TsvRow row, string column)
        where T : struct, Enum
    {
        string name = row[column].Replace("-", "", StringComparison.Ordinal);
        return Enum.TryParse(name, ignoreCase: true, out T value)
            ? value
            : throw new InvalidDataException($"row {row.Line}: {row[column]} is not a {typeof(T).Name}");
    }

    private static List<T> Rows<T>(string table, Func<TsvRow, T> read) => [.. Load(table).Rows.Select(read)];

    private static TsvTable Load(string table) => TsvTable.Load(Assembly.GetExecutingAssembly(), table);
}
