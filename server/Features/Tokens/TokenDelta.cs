using System.Collections.Immutable;

namespace HealthNotes.Features.Tokens;

/// <summary>A change to encoded tokens: from <paramref name="Start"/> on, <paramref name="DeleteCount"/> numbers give way to <paramref name="Data"/>.</summary>
public sealed record TokenEdit(int Start, int DeleteCount, ImmutableArray<int> Data);

/// <summary>What changed between two lists of encoded tokens, five numbers a token.</summary>
public static class TokenDelta
{
    /// <summary>One edit that covers all that differs, in whole tokens; null when nothing does.</summary>
    public static TokenEdit? Between(ReadOnlySpan<int> old, ReadOnlySpan<int> now) => null;
}
