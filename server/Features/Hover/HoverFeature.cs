using HealthNotes.Features.Documents;

namespace HealthNotes.Features.Hover;

/// <summary>What a word, value, site or date of a note means. It describes and compares; it never says what to do about it.</summary>
public static class HoverFeature
{
    /// <summary>What is said about a place; null where there is nothing to say.</summary>
    public static HoverText? At(Document document, Place place, FeatureSettings settings) => null;
}
