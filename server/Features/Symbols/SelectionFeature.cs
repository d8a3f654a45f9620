using System.Collections.Immutable;
using HealthNotes.Features.Documents;

namespace HealthNotes.Features.Symbols;

/// <summary>Grows a selection by what belongs together.</summary>
public static class SelectionFeature
{
    /// <summary>The ranges around a place, the smallest first, each strictly inside the next; the last is the whole document.</summary>
    public static ImmutableArray<PlaceRange> Around(Document document, Place place) => [];
}
