using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Text;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Grammar.Slots;

/// <summary>
/// Negation and end: the words that say that a sign is not there, or is there no longer. What a negation reaches is never
/// guessed: where it may reach one word or two, the line is not read.
/// </summary>
internal static class Modifiers
{
    /// <summary>The negation or end that starts at <paramref name="index"/> and waits for a word behind it; null where none does.</summary>
    public static (ModifierWord Word, int Count)? At(Cursor at, int index)
    {
        int count = at.Phrase(at.Vocabulary.Before, index, out ModifierWord? word);
        if (count > 1 && (index + count >= at.Parts.Count || at.StartsSegment(index + count)) && WordSlots.SignLength(at, index + 1) == count - 1
            && at.Vocabulary.Before.Find(at.TextAt(index)) is { } shorter)
        {
            // "water no more": nothing follows, so the more is what is denied
            return (shorter, 1);
        }

        return count == 0 ? null : (word!, count);
    }

    /// <summary>True where the word that a negation before <paramref name="index"/> belongs to has a meaning here.</summary>
    public static bool Reaches(Cursor at, int index)
    {
        while (index < at.Parts.Count && !at.StartsSegment(index) && at.Phrase(at.Vocabulary.Small, index, out _) is > 0 and var small)
        {
            index += small;
        }

        if (index >= at.Parts.Count || at.Phrase(at.Vocabulary.Ok, index, out _) > 0)
        {
            return index < at.Parts.Count;
        }

        int sign = WordSlots.SignLength(at, index);
        if (sign == 0 || at.Phrase(at.Vocabulary.Describing(at.Subject), index, out DescribingWord? word) == 0 || word!.Part != "any")
        {
            return sign > 0;
        }

        // "not really wet" says neither that it is wet nor that it is not; "no new ulcers" is about the ulcers
        return !word.IsDegree && (index + sign == at.Parts.Count || at.StartsSegment(index + sign) || WordSlots.StartsSign(at, index + sign) || at.Phrase(at.Vocabulary.Small, index + sign, out _) > 0);
    }

    /// <summary>Takes a negation that belongs to the next word.</summary>
    public static bool BindBefore(Cursor at)
    {
        if (At(at, at.At) is not { } found)
        {
            return false;
        }

        TextSpan span = at.SpanOf(at.At, found.Count);
        at.Mark(TokenKind.Keyword, span);
        at.At += found.Count;
        at.Pending = new Pending(found.Word, span);
        return true;
    }

    /// <summary>Takes a <c>gone</c> or <c>none</c> that belongs to the sign before it.</summary>
    public static bool BindAfter(Cursor at)
    {
        ModifierWord word = null!;
        bool colon = at.At > 0 && at.BehindSign == at.At && at.First<Described>() is not null && TextSpan.Between(at.Parts[at.At - 1].Span.End, at.Part.Span.Start).In(at.Line).Trim() is ":";
        int count = at.BehindSign != at.At || (at.StartsSegment(at.At) && !colon) || at.First<Described>() is null ? 0 : at.Phrase(at.Vocabulary.After, at.At, out word!);
        if (count == 0 && colon && At(at, at.At) is { Word.Kind: ModifierKind.Absent } no)
        {
            // "ear red: no"
            (word, count) = no;
        }

        bool answered = count == 0 && at.TextOf(at.Part) is "?" && (At(at, at.At + 1) is { Word.Kind: ModifierKind.Absent } || at.Is(at.At + 1, "yes"));
        if (answered && Answer(at) is { } answer)
        {
            if (at.First<Described>() is null || at.BehindSign != at.At)
            {
                return at.Refuse(at.SpanOf(at.At, answer.Count), ProblemRules.OpenNegation, $"`{at.SpanOf(at.At, answer.Count).In(at.Line)}`: what is the answer about? Write what was seen, or no before a word I know: no head tilt.");
            }

            if (answer.No is null)
            {
                // "head tilt? yes"
                at.Mark(TokenKind.Filler, at.SpanOf(at.At, answer.Count));
                at.At += answer.Count;
                at.BehindSign = at.At;
                return true;
            }

            (word, count) = (answer.No, answer.Count);
        }

        if (count == 0)
        {
            return false;
        }

        Described sign = at.Filled.Select(slot => slot.Value).OfType<Described>().Last();
        if (sign.Sense != Sense.Present || sign.Word.Part == "any")
        {
            return false;
        }

        if (!colon && NeedsEnd(word) && at.At + count < at.Parts.Count && !at.StartsSegment(at.At + count))
        {
            // "soft no blood": the no belongs to what follows
            return false;
        }

        TextSpan span = at.SpanOf(at.At, count);
        at.Mark(TokenKind.Keyword, span);
        at.At += count;
        at.ReplaceLast(sign with { Span = TextSpan.Between(sign.Span.Start, span.End), Sense = word.Kind == ModifierKind.EndedAfter ? Sense.Ended : Sense.Absent });
        return true;
    }

