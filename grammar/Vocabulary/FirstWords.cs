using System.Collections.Frozen;

namespace HealthNotes.Grammar.Vocabulary;

/// <summary>
/// Says of a word in which scopes a spelling starts with it, a bit a scope. One look-up a word spares one in each scope, which is
/// most of the time that reading takes.
/// </summary>
internal sealed class FirstWords
{
    private readonly Dictionary<string, ulong> building = new(StringComparer.OrdinalIgnoreCase);
    private FrozenDictionary<string, ulong>.AlternateLookup<ReadOnlySpan<char>> words;
    private const int LastBit = 62;
    private const ulong Asked = 1UL << 63;
    private int bits;

    /// <summary>A scope with a bit of its own.</summary>
    public Scope<T> Add<T>(IEnumerable<T> terms)
        where T : class, ITerm => Add(terms, NextBit());

    /// <summary>A scope that shares a bit with others.</summary>
    public Scope<T> Add<T>(IEnumerable<T> terms, ulong bit)
        where T : class, ITerm
    {
        var scope = new Scope<T>(terms, bit);
        foreach (string spelling in scope.Starts)
        {
            building[spelling] = building.GetValueOrDefault(spelling) | bit;
        }

        return scope;
    }

    /// <summary>A bit for a group of scopes. The last scopes share one.</summary>
    public ulong NextBit() => 1UL << (bits < LastBit ? bits++ : LastBit);

    /// <summary>No scope is added any more.</summary>
    public void Close() => words = building.ToFrozenDictionary(StringComparer.OrdinalIgnoreCase).GetAlternateLookup<ReadOnlySpan<char>>();

    /// <summary>The bits of the scopes in which a spelling is or starts with this word; never 0, so that 0 can say that nobody asked yet.</summary>
    public ulong Of(ReadOnlySpan<char> word) => Asked | (words.TryGetValue(word, out ulong found) ? found : 0);
}
