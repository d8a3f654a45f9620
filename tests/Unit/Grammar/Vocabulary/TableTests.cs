using System.Text.RegularExpressions;
using HealthNotes.Tests.Support;

namespace HealthNotes.Tests.Grammar.Vocabulary;

/// <summary>The form of the tables: columns, spelling, definitions, sources.</summary>
public partial class TableTests
{
    [Theory]
    [InlineData("abbreviations.tsv", "abbreviation|stands-for|where|definition|source")]
    [InlineData("describing.tsv", "part|word|synonyms|level|species|definition|source")]
    [InlineData("fixed-words.tsv", "word|synonyms|kind|definition")]
    [InlineData("leads.tsv", "phrase|stands-for|means|definition|source")]
    [InlineData("medicines.tsv", "medicine|synonyms|group|source")]
    [InlineData("modifiers.tsv", "phrase|kind|definition|source")]
    [InlineData("objects.tsv", "object|synonyms|low-mm|high-mm|typical-mm|definition|source")]
    [InlineData("sites.tsv", "region|synonyms|species|sides|roles|surface|x|y|definition|source")]
    [InlineData("states.tsv", "word|synonyms|kind|for|comparable|definition|source")]
    [InlineData("teeth.tsv", "species|set|numbers|source")]
    [InlineData("units.tsv", "unit|synonyms|quantity|factor|divisor|offset|canonical|source|bare-from|bare-to")]
    [InlineData("words.tsv", "word|kind|synonyms|species|order|takes|definition|source|name|scale")]
    public void Has_its_columns_and_rows(string table, string columns)
    {
        Assert.Equal(columns.Split('|'), Tables.Load(table).Columns);
        Assert.NotEmpty(Tables.Rows(table));
    }

    [Fact]
    public void Every_table_in_the_folder_is_checked_here() => Assert.Equal(
        Tables.All,
        Directory.EnumerateFiles(Repository.PathOf("grammar/Vocabulary/Data"), "*.tsv").Select(Path.GetFileName).Order(StringComparer.Ordinal));

    [Theory]
    [InlineData("describing.tsv", "word")]
    [InlineData("objects.tsv", "object")]
    [InlineData("sites.tsv", "region")]
    [InlineData("states.tsv", "word")]
    [InlineData("words.tsv", "word")]
    [InlineData("medicines.tsv", "medicine")]
    public void Canonical_words_are_lower_case_letters_digits_and_hyphens(string table, string column) =>
        None.Wrong(Tables.Rows(table).Select(row => row[column]).Where(word => !Canonical.IsMatch(word)));

    [Fact]
    public void Fixed_words_are_canonical_too_but_for_sides_and_numbers() =>
        None.Wrong(Tables.Rows("fixed-words.tsv").Where(row => row["kind"] is not ("side" or "number" or "times" or "daily" or "ahead" or "beside-eaten" or "every-nth")).Select(row => row["word"]).Where(word => !Canonical.IsMatch(word)));

    [Fact]
    public void Numbers_in_words_stand_for_figures() => None.Wrong(
        Tables.Rows("fixed-words.tsv").Where(row => row["kind"] is "number" or "times" or "daily" or "ahead").Select(row => row["word"]).Where(word => !Figures.IsMatch(word)));

    [Fact]
    public void Abbreviations_are_capitals() =>
        None.Wrong(Tables.Rows("abbreviations.tsv").Select(row => row["abbreviation"]).Where(word => !Capitals.IsMatch(word)));

    [Theory]
    [InlineData("describing.tsv")]
    [InlineData("objects.tsv")]
    [InlineData("sites.tsv")]
    [InlineData("states.tsv")]
    [InlineData("words.tsv")]
    [InlineData("fixed-words.tsv")]
    [InlineData("medicines.tsv")]
    public void Synonyms_are_lower_case_with_single_blanks_and_at_most_four_words(string table) => None.Wrong(
        Tables.Rows(table).SelectMany(row => row.Several("synonyms"))
            .Where(s => s.Length == 0 || s.Any(char.IsAsciiLetterUpper) || s != s.Trim() || s.Contains("  ", StringComparison.Ordinal) || s.Split(' ').Length > 4));