    /// <summary>The <c>? no</c> of <c>head tilt? no</c>, where nothing follows in its stretch; null where something does.</summary>
    private static (ModifierWord? No, int Count)? Answer(Cursor at)
    {
        (ModifierWord Word, int Count)? no = At(at, at.At + 1);
        int count = 1 + (no?.Count ?? 1);
        return at.At + count == at.Parts.Count || at.StartsSegment(at.At + count) ? (no?.Word, count) : null;
    }

    /// <summary>
    /// What follows a negated sign: <c>or</c> carries the negation on; <c>and</c> or a comma before another sign leaves open
    /// how far it reaches, which is reported.
    /// </summary>
    public static void AfterSign(Cursor at, Pending pending)
    {
        at.Pending = null;
        if (!at.HasPart)
        {
            return;
        }

        if (at.IsWord(at.At) && at.StartsSegment(at.At) && at.Vocabulary.Fixed("present-again").Find(at.TextAt(at.At)) is not null)
        {
            // "no smell, still slightly red"
            return;
        }

        bool comma = at.StartsSegment(at.At);
        int joined = at.Phrase(at.Vocabulary.Small, at.At, out ModifierWord? small);
        if (joined > 0 && small!.Kind == ModifierKind.JoinsOr)
        {
            CarryOn(at, pending, joined);
        }
        else if (joined == 0 && ListEndsInOr(at))
        {
            at.Pending = pending;
        }
        else if ((comma ? pending.Modifier.NegatesLists && WordSlots.StartsWorry(at, at.At) : joined == 0 && WordSlots.StartsWorry(at, at.At))
            || (joined > 0 && small!.Kind == ModifierKind.JoinsAnd && !IsBut(small) && WordSlots.StartsWorry(at, at.At + joined)))
        {
            Open(at, pending, at.Parts[comma ? at.At : at.At + joined].Span);
        }
    }

    /// <summary>Reports that a negation may or may not reach a sign.</summary>
    public static void Open(Cursor at, Pending pending, TextSpan sign)
    {
        string no = pending.Span.In(at.Line).ToString();
        at.Report(new Problem(ProblemRules.OpenNegation, sign,
            $"`{no}` may or may not reach `{sign.In(at.Line)}`. Write `{no}` before each sign that is not there, or the sign that is there first."));
    }

    /// <summary>The negation that waits for a word found none.</summary>
    public static void Unused(Cursor at)
    {
        if (at.Pending is { } pending)
        {
            at.Pending = null;
            at.Report(new Problem(ProblemRules.OpenNegation, pending.Span,
                $"What does `{pending.Span.In(at.Line)}` belong to? Put it directly before a word I know: no blood, not swollen. Other remarks go on a line that starts with >."));
        }
    }

    /// <summary>Takes words that carry no meaning of their own here.</summary>
    public static bool BindSmall(Cursor at, out ModifierWord? joins)
    {
        if (at.Vocabulary.LineWords.Find(at.TextOf(at.Part)) == at.Word || (at.Word.Kind == WordKind.Act && at.Vocabulary.DoseEvents.Find(at.TextOf(at.Part)) is { Word: "gave" }))
        {
            // "wax in both ears", "booster jab done": said already
            joins = null;
            at.Mark(TokenKind.Filler, at.Part.Span);
            at.At++;
            return true;
        }

        int count = at.Phrase(at.Vocabulary.Small, at.At, out ModifierWord? word);
        joins = count > 0 && word!.Kind is ModifierKind.JoinsAnd or ModifierKind.JoinsOr ? word : null;
        if (count == 0)
        {
            return false;
        }

        at.Mark(TokenKind.Filler, at.SpanOf(at.At, count));
        bool behind = at.BehindSign == at.At && joins is null;
        at.At += count;
        at.BehindSign = behind ? at.At : at.BehindSign;
        return true;
    }

    /// <summary>True for a word that means the sign before it only where nothing follows.</summary>
    public static bool NeedsEnd(ModifierWord word) => word.Kind == ModifierKind.AbsentAfter || word.Word is "over" or "stopped" || word.Word.StartsWith("no", StringComparison.Ordinal);

    private static void CarryOn(Cursor at, Pending pending, int joined)
    {
        at.Mark(TokenKind.Filler, at.SpanOf(at.At, joined));
        at.At += joined;
        at.Pending = At(at, at.At) is null ? pending : null;
    }

    /// <summary>True for the rest of <c>no redness, swelling or heat</c>: signs with commas, and an <c>or</c> before the last.</summary>
    private static bool ListEndsInOr(Cursor at)
    {
        int index = at.At;
        while (index < at.Parts.Count)
        {
            int count = WordSlots.SignLength(at, index);
            if (count == 0)
            {
                return false;
            }

            index += count;
            int joined = at.Phrase(at.Vocabulary.Small, index, out ModifierWord? small);
            if (joined > 0)
            {
                return small!.Kind == ModifierKind.JoinsOr;
            }
        }

        return false;
    }

    private static bool IsBut(ModifierWord word) => word.Word is "but" or "though";
}
