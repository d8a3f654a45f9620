using Quickenshtein;

namespace HealthNotes.Grammar.Vocabulary;

/// <summary>Finds the known word that was most likely meant, by edit distance (Levenshtein).</summary>
public static class NearestWord
{
    private const int LongestCompared = 40;

    /// <summary>What turns a word into its opposite.</summary>
    private static readonly string[] Negating = ["un", "in", "im", "ir", "ab", "dis", "non", "not", "no"];

    /// <summary>
    /// The candidate nearest to <paramref name="typed"/>, or null when none is near: at most one edit for up to five letters,
    /// two up to eight, three above; two neighbours swapped count as one edit. Ties go to the candidate that starts most like what was typed (<c>mgg</c> is <c>mg</c>, not <c>mcg</c>), then to the alphabet.
    /// A word is never taken for its opposite: <c>uneven</c> is not <c>even</c>, however near.
    /// </summary>
    public static string? Find(string typed, IEnumerable<string> candidates, int most = int.MaxValue)
    {
        if (typed.Length is 0 or > LongestCompared)
        {
            return null;
        }

        string wanted = typed.ToLowerInvariant();
        int allowed = Math.Min(most, wanted.Length switch { <= 2 => 0, <= 5 => 1, <= 8 => 2, _ => 3 });
        (int Distance, int Unlike, int Longer, string Word)? best = null;
        foreach (string candidate in candidates)
        {
            if (Math.Abs(candidate.Length - wanted.Length) > allowed)
            {
                continue;
            }

            string lower = candidate.ToLowerInvariant();
            int distance = IsSwap(wanted, lower) ? 1 : Levenshtein.GetDistance(wanted, lower);
            if (distance > allowed || Negates(wanted, lower))
            {
                continue;
            }

            (int, int, int, string) found = (distance, -wanted.AsSpan().CommonPrefixLength(lower), Math.Abs(lower.Length - wanted.Length), candidate);
            if (best is null || Comparer<(int, int, int, string)>.Default.Compare(found, best.Value) < 0)
            {
                best = found;
            }
        }

        return best?.Word;
    }

    /// <summary>True for <c>uneven</c> and <c>even</c>, <c>abnormal</c> and <c>normal</c>: what was typed is the other word, or its beginning, behind a negating syllable.</summary>
    private static bool Negates(string typed, string word)
    {
        foreach (string syllable in Negating)
        {
            ReadOnlySpan<char> rest = typed.StartsWith(syllable, StringComparison.Ordinal) ? typed.AsSpan(syllable.Length).TrimStart('-') : "";
            if (rest.Length >= 2 && word.AsSpan().StartsWith(rest[..2]) && !word.StartsWith(syllable, StringComparison.Ordinal))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>True when two neighbouring letters changed places: the commonest slip of all.</summary>
    private static bool IsSwap(string one, string other)
    {
        int at = one.AsSpan().CommonPrefixLength(other);
        return one.Length == other.Length && at + 1 < one.Length
            && one[at] == other[at + 1] && one[at + 1] == other[at]
            && one.AsSpan(at + 2).SequenceEqual(other.AsSpan(at + 2));
    }
}
