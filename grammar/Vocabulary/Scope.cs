namespace HealthNotes.Grammar.Vocabulary;

/// <summary>The words that are understood in one place of a line, found by any spelling, in any case.</summary>
/// <typeparam name="T">The kind of word.</typeparam>
public sealed class Scope<T>
    where T : class, ITerm
{
    private readonly Dictionary<string, T> spellings = new(StringComparer.OrdinalIgnoreCase);
    private readonly Dictionary<string, int> phraseStarts = new(StringComparer.OrdinalIgnoreCase);
    private readonly Dictionary<string, T>.AlternateLookup<ReadOnlySpan<char>> bySpelling;
    private readonly Dictionary<string, int>.AlternateLookup<ReadOnlySpan<char>> byPhraseStart;

    /// <summary>Collects the spellings of <paramref name="terms"/>; where two terms share one, the first keeps it.</summary>
    public Scope(IEnumerable<T> terms)
    {
        foreach (T term in terms)
        {
            Add(term.Word, term);
            foreach (string synonym in term.Synonyms)
            {
                Add(synonym, term);
            }
        }

        bySpelling = spellings.GetAlternateLookup<ReadOnlySpan<char>>();
        byPhraseStart = phraseStarts.GetAlternateLookup<ReadOnlySpan<char>>();
    }

    /// <summary>Every spelling that is understood here.</summary>
    public IEnumerable<string> Spellings => spellings.Keys;

    /// <summary>Every word once, in table order.</summary>
    public IEnumerable<T> Terms => spellings.Values.Distinct();

    /// <summary>The word spelled so, in any case, or null.</summary>
    public T? Find(ReadOnlySpan<char> spelling) => bySpelling.TryGetValue(spelling, out T? term) ? term : null;

    /// <summary>The most words in a spelling that starts with <paramref name="word"/>; 1 when there is no such phrase.</summary>
    public int LongestPhrase(ReadOnlySpan<char> word) => byPhraseStart.TryGetValue(word, out int words) ? words : 1;

    private void Add(string spelling, T term)
    {
        if (!spellings.TryAdd(spelling, term))
        {
            return;
        }

        int blank = spelling.IndexOf(' ', StringComparison.Ordinal);
        if (blank > 0)
        {
            string first = spelling[..blank];
            int words = spelling.Count(c => c == ' ') + 1;
            phraseStarts[first] = Math.Max(words, phraseStarts.GetValueOrDefault(first, 1));
        }
    }
}
