using HealthNotes.Features.Completion;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Record.Ranges;
using HealthNotes.Tests.Support;

namespace HealthNotes.Tests.Architecture;

/// <summary>
/// What the source column says where it names no publication. A reader must be able to tell a clinical rule of thumb, which a vet
/// may dispute, from what makes no claim about animals at all.
/// </summary>
public class SourceTests
{
    /// <summary>A claim about animals, without a publication.</summary>
    private const string RuleOfThumb = "common practice, no source";

    /// <summary>What belongs together, how many readings, how long a reminder: how the program works, no claim about animals.</summary>
    private const string OwnChoice = "this project's own choice";

    /// <summary>What an everyday word or phrase means: any reader of English can check it.</summary>
    private const string English = "ordinary English";

    private static IEnumerable<(string Table, TsvRow Row)> Rows =>
        from assembly in new[] { typeof(NoteVocabulary).Assembly, typeof(ClinicalTables).Assembly, typeof(CompletionFeature).Assembly }
        from table in assembly.GetManifestResourceNames().Where(name => name.EndsWith(".tsv", StringComparison.Ordinal))
        let read = TsvTable.Load(assembly, table)
        where read.Columns.Contains("source")
        from row in read.Rows
        select (table, row);

    [Theory]
    [InlineData("common practice", RuleOfThumb)]
    [InlineData("no source", RuleOfThumb)]
    [InlineData("this project", OwnChoice)]
    [InlineData("own choice", OwnChoice)]
    [InlineData("ordinary", English)]
    public void Without_a_publication_the_column_says_one_of_three_things_exactly(string part, string form) => None.Wrong(
        Rows.Where(one => one.Row["source"].Contains(part, StringComparison.OrdinalIgnoreCase) && one.Row["source"] != form).Select(Place));

    [Theory]
    [InlineData("problems.tsv")]
    [InlineData("clinic-words.tsv")]
    [InlineData("result-words.tsv")]
    [InlineData("small-words.tsv")]
    [InlineData("number-endings.tsv")]
    [InlineData("modifiers.tsv")]
    [InlineData("states.tsv")]
    public void A_table_of_words_calls_nothing_common_practice(string table) =>
        None.Wrong(Rows.Where(one => one.Table == table && one.Row["source"] == RuleOfThumb).Select(Place));

    [Theory]
    [InlineData("bounds.tsv")]
    [InlineData("normal-ranges.tsv")]
    [InlineData("danger-words.tsv")]
    [InlineData("phone-now.tsv")]
    [InlineData("known-signs.tsv")]
    [InlineData("human-painkillers.tsv")]
    [InlineData("life-stages.tsv")]
    [InlineData("usual-values.tsv")]
    [InlineData("measuring-errors.tsv")]
    [InlineData("check-items.tsv")]
    [InlineData("how-to-take.tsv")]
    [InlineData("cadence.tsv")]
    public void A_table_about_animals_is_never_only_our_choice(string table) =>
        None.Wrong(Rows.Where(one => one.Table == table && one.Row["source"] is OwnChoice or English).Select(Place));

    [Fact]
    public void What_raises_a_level_is_more_than_an_everyday_word() => None.Wrong(
        Rows.Where(one => one.Table == "describing.tsv" && one.Row["level"] is "watch" or "call" or "urgent" && one.Row["source"] is OwnChoice or English).Select(Place));

    [Fact]
    public void No_word_of_the_notes_rests_on_memory() => None.Wrong(
        Rows.Where(one => one.Row["source"].Contains("from memory", StringComparison.Ordinal)).Select(one => one.Table)
            .Intersect(typeof(NoteVocabulary).Assembly.GetManifestResourceNames()));

    private static string Place((string Table, TsvRow Row) one) => $"{one.Table} line {one.Row.Line}: {one.Row["source"]}";
}
