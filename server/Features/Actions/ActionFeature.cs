using System.Collections.Immutable;
using HealthNotes.Features.Documents;

namespace HealthNotes.Features.Actions;

/// <summary>Quick fixes and rewrites for a stretch of a note.</summary>
public static class ActionFeature
{
    /// <summary>What can be done at <paramref name="range"/>, the likeliest first.</summary>
    public static ImmutableArray<ActionOffer> In(Document document, PlaceRange range, FeatureSettings settings) => [];

    /// <summary>The edits of an offer that left them to be worked out; empty when the key is not known or there is nothing left to do.</summary>
    public static ImmutableArray<DocumentEdit> Resolve(Document document, string key) => [];

    /// <summary>Everything that can be mended in one way only; the edits never touch one another. Doing it again changes nothing.</summary>
    public static ImmutableArray<DocumentEdit> FixAll(Document document) => [];
}
