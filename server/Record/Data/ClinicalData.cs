using System.Reflection;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Record.Data;

/// <summary>The tables of this folder, as they are built in.</summary>
public static class ClinicalData
{
    /// <summary>The rows of a table, by its file name.</summary>
    /// <exception cref="InvalidDataException">The table cannot be read.</exception>
    public static IReadOnlyList<TsvRow> Rows(string table) => TsvTable.Load(Assembly.GetExecutingAssembly(), table).Rows;
}
