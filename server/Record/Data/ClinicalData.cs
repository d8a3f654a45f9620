using System.Reflection;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Record.Data;

/// <summary>The tables of this folder, as they are built in.</summary>
public static class ClinicalData
{
    /// <summary>The rows of a table, by its file name.</summary>
    /// <exception cref="InvalidDataException">The table cannot be read.</exception>
    public static IReadOnlyList<TsvRow> Rows(string table) => TsvTable.Load(Assembly.GetExecutingAssembly(), table).Rows;

    /// <summary>A text for one animal: of <c>{a|b|c}</c> the first for a dog, the second for a cat, the third where the species is not known.</summary>
    public static string ForSpecies(string text, Species species)
    {
        int open = text.IndexOf('{', StringComparison.Ordinal);
        int end = open < 0 ? -1 : text.IndexOf('}', open);
        return end < 0 ? text : text[..open] + text[(open + 1)..end].Split('|')[species switch { Species.Dog => 0, Species.Cat => 1, _ => 2 }] + ForSpecies(text[(end + 1)..], species);
    }
}