    [Theory]
    [InlineData("abbreviations.tsv")]
    [InlineData("describing.tsv")]
    [InlineData("fixed-words.tsv")]
    [InlineData("leads.tsv")]
    [InlineData("modifiers.tsv")]
    [InlineData("objects.tsv")]
    [InlineData("sites.tsv")]
    [InlineData("states.tsv")]
    [InlineData("words.tsv")]
    public void Every_row_has_a_definition_in_one_plain_line(string table) => None.Wrong(
        Tables.Rows(table).Where(row => row["definition"].Length is < 3 or > 110 || row["definition"].EndsWith('.')).Select(row => $"{row.Line}: {row["definition"]}"));

    [Theory]
    [InlineData("abbreviations.tsv")]
    [InlineData("describing.tsv")]
    [InlineData("leads.tsv")]
    [InlineData("medicines.tsv")]
    [InlineData("modifiers.tsv")]
    [InlineData("objects.tsv")]
    [InlineData("sites.tsv")]
    [InlineData("states.tsv")]
    [InlineData("teeth.tsv")]
    public void Every_row_has_a_source(string table) => None.Wrong(Tables.Rows(table).Where(row => row["source"].Length == 0).Select(row => row.Line));

    [Fact]
    public void Every_unit_of_a_physical_quantity_has_a_source() =>
        None.Wrong(Tables.Rows("units.tsv").Where(row => !row["quantity"].StartsWith("dose", StringComparison.Ordinal) && row["source"].Length == 0).Select(row => row["unit"]));

    [Theory]
    [InlineData("describing.tsv", "level", "expected|neutral|watch|call|urgent")]
    [InlineData("describing.tsv", "species", "both|dog|cat|male-cat")]
    [InlineData("sites.tsv", "species", "both|dog|cat")]
    [InlineData("sites.tsv", "sides", "pair|mid|any|four|front|hind")]
    [InlineData("sites.tsv", "surface", "side|top|under")]
    [InlineData("states.tsv", "kind", "state|place|route|food|when")]
    [InlineData("words.tsv", "kind", "fact|vital|exam|scan|care|act|task|picture|skip|rest")]
    [InlineData("words.tsv", "species", "both|dog|cat")]
    [InlineData("fixed-words.tsv", "kind", "found-by-vet|from-now|to-come|every-nth|after-all|breed-name|self|only-then|present-again|counted|lab-words|before-score|joins-same|rest-of-meal|beside-eaten|half-day|noon|examination|not-looked|species|sex|neuter|units|side|portion|mcs|entry|ok|dose|number|times|daily|day-part|condition|needed|in-stock|hoped-for|less|circumstance|limb|everyday|dose-event|dose-refused|day|bound|taper|remains|meal|mealtime|not-eating|absent|not-done|next|ordered|compares|ahead|preposition|said|where|no-breed|dose-change|exception|twist|ordinary|repeated|other-animal|no-dose|other-day|stitch-off|part-of-doses|together|season|advice")]
    [InlineData("leads.tsv", "means", "plain|sign|none")]
    [InlineData("modifiers.tsv", "kind", "absent|absent-after|ended|ended-after|filler|joins-or|joins-and|aside")]
    public void Holds_only_known_values(string table, string column, string known) =>
        None.Wrong(Tables.Rows(table).Select(row => row[column]).Except(known.Split('|')));

    [Fact]
    public void A_word_keeps_its_species_apart_or_together() => None.Wrong(
        Tables.Rows("describing.tsv")
            .SelectMany(row => row.Several("part").Select(part => (Part: part, Word: row["word"], Species: row["species"])))
            .GroupBy(row => (row.Part, row.Word))
            .Where(group => group.Count() != group.Select(row => row.Species).Distinct().Count() || (group.Count() > 1 && group.Any(row => row.Species == "both")))
            .Select(group => group.Key));

    [Fact]
    public void Rows_of_one_word_share_their_synonyms() => None.Wrong(
        Tables.Rows("describing.tsv")
            .SelectMany(row => row.Several("part").Select(part => (Part: part, Word: row["word"], Synonyms: string.Join('|', row.Several("synonyms")))))
            .GroupBy(row => (row.Part, row.Word))
            .Where(group => group.Select(row => row.Synonyms).Distinct().Count() > 1)
            .Select(group => group.Key));

    [GeneratedRegex("^[a-z][a-z0-9-]*$")]
    private static partial Regex Canonical { get; }

    [GeneratedRegex("^[0-9]+(/[0-9]+|h|d|w|mo|y)?$")]
    private static partial Regex Figures { get; }

    [GeneratedRegex("^[A-Z]+(/[A-Z]+)*$")]
    private static partial Regex Capitals { get; }
}
