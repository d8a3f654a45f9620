using System.Collections.Immutable;
using HealthNotes.Features.Documents;

namespace HealthNotes.Features.Symbols;

/// <summary>The outline of a note, and what can be found by name in a folder of notes.</summary>
public static class SymbolFeature
{
    /// <summary>The most symbols that a search gives.</summary>
    public const int MostFound = 200;

    /// <summary>The opening with its facts, then the entries with their lines.</summary>
    public static ImmutableArray<OutlineSymbol> Outline(Document document) => [];

    /// <summary>
    /// The pets, entries, lumps, wounds and medicines whose names hold the letters of <paramref name="query"/> in that order, whatever
    /// their case; the closest first.
    /// </summary>
    public static ImmutableArray<FolderSymbol> InWorkspace(IEnumerable<Document> documents, string query) => [];
}
