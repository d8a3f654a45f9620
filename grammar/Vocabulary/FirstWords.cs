using System.Collections.Immutable;
using System.Runtime.InteropServices;

namespace HealthNotes.Grammar.Vocabulary;

/// <summary>
/// Says of a word in which scopes a spelling starts with it, a bit a scope. One look-up a word spares one in each scope, which is
/// most of the time that reading takes.
/// </summary>
internal sealed class FirstWords
{
    private readonly Dictionary<string, ulong> words = new(StringComparer.OrdinalIgnoreCase);
    private readonly Dictionary<string, ulong>.AlternateLookup<ReadOnlySpan<char>> bySpan;
    private ImmutableArray<(string Word, ulong Bits)> aliases = [];
    private const int LastBit = 62;
    private const ulong Asked = 1UL << 63;
    private int bits;

    /// <summary>No word yet.</summary>
    public FirstWords() => bySpan = words.GetAlternateLookup<ReadOnlySpan<char>>();

    /// <summary>A scope with a bit of its own.</summary>
    public Scope<T> Add<T>(IEnumerable<T> terms)
        where T : class, ITerm => Add(terms, NextBit());

    /// <summary>A scope that shares a bit with others.</summary>
    public Scope<T> Add<T>(IEnumerable<T> terms, ulong bit, Scope<T>? shared = null)
        where T : class, ITerm
    {
        var scope = new Scope<T>(terms, bit, shared);
        foreach (string spelling in scope.Starts)
        {
            if (!spelling.Contains(' '))
            {
                CollectionsMarshal.GetValueRefOrAddDefault(words, spelling, out _) |= bit;
            }
        }

        return scope;
    }

    /// <summary>A bit for a group of scopes. The last scopes share one.</summary>
    public ulong NextBit() => 1UL << (bits < LastBit ? bits++ : LastBit);

    /// <summary>The bits of the scopes in which a spelling is or starts with this word; never 0, so that 0 can say that nobody asked yet.</summary>
    public ulong Of(ReadOnlySpan<char> word)
    {
        ulong bits = Asked | (bySpan.TryGetValue(word, out ulong found) ? found : 0);
        foreach ((string alias, ulong more) in aliases)
        {
            bits |= word.Equals(alias, StringComparison.OrdinalIgnoreCase) ? more : 0;
        }

        return bits;
    }

    /// <summary>The same with a spelling that starts like another word does.</summary>
    public FirstWords With(string alias, string word)
    {
        var copy = (FirstWords)MemberwiseClone();
        copy.aliases = aliases.Add((FirstOf(alias), Of(FirstOf(word))));
        return copy;
    }

    private static string FirstOf(string spelling) => spelling.Split(' ')[0];
}
