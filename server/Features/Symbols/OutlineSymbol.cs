using System.Collections.Immutable;
using HealthNotes.Features.Documents;

namespace HealthNotes.Features.Symbols;

/// <summary>What an entry of the outline stands for.</summary>
public enum SymbolSort
{
    /// <summary>The pet, with the facts of the opening.</summary>
    Pet,

    /// <summary>A fact about the pet.</summary>
    Fact,

    /// <summary>A medicine and its plan.</summary>
    Medicine,

    /// <summary>A dated entry.</summary>
    Entry,

    /// <summary>A value.</summary>
    Reading,

    /// <summary>A part looked at.</summary>
    Exam,

    /// <summary>A lump, a wound, a sore place.</summary>
    Finding,

    /// <summary>Home care: a dose, a meal, a walk.</summary>
    Care,

    /// <summary>Something to ask or to do.</summary>
    Task,

    /// <summary>A picture.</summary>
    Photo,

    /// <summary>Anything else: something skipped, <c>else ok</c>.</summary>
    Other,
}

/// <summary>A line of the outline.</summary>
/// <param name="Name">Its name; never empty.</param>
/// <param name="Detail">What is shown beside the name, or null.</param>
/// <param name="Sort">What it stands for.</param>
/// <param name="Range">All that belongs to it; the ranges of its children lie inside.</param>
/// <param name="Selection">The characters that name it; inside <paramref name="Range"/>.</param>
/// <param name="Children">What it holds, in line order.</param>
public sealed record OutlineSymbol(string Name, string? Detail, SymbolSort Sort, PlaceRange Range, PlaceRange Selection, ImmutableArray<OutlineSymbol> Children);

/// <summary>Something found by its name in a folder of notes.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Container">The pet whose note it is in.</param>
/// <param name="Sort">What it is.</param>
/// <param name="Uri">The document it is in.</param>
/// <param name="Range">Where.</param>
public sealed record FolderSymbol(string Name, string? Container, SymbolSort Sort, string Uri, PlaceRange Range);
