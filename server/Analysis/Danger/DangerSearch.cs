using System.Collections.Frozen;
using HealthNotes.Analysis.Findings;
using HealthNotes.Grammar.Text;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Analysis.Danger;

/// <summary>A phrase found in a text.</summary>
/// <param name="Row">The row it is of.</param>
/// <param name="Span">Where it stands in the text.</param>
internal sealed record DangerHit(DangerWord Row, TextSpan Span);

/// <summary>Where a text stands: how much of its words is known already.</summary>
internal enum TextPlace
{
    /// <summary>A line that was not read, or the remark of one.</summary>
    Line,

    /// <summary>Words behind what was eaten.</summary>
    Eaten,

    /// <summary>Free text.</summary>
    Free,

    /// <summary>Words behind a fact or a task, which may tell of today.</summary>
    Tail,

    /// <summary>A question for the vet.</summary>
    Asked,
}

/// <summary>Looks for danger in words that were not read. When in doubt it finds.</summary>
internal static class DangerSearch
{
    private const int Reach = 6;
    private static readonly FrozenSet<string> EatenWords = SmallWords.Of("eaten-words");
    private static readonly FrozenSet<string> TakenWords = SmallWords.Of("taken-words");
    private static readonly FrozenSet<string> ApartWords = SmallWords.Of("apart-words");
    private static readonly FrozenSet<string> LookLikes = SmallWords.Of("look-likes");
    private static readonly FrozenSet<string> HappenedWords = SmallWords.Of("happened-words");
    private static readonly FrozenSet<string> EatenOf = SmallWords.Of("eaten-of");
    private static readonly FrozenSet<string> Unsure = SmallWords.Of("unsure");

    /// <summary>The gravest danger that a text names, the first of several; null when it names none.</summary>
    /// <param name="text">The text.</param>
    /// <param name="species">The animal.</param>
    /// <param name="name">The pet's name, which may be a word such as Lily; or null.</param>
    /// <param name="place">Where the text stands.</param>
    /// <param name="isKnown">True for what a line that was read says already.</param>
    public static DangerHit? In(string text, Species species, string? name, TextPlace place, Func<DangerWord, bool> isKnown)
    {
        var searched = new SearchedText(text);
        DangerHit? gravest = null;
        for (int at = 0; at < searched.Words.Length; at++)
        {
            foreach ((string[] phrase, DangerWord row) in DangerWord.StartingWith(searched.Words[at].Text))
            {
                if ((gravest is not null && row.Level <= gravest.Row.Level) || (row.Species is { } of && species != Species.Unknown && of != species) || searched.Match(at, phrase) is not (> 0 and var count))
                {
                    continue;
                }

                var span = TextSpan.Between(searched.Words[at].Span.Start, searched.Words[at + count - 1].Span.End);
                if (Counts(searched, at, count, phrase, row, place) && !(name is not null && name.Contains(span.In(text).ToString(), StringComparison.OrdinalIgnoreCase) && char.IsUpper(text[span.Start])) && !isKnown(row))
                {
                    gravest = new DangerHit(row, span);
                }
            }
        }

        return gravest;
    }

    private static bool Counts(SearchedText text, int at, int count, string[] phrase, DangerWord row, TextPlace place)
    {
        bool ownNegation = phrase[0] is "not" or "no" or "cant" or "cannot" or "wont" or "hasnt" or "isnt" or "didnt" or "nothing" or "unable" or "stopped" or "still" || phrase.Contains("wont") || phrase.Contains("not");
        if (!ownNegation && text.IsNegated(at, count))
        {
            return false;
        }

        string behind = text.Behind(at + count - 1, 1);
        if (place == TextPlace.Tail && (row.Kind != DangerKind.Sign || row.Level < FindingLevel.Urgent))
        {
            return false;
        }

        if (place == TextPlace.Asked && !text.SentenceHas(at, row.Kind == DangerKind.Sign ? HappenedWords.Contains : TakenWords.Contains))
        {
            return false;
        }

        return row.Kind switch
        {
            DangerKind.Sign => !IsCondition(text, at),
            DangerKind.Medicine => place == TextPlace.Eaten && OnlyEaten(text, at),
            DangerKind.Object => (place == TextPlace.Eaten || WasEaten(text, at, count)) && !IsLikeness(text, at, behind),
            DangerKind.Food => !IsLikeness(text, at, behind) && !(phrase is ["alcohol"] && behind is "wipe" or "wipes" or "swab" or "pad" or "rub")
                && !(place == TextPlace.Free && text.IsQuestion(at) && !text.SentenceHas(at, TakenWords.Contains)),
            _ => true,
        };
    }

    /// <summary><c>Phone if he collapses</c> tells of nothing that happened; <c>not sure if he collapsed</c> may.</summary>
    private static bool IsCondition(SearchedText text, int at)
    {
        for (int far = 1; text.Before(at, far) is { Length: > 0 } word; far++)
        {
            string before = text.Before(at, far + 1);
            if ((word == "if" && !Unsure.Contains(before)) || (word == "for" && before is "watch" or "look" or "out" or "monitor" or "watching")
                || (word == "of" && before is "case" or "risk") || word is "prevent" or "prevents")
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>True where nothing but words of how much and whose stands before: <c>all his pills</c>, <c>whole box of carprofen</c>; not in <c>all, with his tablet in it</c>.</summary>
    private static bool OnlyEaten(SearchedText text, int at)
    {
        for (int index = at - 1; index >= 0; index--)
        {
            if (!EatenOf.Contains(text.Words[index].Text) && !text.Words[index].Text.All(char.IsAsciiDigit))
            {
                return false;
            }
        }

        return true;
    }

    private static bool IsLikeness(SearchedText text, int at, string behind)
    {
        string before = text.Before(at, 1);
        before = before is "a" or "an" or "the" ? text.Before(at, 2) : before;
        return LookLikes.Contains(behind) || before == "like" || (before is "of" && (text.Before(at, 2) == "size" || text.Before(at, 3) == "size")) || (before == "as" && text.Before(at, 3) is "big" or "large" or "small");
    }

    private static bool WasEaten(SearchedText text, int at, int count)
    {
        for (int far = 1; far <= Reach && text.Before(at, far) is { Length: > 0 } word && !ApartWords.Contains(word); far++)
        {
            if (EatenWords.Contains(word) || (word == "into" && text.Before(at, far + 1) is "got" or "get"))
            {
                return true;
            }
        }

        for (int far = 1; far <= 2 && text.Behind(at + count - 1, far) is { Length: > 0 } word; far++)
        {
            if (word is "swallowed" or "eaten" or "ingested")
            {
                return true;
            }
        }

        return false;
    }
}
