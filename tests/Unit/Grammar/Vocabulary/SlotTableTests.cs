using System.Text.RegularExpressions;
using HealthNotes.Grammar.Formatting;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Slots;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Tests.Support;

namespace HealthNotes.Tests.Grammar.Vocabulary;

/// <summary>
/// A new form of value touches three places: the word's row in <c>words.tsv</c>, the slot in <c>grammar/Slots</c>, and its printing in
/// <c>ValuePrinter</c>. These tests fail where a fourth place grows.
/// </summary>
public class SlotTableTests
{
    /// <summary>Outside <c>grammar/Slots</c> a file may ask for a slot or two by name; one that asks for more is a second table.</summary>
    private const int MostNamed = 12;

    /// <summary>The readers of observations, which put items together, and what completion offers.</summary>
    private static readonly string[] MayNameMore = ["grammar/Parsing/ItemReader.cs", "grammar/Parsing/HeadMeaning.cs", "grammar/Parsing/ItemBinder.cs", "grammar/Parsing/NextHead.cs", "server/Features/Completion/Offers/SlotOffers.cs", "server/Features/Completion/Offers/SiteOffers.cs"];

    /// <summary>A line for each form of value.</summary>
    private static readonly string[] Lines =
    [
        "hr 18/15s", "hr 72", "temp 38.6C", "weight 83.2-55.9kg", "lump L-flank 12x9mm", "lump L-flank like pea", "bcs 5/9", "ate 3/4", "bp 150/90",
        "lab creatinine 110umol/L", "usual rr 16-24", "call-if rr >32",
    ];

    [Fact]
    public void Every_slot_kind_has_a_row() => Assert.All(Enum.GetValues<SlotKind>(), kind => Assert.NotNull(SlotTable.Hint(kind, NoteVocabulary.Default.LineWords.Find("gums")!)));

    [Fact]
    public void Every_slot_that_a_line_needs_says_what_to_write() => None.Wrong(
        from word in NoteVocabulary.Default.LineWords.Terms
        from slot in word.Takes
        where slot.Needed && SlotTable.Hint(slot.Kind, word).Length == 0
        select $"{word.Word}: {slot.Kind}");

    [Fact]
    public void Every_value_is_printed_and_read_back()
    {
        IEnumerable<NoteValue> values = Lines.Select(line => Marked.Item(line).Value!);
        Assert.Equal(
            typeof(NoteValue).Assembly.GetTypes().Where(type => type.IsSubclassOf(typeof(NoteValue))).Select(type => type.Name).Order(StringComparer.Ordinal),
            values.Select(value => value.GetType().Name).Distinct().Order(StringComparer.Ordinal));
        Assert.All(Lines, line => Assert.Equal(line, ItemPrinter.Print(Marked.Item(line))));
        Assert.All(values, value => Assert.NotEmpty(ValuePrinter.Print(value)));
    }

    [Fact]
    public void There_is_one_table_of_slots()
    {
        string top = Repository.PathOf(".");
        None.Wrong(
            from folder in (string[])["grammar", "server"]
            from file in Directory.EnumerateFiles(Path.Combine(top, folder), "*.cs", SearchOption.AllDirectories)
            let name = Path.GetRelativePath(top, file).Replace('\\', '/')
            where !name.StartsWith("grammar/Slots/", StringComparison.Ordinal) && !name.Contains("/obj/", StringComparison.Ordinal) && !MayNameMore.Contains(name)
            let count = Regex.Count(File.ReadAllText(file), @"\bSlotKind\.")
            where count > MostNamed
            select $"{name} names {count} slots");
    }
}
