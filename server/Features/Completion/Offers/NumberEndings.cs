using System.Reflection;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Features.Completion.Offers;

/// <summary>A row of <c>number-endings.tsv</c>.</summary>
internal sealed record NumberEnding(string Word, string Ending, string Meaning, string Source);

/// <summary>Counting times and scales that are written behind a bare number.</summary>
internal static class NumberEndings
{
    private static readonly Lazy<ILookup<string, NumberEnding>> Table = new(() => TsvTable
        .Load(Assembly.GetExecutingAssembly(), "number-endings.tsv").Rows
        .Select(row => new NumberEnding(row["word"], row["ending"], row["meaning"], row["source"]))
        .ToLookup(ending => ending.Word));

    public static IEnumerable<NumberEnding> For(string word) => Table.Value[word];

    public static IEnumerable<NumberEnding> All => Table.Value.SelectMany(group => group);
}
