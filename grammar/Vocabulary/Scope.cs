namespace HealthNotes.Grammar.Vocabulary;

/// <summary>The words that are understood in one place of a line, found by any spelling, in any case.</summary>
/// <typeparam name="T">The kind of word.</typeparam>
public sealed class Scope<T>
    where T : class, ITerm
{
    private readonly Dictionary<string, Spelling> spellings = new(StringComparer.OrdinalIgnoreCase);
    private readonly Dictionary<string, Spelling>.AlternateLookup<ReadOnlySpan<char>> bySpan;

    /// <summary>Collects the spellings of <paramref name="terms"/>; where two terms share one, the first keeps it.</summary>
    /// <param name="terms">The words.</param>
    /// <param name="bit">The bit that stands for this scope, or for a group of scopes, in <see cref="FirstWords"/>; all bits where it has none.</param>
    public Scope(IEnumerable<T> terms, ulong bit = ulong.MaxValue)
    {
        Bit = bit;
        foreach (T term in terms)
        {
            Add(term.Word, term);
            foreach (string synonym in term.Synonyms)
            {
                Add(synonym, term);
            }
        }

        foreach ((string spelling, T term) in terms.SelectMany(term => term.Synonyms.Prepend(term.Word).Where(synonym => synonym.Contains('\'')).Select(synonym => (synonym, term))))
        {
            // what a phone's keyboard makes of it, and what haste does
            Add(spelling.Replace('\'', '’'), term);
            Add(spelling.Replace("n't", "nt", StringComparison.Ordinal), term);
        }

        bySpan = spellings.GetAlternateLookup<ReadOnlySpan<char>>();
    }

    private Scope(Scope<T> of, string alias, T term)
        : this([], of.Bit)
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

    /// <summary>Every word that a spelling starts with.</summary>
    internal IEnumerable<string> Starts => spellings.Keys;

    /// <summary>Every spelling that is understood here.</summary>
    public IEnumerable<string> Spellings => spellings.Where(pair => pair.Value.Term is not null).Select(pair => pair.Key);

    /// <summary>Every word once, in table order.</summary>
    public IEnumerable<T> Terms => spellings.Values.Select(spelling => spelling.Term).OfType<T>().Distinct();

    /// <summary>The word spelled so, in any case, or null.</summary>
    public T? Find(ReadOnlySpan<char> spelling) => Find(spelling, out _);

    /// <summary>The word spelled so, or null; and the most words in a spelling that starts with this one.</summary>
    public T? Find(ReadOnlySpan<char> spelling, out int longestPhrase)
    {
        if (bySpan.TryGetValue(spelling, out Spelling found))
        {
            longestPhrase = found.LongestPhrase;
            return found.Term;
        }

        longestPhrase = 1;
        return null;
    }

    /// <summary>True when no spelling of more than one word starts with this word, and it is none itself.</summary>
    public bool IsAlone(ReadOnlySpan<char> word) => !bySpan.ContainsKey(word);

    private void Add(string spelling, T term)
    {
        Spelling known = spellings.GetValueOrDefault(spelling, new Spelling(null, 1));
        if (known.Term is not null)
        {
            return;
        }

        spellings[spelling] = known with { Term = term };
        int blank = spelling.IndexOf(' ', StringComparison.Ordinal);
        if (blank > 0)
        {
            string first = spelling[..blank];
            Spelling start = spellings.GetValueOrDefault(first, new Spelling(null, 1));
            spellings[first] = start with { LongestPhrase = Math.Max(start.LongestPhrase, spelling.Count(c => c == ' ') + 1) };
        }
    }

    /// <summary>A spelling's word, if it is one, and the longest phrase it starts.</summary>
    private readonly record struct Spelling(T? Term, int LongestPhrase);
}
