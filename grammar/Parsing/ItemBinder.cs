using System.Collections.Immutable;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Scanning;
using HealthNotes.Grammar.Slots;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Text;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Grammar.Parsing;

/// <summary>
/// Gives each part of an observation to the slot that it fits, in any order, and finds where another observation starts. What fits
/// nothing is a remark where the word takes one, else a problem at exactly its characters.
/// </summary>
internal sealed class ItemBinder(Cursor at, RemarkReader remarks, NextHead others, HeadMeaning meaning, ActDays acts)
{
    /// <summary>Gives the parts of one observation to its slots. The head of the next one where another starts; null at the end of the line.</summary>
    public Head? Bind(Head head, ImmutableArray<SlotReader> slots, ref bool none)
    {
        ModifierWord? joined = null;
        while (at.HasPart)
        {
            if (at.StartsSegment(at.At))
            {
                at.InRemark = false;
            }

            if (others.ListedPart() is { } listed)
            {
                return listed;
            }

            if (at.Word.Has(SlotKind.Analyte) && at.First<NoteValue>() is not null && at.Phrase(at.Vocabulary.Fixed("lab-words"), at.At, out _) > 0)
            {
                // "urine culture negative, no growth": of bacteria, and no lump
                remarks.Take();
                continue;
            }

            if (CountSlots.IsRange(at))
            {
                // "3 or 4 times a night": no number says it
                remarks.Take();
                continue;
            }

            bool fact = FactSlots.IsSignalment(at.Word) || FactSlots.EndsAtFact(at.Word);
            if (fact && at.Filled.Count > 0 && at.Part is NumberPart { Second.Exists: false } age && (age.First.Unit.In(at.Line) is "yo" or "y/o" || (age.First.Unit.Length == 0 && at.Is(at.At + 1, "yo")) || (at.Word.Has(SlotKind.Sex) && age.First is { Digits.Length: 4, Unit.Length: 0 } && at.Digits(age.First.Digits) is > 1990 and < 2100) || IntervalWords.BareLength(at, age, out _) is not null))
            {
                // "cat, female, 11yo": how old on the day of writing
                remarks.Take();
                continue;
            }

            if ((joined is not null || at.StartsSegment(at.At) || (fact && Head.Fact(at, at.At) is not null)) && others.AnotherAtSegment(head, joined is not null) is { } other)
            {
                return others.Negated(head, other, joined);
            }

            if ((at.Is(at.At, "and") || at.Is(at.At, "&") || at.Is(at.At, "+")) && (at.First<NoteValue>() is not null || (at.First<FreeWords>() is { } first && at.Vocabulary.Medicines.Find(first.Text) is not null)) && Joins.MedicineStarts(at, at.At + 1))
            {
                // "carprofen 50mg and gabapentin 100mg"
                at.Mark(TokenKind.Filler, at.Part.Span);
                at.StartParts(at.Parts[(at.At + 1)..]);
                return head with { Lead = null, Line = 0, Negation = null };
            }

            if (at.Word.Has(SlotKind.Medicine) && at.Word.Kind == WordKind.Fact && at.Is(at.At, "then") && at.First<Schedule>()?.Every is not null && at.At + 1 < at.Parts.Count)
            {
                // a plan in steps is kept as it is written
                var steps = TextSpan.Between(at.Part.Span.Start, at.End);
                at.Mark(TokenKind.Text, steps);
                at.Remark.Add(steps);
                at.At = at.Parts.Count;
                break;
            }

            if ((others.SameAgain(head) ?? others.AlsoSkipped(head)) is { } again)
            {
                return again;
            }

            if (SiteSlots.StartsSecond(at) || SiteSlots.StartsOtherSide(at))
            {
                if (at.Word.Kind == WordKind.Scan && at.Get<Site>(SlotKind.Site) is { } before && before.Span.Start < at.HeadSpan.Start && at.At > 0 && TextSpan.Between(at.Parts[at.At - 1].Span.End, at.Part.Span.Start).In(at.Line).IndexOfAny(",;") < 0 && !(at.Vocabulary.Small.Find(at.TextAt(at.At - 1)) is { Kind: ModifierKind.JoinsAnd }))
                {
                    // "neck: nodule R side of throat": one lump, and two places for it
                    at.Report(new Problem(ProblemRules.SaidTwice, at.Part.Span, $"`{before.Span.In(at.Line)}` and `{at.TextOf(at.Part)}` are two places. Write the nearer one, such as {at.Word.Word} {at.TextOf(at.Part)}."));
                }

                return head with { Lead = null, Line = 0, Negation = null };
            }

            if ((at.At == 0 || at.Word.Kind == WordKind.Scan) && at.BehindSign < 0 && meaning.NoneBehindHead(ref none))
            {
                continue;
            }

            if (at.Word.Kind == WordKind.Act && at.Phrase(at.Vocabulary.Fixed("next"), at.At, out _) is > 0 and var words && acts.Next(words))
            {
                continue;
            }

            if (at.Word.Kind == WordKind.Act && at.Is(at.At, "due"))
            {
                if (acts.Due(head) is { } due)
                {
                    return due;
                }

                continue;
            }

            if (!remarks.TakesRest() && Modifiers.At(at, at.At) is { } no)
            {
                int sign = WordSlots.SignLength(at, at.At);
                if (sign > 0 && no.Count > sign && !(at.At + no.Count == at.Parts.Count || at.StartsSegment(at.At + no.Count)) && Modifiers.BindBefore(at))
                {
                    // "free of", "can't see any": longer than the sign that starts so
                    continue;
                }

                bool part = at.Word.Has(SlotKind.Portion) && at.Phrase(at.Vocabulary.Portions, at.At, out _) == no.Count;
                sign = part ? no.Count : sign;
                bool goesWith = part && at.Phrase(at.Vocabulary.Describing(at.Subject), at.At + no.Count, out DescribingWord? behind) > 0 && at.Vocabulary.Fixed("not-eating").Find(behind!.Word) is not null;
                if (!goesWith && sign == no.Count && at.At + sign < at.Parts.Count && !at.StartsSegment(at.At + sign) && WordSlots.StartsWorry(at, at.At + sign))
                {
                    at.Report(new Problem(ProblemRules.OpenNegation, at.SpanOf(at.At, sign),
                        $"`{at.SpanOf(at.At, sign).In(at.Line)}` can be read two ways here. Put a comma behind it if it is a sign of its own, or write what is gone: {at.TextAt(at.At + sign)} gone."));
                }
            }

            if (!remarks.TakesRest() && StretchPatterns.IsExcepted(at, head, none))
            {
                return null;
            }

            if (at.Filled.Count == 0 && at.Part.Kind == PartKind.Unreadable && at.TextOf(at.Part) is "-" or "–" or "—")
            {
                // "teeth - chip on 104": a dash parts as a comma does
                at.At++;
                continue;
            }

            if (at.Word.Has(SlotKind.Tooth) && (at.Is(at.At, "on") || at.Is(at.At, "of")) && at.At + 1 < at.Parts.Count && at.Parts[at.At + 1] is NumberPart tooth && SiteSlots.IsTooth(at, tooth))
            {
                // "chip on 104"
                at.Taken(TokenKind.Filler);
                continue;
            }

            if (at.Word.Has(SlotKind.Score) && at.First<NoteValue>() is null && at.IsWord(at.At) && at.At + 1 < at.Parts.Count && at.Parts[at.At + 1].Kind == PartKind.Number && at.Vocabulary.Fixed("before-score").Find(at.TextOf(at.Part)) is not null)
            {
                // "heart murmur, grade 2 out of 6"
                at.Taken(TokenKind.Filler);
                continue;
            }

            if (remarks.Compares(at.At))
            {
                remarks.Take();
                continue;
            }

            if (Modifiers.BindAfter(at) || BindSlot(slots))
            {
                joined = null;
                continue;
            }

            if (at.TextOf(at.Part) is "@")
            {
                // "120 @ rest"
                at.Taken(TokenKind.Filler);
                continue;
            }

            if (!remarks.TakesRest() && others.Another(joined is not null) is { } another)
            {
                return others.Negated(head, another, joined);
            }

            if ((at.SaysSomething || at.Times.Count > 0 || (at.Remark.Count > 0 && at.Word.Has(SlotKind.Times) && !at.Word.Has(SlotKind.Portion))) && at.Pending is null && at.Word.Has(SlotKind.Note) && remarks.MayRemark() && remarks.StartsClause(at.At))
            {
                remarks.Take();
                continue;
            }

            if (!remarks.TakesRest() && Modifiers.BindBefore(at))
            {
                continue;
            }

            bool aside = at.Word.Kind == WordKind.Vital && at.First<NoteValue>() is not null && at.Part is { Kind: PartKind.Word, Span.Start: > 0 and var opening } && at.Line[opening - 1] == '(';
            if (!aside && !at.InRemark && !remarks.TakesRest() && Modifiers.BindSmall(at, out joined))
            {
                continue;
            }

            joined = null;
            if (at.Word.Has(SlotKind.Note) && !at.Blocked && remarks.MayRemark())
            {
                remarks.Take();
                continue;
            }

            at.Report(Refusals.Of(at, at.Part));
            at.Taken(TokenKind.Unknown);
        }

        return null;
    }

