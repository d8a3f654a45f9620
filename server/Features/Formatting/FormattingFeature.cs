using System.Collections.Immutable;
using HealthNotes.Features.Documents;

namespace HealthNotes.Features.Formatting;

/// <summary>Brings a note into its tidy form with the smallest edits: at most one a line, none where nothing changes.</summary>
public static class FormattingFeature
{
    /// <summary>The edits that make the whole note tidy.</summary>
    public static ImmutableArray<DocumentEdit> Whole(Document document) => [];

    /// <summary>Those of the lines that a range holds characters of.</summary>
    public static ImmutableArray<DocumentEdit> InRange(Document document, PlaceRange range) => [];

    /// <summary>What follows from a character just typed before <paramref name="place"/>; only an Enter does anything.</summary>
    public static ImmutableArray<DocumentEdit> OnType(Document document, Place place, string typed) => [];
}
