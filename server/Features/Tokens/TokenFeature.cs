using System.Collections.Immutable;
using HealthNotes.Features.Documents;

namespace HealthNotes.Features.Tokens;

/// <summary>What each stretch of a note is, for colouring. Blanks and what is not understood have no token.</summary>
public static class TokenFeature
{
    /// <summary>All tokens, in order, none over another or over a line's end.</summary>
    public static ImmutableArray<SemanticToken> Full(Document document) => [];

    /// <summary>The tokens of the lines that a range touches.</summary>
    public static ImmutableArray<SemanticToken> InRange(Document document, PlaceRange range) => [];
}