    private bool BindSlot(ImmutableArray<SlotReader> slots)
    {
        if (at.Word.Has(SlotKind.Rule) && at.First<Schedule>()?.Until is not null)
        {
            // until when it holds comes last: what follows is the reason
            return false;
        }

        if (at.Part.Kind == PartKind.Number)
        {
            return !at.Blocked && Numbers.Bind(at, slots);
        }

        if (at.Word.Has(SlotKind.Medicine) && at.Phrase(at.Vocabulary.Fixed("dose-change"), at.At, out _) is > 0 and var change && at.At + change < at.Parts.Count
            && at.Parts[at.At + change] is NumberPart { First.Unit.Length: > 0 } amount && at.Vocabulary.Units.Find(amount.First.Unit.In(at.Line)) is { Quantity: Quantity.Mass or Quantity.Volume or Quantity.Dose })
        {
            at.Mark(TokenKind.Filler, at.SpanOf(at.At, change));
            at.At += change;
            return true;
        }

        if (at.Part.Kind == PartKind.Word && at.Phrase(at.Vocabulary.Bounds, at.At, out FixedWord? bound) is > 0 and var words
            && at.At + words < at.Parts.Count && at.Parts[at.At + words] is NumberPart { BoundSpan.Length: 0 } && !at.InRemark && !at.Blocked && at.Phrase(at.Vocabulary.Objects, at.At + words, out _) == 0)
        {
            // under 2 seconds
            (int At, int Tokens, int Problems, int Filled) here = at.Here;
            at.Mark(TokenKind.Keyword, at.SpanOf(at.At, words));
            at.At += words;
            at.BoundInWords = Enum.Parse<Bound>(bound!.Word, ignoreCase: true);
            bool taken = Numbers.Bind(at, slots);
            at.BoundInWords = Bound.Exact;
            if (taken)
            {
                return true;
            }

            at.Restore(here);
        }

        if (Numbers.TimeOfDay(at))
        {
            return true;
        }

        if (at.Part.Kind == PartKind.Unreadable)
        {
            return false;
        }

        int before = at.At;
        foreach (SlotReader slot in slots)
        {
            bool sign = slot.Kind == SlotKind.Words;
            bool may = at.Blocked ? sign : !at.InRemark || sign;
            if (may && slot.BindWord(at))
            {
                return true;
            }

            at.At = before;
        }

        return false;
    }
}
