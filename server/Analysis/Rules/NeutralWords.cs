using System.Collections.Frozen;
using System.Reflection;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Analysis.Rules;

/// <summary>The expected words of <c>neutral-words.tsv</c>, whose absence says nothing.</summary>
internal static class NeutralWords
{
    private static readonly Lazy<FrozenSet<(string Part, string Word)>> Rows = new(() =>
        TsvTable.Load(Assembly.GetExecutingAssembly(), "neutral-words.tsv").Rows.SelectMany(row => row.Several("words").Select(word => (row["part"], word))).ToFrozenSet());

    /// <summary>True when it says nothing that <paramref name="part"/> is not so.</summary>
    public static bool Contains(string part, string word) => Rows.Value.Contains((part, word));
}
