using System.Collections.Immutable;
using HealthNotes.Features.Documents;

namespace HealthNotes.Features.Lenses;

/// <summary>How far each check got, what is due, and what is next.</summary>
public static class LensFeature
{
    /// <summary>The lenses of a note, in line order.</summary>
    public static ImmutableArray<LensText> In(Document document, FeatureSettings settings) => [];
}
