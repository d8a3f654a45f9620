using System.Collections.Immutable;
using HealthNotes.Features.Documents;

namespace HealthNotes.Features.Hints;

/// <summary>Computed values behind what was written. Only what is not on the line already.</summary>
public static class HintFeature
{
    /// <summary>The hints of the lines that <paramref name="range"/> touches, in order.</summary>
    public static ImmutableArray<HintText> In(Document document, PlaceRange range, FeatureSettings settings) => [];
}
