using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Tests.Grammar.Vocabulary;

/// <summary>The vocabulary's tables as they stand in their files, before they become words.</summary>
internal static class Tables
{
    public static readonly string[] All =
        ["abbreviations.tsv", "describing.tsv", "fixed-words.tsv", "leads.tsv", "medicines.tsv", "modifiers.tsv", "objects.tsv", "sites.tsv", "states.tsv", "teeth.tsv", "units.tsv", "words.tsv"];

    public static IReadOnlyList<TsvRow> Rows(string table) => Load(table).Rows;

    public static TsvTable Load(string table) => TsvTable.Load(typeof(NoteVocabulary).Assembly, table);

    /// <summary>All spellings of a row: its word and its synonyms.</summary>
    public static IEnumerable<string> Spellings(TsvRow row, string column) => row.Several("synonyms").Prepend(row[column]);

    /// <summary>What is wrong in a list where each spelling, in any case, may stand for one word only.</summary>
    public static IEnumerable<string> Ambiguous(IEnumerable<(string Spelling, string Word)> spellings) => spellings
        .GroupBy(s => s.Spelling, StringComparer.OrdinalIgnoreCase)
        .Where(group => group.Select(s => s.Word).Distinct().Count() > 1)
        .Select(group => $"`{group.Key}` stands for {string.Join(" and ", group.Select(s => s.Word).Distinct())}");
}
