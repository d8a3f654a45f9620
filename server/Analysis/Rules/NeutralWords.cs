using System.Collections.Frozen;
using HealthNotes.Record.Data;

namespace HealthNotes.Analysis.Rules;

/// <summary>The expected words of <c>neutral-words.tsv</c>, whose absence says nothing.</summary>
internal static class NeutralWords
{
    private static readonly Lazy<FrozenSet<(string Part, string Word)>> Rows = new(() =>
        ClinicalData.Rows("neutral-words.tsv").SelectMany(row => row.Several("words").Select(word => (row["part"], word))).ToFrozenSet());

    /// <summary>True when it says nothing that <paramref name="part"/> is not so.</summary>
    public static bool Contains(string part, string word) => Rows.Value.Contains((part, word));
}
