using System.Runtime.InteropServices;

namespace HealthNotes.Grammar.Vocabulary;

/// <summary>The words that are understood in one place of a line, found by any spelling, in any case.</summary>
/// <typeparam name="T">The kind of word.</typeparam>
public sealed class Scope<T>
    where T : class, ITerm
{
    private readonly Dictionary<string, Spelling> spellings = new(StringComparer.OrdinalIgnoreCase);
    private readonly Dictionary<string, Spelling>.AlternateLookup<ReadOnlySpan<char>> bySpan;
    private readonly Scope<T>? shared;

    /// <summary>Collects the spellings of <paramref name="terms"/>; where two terms share one, the first keeps it.</summary>
    /// <param name="terms">The words.</param>
    /// <param name="bit">The bit that stands for this scope, or for a group of scopes, in <see cref="FirstWords"/>; all bits where it has none.</param>
    /// <param name="shared">Words that are understood here as in other places, where no own word is spelled so; or null.</param>
    public Scope(IEnumerable<T> terms, ulong bit = ulong.MaxValue, Scope<T>? shared = null)
    {
        Bit = bit;
        this.shared = shared;
        T[] all = [.. terms];
        spellings.EnsureCapacity(all.Sum(term => 1 + term.Synonyms.Count));
        List<(string Spelling, T Term)> apostrophes = [];
        foreach (T term in all)
        {
            foreach (string spelling in term.Synonyms.Prepend(term.Word))
            {
                Add(spelling, term);
                if (spelling.Contains('\''))
                {
                    apostrophes.Add((spelling, term));
                }
            }
        }

        foreach ((string spelling, T term) in apostrophes)
        {
            // what a phone's keyboard makes of it, and what haste does
            Add(spelling.Replace('\'', '’'), term);
            Add(spelling.Replace("n't", "nt", StringComparison.Ordinal), term);
        }

        bySpan = spellings.GetAlternateLookup<ReadOnlySpan<char>>();
    }

    private Scope(Scope<T> of, string alias, T term)
        : this([], of.Bit, of.shared)
    {
        foreach ((string spelling, Spelling known) in of.spellings)
        {
            spellings.Add(spelling, known);
        }

        Add(alias, term);
    }

    /// <summary>The scope with another spelling of a word that it has; the same scope where it lacks the word or has that spelling.</summary>
    internal Scope<T> With(string alias, string word) => Find(alias) is null && Find(word) is { } term ? new Scope<T>(this, alias, term) : this;

    /// <summary>The bit that is set for each word that a spelling of this scope starts with.</summary>
    internal ulong Bit { get; }

    /// <summary>Every word that an own spelling starts with.</summary>
    internal IEnumerable<string> Starts => spellings.Keys;

    /// <summary>Every spelling that is understood here, those of shared words last.</summary>
    public IEnumerable<string> Spellings => Known.Select(pair => pair.Key);

    /// <summary>Every word once, in table order, shared words last.</summary>
    public IEnumerable<T> Terms => Known.Select(pair => pair.Value.Term!).Distinct();

    private IEnumerable<KeyValuePair<string, Spelling>> Known
    {
        get
        {
            IEnumerable<KeyValuePair<string, Spelling>> own = spellings.Where(pair => pair.Value.Term is not null);
            return shared is null ? own : own.Concat(shared.Known.Where(pair => spellings.GetValueOrDefault(pair.Key).Term is null));
        }
    }

    /// <summary>The word spelled so, in any case, or null.</summary>
    public T? Find(ReadOnlySpan<char> spelling) => Find(spelling, out _);

    /// <summary>The word spelled so, or null; and the most words in a spelling that starts with this one.</summary>
    public T? Find(ReadOnlySpan<char> spelling, out int longestPhrase)
    {
        bySpan.TryGetValue(spelling, out Spelling found);
        longestPhrase = Math.Max(1, found.LongestPhrase);
        if (shared is null)
        {
            return found.Term;
        }

        T? other = shared.Find(spelling, out int longest);
        longestPhrase = Math.Max(longestPhrase, longest);
        return found.Term ?? other;
    }

    /// <summary>True when no spelling of more than one word starts with this word, and it is none itself.</summary>
    public bool IsAlone(ReadOnlySpan<char> word) => !bySpan.ContainsKey(word) && shared?.IsAlone(word) != false;

    private void Add(string spelling, T term)
    {
        ref Spelling known = ref CollectionsMarshal.GetValueRefOrAddDefault(spellings, spelling, out _);
        if (known.Term is not null)
        {
            return;
        }

        known = known with { Term = term };
        int blank = spelling.IndexOf(' ', StringComparison.Ordinal);
        if (blank > 0)
        {
            ref Spelling start = ref CollectionsMarshal.GetValueRefOrAddDefault(spellings, spelling[..blank], out _);
            start = start with { LongestPhrase = Math.Max(start.LongestPhrase, spelling.AsSpan().Count(' ') + 1) };
        }
    }

    /// <summary>A spelling's word, if it is one, and the longest phrase it starts; 0 where it starts none.</summary>
    private readonly record struct Spelling(T? Term, int LongestPhrase);
}
