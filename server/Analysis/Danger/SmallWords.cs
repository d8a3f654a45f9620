using System.Collections.Frozen;
using System.Reflection;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Analysis.Danger;

/// <summary>The words of <c>small-words.tsv</c>.</summary>
internal static class SmallWords
{
    private static readonly Lazy<FrozenDictionary<string, FrozenSet<string>>> Rows = new(() =>
        TsvTable.Load(Assembly.GetExecutingAssembly(), "small-words.tsv").Rows.ToFrozenDictionary(row => row["role"], row => row.Several("words").ToFrozenSet()));

    /// <summary>The words of one role.</summary>
    public static FrozenSet<string> Of(string role) => Rows.Value[role];
}
