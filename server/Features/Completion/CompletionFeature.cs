using HealthNotes.Features.Documents;

namespace HealthNotes.Features.Completion;

/// <summary>What may be written where the cursor stands.</summary>
public static class CompletionFeature
{
    /// <summary>The most offers that one list holds.</summary>
    public const int MostItems = 200;

    /// <summary>What may be written at <paramref name="place"/>.</summary>
    public static CompletionList At(Document document, Place place, FeatureSettings settings) => CompletionList.Nothing;

    /// <summary>The explanation, in Markdown, of the offer with this key; null for a key that is not known. It needs no document.</summary>
    public static string? Resolve(string key) => null;
}
