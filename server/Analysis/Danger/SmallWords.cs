using System.Collections.Frozen;
using HealthNotes.Record.Data;

namespace HealthNotes.Analysis.Danger;

/// <summary>The words of <c>small-words.tsv</c>.</summary>
internal static class SmallWords
{
    private static readonly Lazy<FrozenDictionary<string, FrozenSet<string>>> Rows = new(() =>
        ClinicalData.Rows("small-words.tsv").ToFrozenDictionary(row => row["role"], row => row.Several("words").ToFrozenSet()));

    /// <summary>The words of one role.</summary>
    public static FrozenSet<string> Of(string role) => Rows.Value[role];
}
