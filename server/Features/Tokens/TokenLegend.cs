using System.Collections.Immutable;

namespace HealthNotes.Features.Tokens;

/// <summary>The names under which token types and modifiers are announced; types are the standard ones, so that every theme colours them.</summary>
public static class TokenLegend
{
    /// <summary>The types, by the number of <see cref="TokenType"/>.</summary>
    public static ImmutableArray<string> Types { get; } =
        ["comment", "keyword", "type", "property", "decorator", "number", "parameter", "enumMember", "operator", "variable", "string"];

    /// <summary>The modifiers, by the bit of <see cref="TokenModifiers"/>.</summary>
    public static ImmutableArray<string> Modifiers { get; } =
        ["declaration", "watch", "call", "urgent", "emphasis", "strong", "code", "link"];
}
