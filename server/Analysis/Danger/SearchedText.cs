using System.Collections.Frozen;
using System.Collections.Immutable;
using HealthNotes.Record.Pet;

namespace HealthNotes.Analysis.Danger;

/// <summary>A text cut into words, with what a search must know of small words: which negate, and how far that reaches.</summary>
internal sealed class SearchedText
{
    private const int MostSkipped = 3;
    private const int MostUnknown = 2;
    private static readonly FrozenSet<string> Skipped = SmallWords.Of("skipped");
    private static readonly FrozenSet<string> Negating = SmallWords.Of("negating");
    private static readonly FrozenSet<string> Passed = SmallWords.Of("passed");
    private static readonly FrozenSet<string> Stopping = SmallWords.Of("stopping");
    private static readonly FrozenSet<string> Breaks = SmallWords.Of("breaks");
    private static readonly FrozenSet<string> After = SmallWords.Of("after");
    private static readonly FrozenSet<string> Linking = SmallWords.Of("linking");
    private static readonly FrozenSet<string> Alone = SmallWords.Of("alone");
    private readonly string text;
    private readonly ImmutableArray<TextWord> words;

    public SearchedText(string text)
    {
        this.text = text;
        words = TextWord.Split(text);
    }

    /// <summary>Its words.</summary>
    public ImmutableArray<TextWord> Words => words;

    /// <summary>How many words a phrase takes from a word on, small words in between counted; 0 when it does not stand there.</summary>
    public int Match(int at, string[] phrase)
    {
        int next = at;
        for (int index = 0; index < phrase.Length; index++)
        {
            int skipped = 0;
            while (index > 0 && next < words.Length && words[next].Text != phrase[index] && skipped < MostSkipped && Skipped.Contains(words[next].Text))
            {
                next++;
                skipped++;
            }

            if (next >= words.Length || words[next].Text != phrase[index] || words[next].Sentence != words[at].Sentence)
            {
                return 0;
            }

            next++;
        }

        return next - at;
    }

    /// <summary>True when the words from <paramref name="at"/> on are said not to be so.</summary>
    public bool IsNegated(int at, int count) => IsNegatedBefore(at) || IsNegatedAfter(at + count, words[at].Sentence);

    /// <summary>True when one of the words stands in the same sentence, before <paramref name="at"/> or anywhere.</summary>
    public bool SentenceHas(int at, Func<string, bool> wanted) => words.Any(word => word.Sentence == words[at].Sentence && wanted(word.Text));

    /// <summary>True when the sentence of a word ends in a question mark.</summary>
    public bool IsQuestion(int at)
    {
        int last = at;
        while (last + 1 < words.Length && words[last + 1].Sentence == words[at].Sentence)
        {
            last++;
        }

        return text[words[last].Span.End..].TrimStart(' ', ')', '"', '\'').StartsWith('?');
    }

    /// <summary>The word so far before another in its sentence; empty where there is none.</summary>
    public string Before(int at, int far) => at - far >= 0 && words[at - far].Sentence == words[at].Sentence ? words[at - far].Text : "";

    /// <summary>The word so far behind the word at <paramref name="at"/> in its sentence; empty where there is none.</summary>
    public string Behind(int at, int far) => at + far < words.Length && words[at + far].Sentence == words[at].Sentence ? words[at + far].Text : "";

    /// <summary>True when nothing but white space and marks stands behind a word in its part of the sentence.</summary>
    private bool EndsPart(int at) => at + 1 >= words.Length || words[at + 1].Part != words[at].Part;

    private bool IsNegatedBefore(int at)
    {
        int unknown = 0;
        bool listed = false;
        for (int index = at - 1; index >= 0 && words[index].Sentence == words[at].Sentence; index--)
        {
            string word = words[index].Text;
            // past a comma a negation reaches only along a list that "or" ends
            if (words[index].Part != words[index + 1].Part && !listed && !EndsInOr(at))
            {
                return false;
            }

            if (word is "or" or "nor")
            {
                listed = true;
                continue;
            }

            if (IsNegation(index))
            {
                return !words[(index + 1)..Math.Min(at, index + 3)].Any(between => Stopping.Contains(between.Text));
            }

            if (Breaks.Contains(word) || Stopping.Contains(word) || (!Passed.Contains(word) && ++unknown > (listed ? MostUnknown + 2 : MostUnknown)))
            {
                return false;
            }
        }

        return false;
    }

    private bool IsNegation(int index) => Negating.Contains(words[index].Text)
        || (words[index].Text is "free" or "clear" && Behind(index, 1) is "of" or "from")
        || (words[index].Text == "out" && Before(index, 1) == "ruled");

    /// <summary>True when "or" comes later in the sentence with nothing but short parts in between: <c>no collapse, fainting or fits</c>.</summary>
    private bool EndsInOr(int at)
    {
        int inPart = 0;
        for (int index = at; index < words.Length && words[index].Sentence == words[at].Sentence; index++)
        {
            if (words[index].Text is "or" or "nor")
            {
                return true;
            }

            inPart = index > at && words[index].Part == words[index - 1].Part ? inPart + 1 : 0;
            if (inPart > MostUnknown || Breaks.Contains(words[index].Text))
            {
                return false;
            }
        }

        return false;
    }

    private bool IsNegatedAfter(int next, int sentence)
    {
        if (next >= words.Length || words[next].Sentence != sentence)
        {
            return false;
        }

        int index = next;
        while (index < words.Length && words[index].Sentence == sentence && Linking.Contains(words[index].Text))
        {
            index++;
        }

        if (index >= words.Length || words[index].Sentence != sentence)
        {
            return false;
        }

        string word = words[index].Text;
        return word == "free" ? EndsPart(index) || Behind(index, 1) != "access"
            : (word == "ruled" && Behind(index, 1) == "out")
            || (Alone.Contains(word) && (EndsPart(index) || After.Contains(Behind(index, 1))))
            || (word is "isnt" or "wasnt" or "hasnt" or "werent" or "arent" && After.Contains(Behind(index, Behind(index, 1) == "been" ? 2 : 1)));
    }
}
