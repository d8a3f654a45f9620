using System.Collections.Immutable;

namespace HealthNotes.Features.Tokens;

/// <summary>A change to encoded tokens: from <paramref name="Start"/> on, <paramref name="DeleteCount"/> numbers give way to <paramref name="Data"/>.</summary>
public sealed record TokenEdit(int Start, int DeleteCount, ImmutableArray<int> Data);

/// <summary>What changed between two lists of encoded tokens, five numbers a token.</summary>
public static class TokenDelta
{
    private const int NumbersOfAToken = 5;

    /// <summary>One edit that covers all that differs, in whole tokens; null when nothing does.</summary>
    public static TokenEdit? Between(ReadOnlySpan<int> old, ReadOnlySpan<int> now)
    {
        int before = old.CommonPrefixLength(now);
        if (before == old.Length && before == now.Length)
        {
            return null;
        }

        before -= before % NumbersOfAToken;
        int most = Math.Min(old.Length, now.Length) - before;
        int after = 0;
        while (after < most && old[^(after + 1)] == now[^(after + 1)])
        {
            after++;
        }

        after -= after % NumbersOfAToken;
        return new TokenEdit(before, old.Length - before - after, [.. now[before..(now.Length - after)]]);
    }
}
