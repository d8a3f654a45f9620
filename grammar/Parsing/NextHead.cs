using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Scanning;
using HealthNotes.Grammar.Slots;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Text;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Grammar.Parsing;

/// <summary>Finds where another observation begins in a line.</summary>
internal sealed class NextHead(Cursor at, RemarkReader remarks)
{
    /// <summary>From how many words on, its negation with them, a phrase is surely meant as a whole.</summary>
    private const int LongPhrase = 3;

    /// <summary>The same head, negated where <c>or</c> carries a negation on. After a comma a bare word may be meant either way, which is reported.</summary>
    public Head Negated(Head head, Head next, ModifierWord? joined)
    {
        if (head.Lead is not null && joined is { Kind: ModifierKind.JoinsAnd, Word: not ("but" or "though") } && next.Negation is null
            && Joins.StartsWithNegation(at.Vocabulary, head.Span.In(at.Line).ToString().Split(' ')))
        {
            at.Report(new Problem(ProblemRules.OpenNegation, next.Span,
                $"`{head.Span.In(at.Line)}` may or may not reach `{next.Span.In(at.Line)}`. Write each on a line of its own."));
        }

        if (head.Negation is not { Modifier.NegatesLists: true } negation || next.Negation is not null)
        {
            return next;
        }

        bool bare = !at.HasPart || !TextSpan.Between(Math.Min(next.Span.End, at.Parts[0].Span.Start), at.Parts[0].Span.Start).In(at.Line).IsWhiteSpace() || at.Phrase(at.Vocabulary.Small, 0, out ModifierWord? small) > 0 && small!.Kind == ModifierKind.JoinsOr;
        bool or = joined?.Kind == ModifierKind.JoinsOr || at.Parts.Any(part => at.Vocabulary.Small.Find(at.TextOf(part)) is { Kind: ModifierKind.JoinsOr });
        if (or && bare)
        {
            return next with { Negation = negation };
        }

        if (bare && (next.Lead is null || next.Implied.Any(word => at.Vocabulary.Describing(next.Word).Find(word)?.Meanings.Any(meaning => meaning.Level > Level.Expected) == true)))
        {
            at.Report(new Problem(ProblemRules.OpenNegation, next.Span,
                $"`{negation.Span.In(at.Line)}` may or may not reach `{next.Span.In(at.Line)}`. Write `{negation.Span.In(at.Line)}` before each, or say how it was."));
        }

        return next;
    }

    /// <summary>
    /// The head of another observation at the start of a stretch between commas. A word that the present observation knows as a
    /// sign stays with it where it stands alone: <c>vomit 2x, food</c>; <c>walk 20min, coughed twice</c> is two observations.
    /// </summary>
    public Head? AnotherAtSegment(Head head, bool joined)
    {
        if (at.Word.Kind == WordKind.Fact && !at.Word.Has(SlotKind.Medicine) && (FactSlots.IsSignalment(at.Word) || FactSlots.EndsAtFact(at.Word)) && at.Filled.Count > 0 && (at.StartsSegment(at.At) || Head.Fact(at, at.At) is not null))
        {
            // "dog, female, spayed, born 2017": the facts about a pet stand in one line
            return Signalment();
        }

        if (at.Word.Kind == WordKind.Task && at.First<Schedule>() is not null && at.StartsSegment(at.At))
        {
            return Task();
        }

        bool plan = at.Word.Has(SlotKind.Medicine) && at.Word.Kind == WordKind.Fact;
        if (at.Word.Has(SlotKind.Medicine) && !plan && at.First<FreeWords>() is not null && at.StartsSegment(at.At) && TimeReader.Within(at, at.At, out int when) is not null && at.Phrase(at.Vocabulary.Medicines, at.At + when, out _) > 0)
        {
            // "7am insulin 7u, 8am meloxicam 1.3mg"
            at.StartParts(at.Parts[at.At..]);
            return head with { Lead = null, Line = 0, Negation = null };
        }

        if (at.Word.Kind is WordKind.Task or WordKind.Skip or WordKind.Picture || (at.Word.Kind == WordKind.Fact && !plan) || (remarks.TakesRest() && !Joins.MedicineStarts(at, at.At)))
        {
            return null;
        }

        int retaken = at.Phrase(at.Vocabulary.Fixed("repeated"), at.At, out _);
        if (!at.Word.Has(SlotKind.Medicine) && TimeReader.Within(at, at.At + retaken, out int clock) is not null && at.At + retaken + clock < at.Parts.Count)
        {
            if (at.Word.Kind == WordKind.Vital && at.First<NoteValue>() is not null && at.Parts[at.At + retaken + clock] is NumberPart)
            {
                // "glucose 7am 240, 9am 165", "recheck 10pm 101.9": the same again, later
                if (retaken > 0)
                {
                    at.Mark(TokenKind.Filler, at.SpanOf(at.At, retaken));
                }

                at.StartParts(at.Parts[(at.At + retaken)..]);
                return head with { Lead = null, Line = 0, Negation = null };
            }

            if (Head.Dose(at, at.At + clock) is { } given)
            {
                // "ate all, 07:30 carprofen 75mg"
                at.StartParts(at.Parts[at.At..]);
                return given;
            }

            if (Head.AtWithNegation(at, at.At + clock, out int later, first: true) is { } timed && IsObservation(timed.Word))
            {
                // "8:30 seizure, 18:00 seizure"
                return Start(timed, at.At + clock, later);
            }
        }

        if (plan && at.Is(at.At, "stop") && (at.Phrase(at.Vocabulary.Asides, at.At + 1, out _) > 0 || (at.IsWord(at.At + 1) && at.Vocabulary.Fixed("taper").Find(at.TextAt(at.At + 1)) is not null)))
        {
            // "stop if V/D", "stop after a week": part of the plan
            return null;
        }

        if (joined && at.Filled.Count == 0 && at.Word.Kind == WordKind.Care && at.Phrase(at.Vocabulary.Leads, at.At, out LeadWord? phraseOf) is > 1 and var length && phraseOf!.Lines[0].Word != at.Word.Word && Head.At(at, at.At, out int whole) is { } own && whole == length && IsObservation(own.Word))
        {
            // "vomiting and blood in pee": the phrase names its own line
            return Start(own, at.At, whole);
        }

        if ((at.Filled.Count == 0 && at.Remark.Count == 0 && !(head.Negation is not null || head.Lead is not null)) || RestOfMeal())
        {
            // "lump, stomach, 12mm": the word stands alone so far, so a comma behind it ends nothing
            return null;
        }

        if (at.Phrase(at.Vocabulary.States(StateSlots.ScopeOf(at)), at.At, out _) > 1)
        {
            // "with food": a manner of this one
            return null;
        }

        int end = at.At + 1;
        while (end < at.Parts.Count && !at.StartsSegment(end))
        {
            end++;
        }

        if (at.StartsSegment(at.At) && at.Word.Word == "water" && Head.Measure(at, at.At) is { Word.Word: "pee" } clumps)
        {
            // "drank 8 oz, 4 big clumps"
            at.StartParts(at.Parts[at.At..]);
            return clumps;
        }

        if (at.StartsSegment(at.At) && at.Word.Kind is WordKind.Vital or WordKind.Exam && Head.Measure(at, at.At) is { Word.Kind: WordKind.Vital } measure && measure.Word != at.Word && at.First<NoteValue>() is not null | at.Word.Kind == WordKind.Exam && !remarks.Compares(at.At))
        {
            // "T 38.9, 28.4kg"
            at.StartParts(at.Parts[at.At..]);
            return measure;
        }

        if ((joined || at.StartsSegment(at.At)) && Head.Dose(at, at.At) is { } dose)
        {
            // "BG 388, ate 100%, insulin 7u"
            at.StartParts(at.Parts[at.At..]);
            return dose;
        }

        if (at.Word.Has(SlotKind.Portion) && at.First<NoteValue>() is Portion && at.Phrase(at.Vocabulary.Portions, at.At, out _) > 0)
        {
            // "ate all her breakfast, half her dinner"
            at.StartParts(at.Parts[at.At..]);
            return head with { Lead = null, Line = 0, Negation = null };
        }

        if (SiteSlots.KindOf(at.Word) is not null && at.Get<Site>(SlotKind.Site) is null && (end == at.Parts.Count || at.Word.Kind == WordKind.Vital || !at.Word.Has(SlotKind.Words))
            && at.At + at.Phrase(at.Vocabulary.Regions, at.At, out _) == end)
        {
            // "girth 56cm, chest": nothing but a place, and the present one has none yet
            return null;
        }

        if (at.StartsSegment(at.At) && at.Parts[at.At].Kind == PartKind.Number && at.Parts[at.At] is NumberPart { BoundSpan.Length: 0, First.Unit.Length: 0, Second.Unit.Length: 0, Third.Exists: false })
        {
            // "incision 11cm, 12/12 staples in", "tired, 2 big poos"
            int behind = at.At + (Head.At(at, at.At + 1, out _) is null && at.IsWord(at.At + 1) && at.IsWord(at.At + 2) && at.Vocabulary.IsDescribing(at.TextAt(at.At + 1).ToString()) ? 2 : 1);
            if (behind < end && Head.At(at, behind, out int named) is { Word.Kind: WordKind.Care } number && number.Word != at.Word && (number.Word.Has(SlotKind.Times) || number.Word.Has(SlotKind.Count)))
            {
                return Start(number, behind, named);
            }
        }

        Head? start = Head.AtWithNegation(at, at.At, out int count, first: at.StartsSegment(at.At));
        if (at.Word.Has(SlotKind.Medicine) && at.First<FreeWords>() is not null && Joins.MedicineStarts(at, at.At))
        {
            at.StartParts(at.Parts[at.At..]);
            return head with { Lead = null, Line = 0, Negation = null };
        }

        if (start is { } ends && TellsOfThis(ends, at.At + count))
        {
            return null;
        }

        if (start is { Lead: null } found && IsObservation(found.Word))
        {
            int sign = at.At + (found.Negation is null ? 0 : Modifiers.At(at, at.At)!.Value.Count);
            int known = Math.Max(Math.Max(WordSlots.SignLength(at, sign), WordSlots.SignLength(at, at.At) - (sign - at.At)), at.Phrase(at.Vocabulary.States(StateSlots.ScopeOf(at)), sign, out _));
            bool counted = Enumerable.Range(at.At, end - at.At).TakeWhile(index => !at.Is(index, "since")).Any(index => at.Parts[index].Kind == PartKind.Number || at.Vocabulary.TimesWords.Find(at.TextAt(index)) is not null);
            // "ate all, stool firm": with a sign of its own it was not eaten
            bool described = at.StartsSegment(at.At) && at.At + count < end && at.Phrase(at.Vocabulary.Describing(found.Word), at.At + count, out DescribingWord? its) > 0 && its!.Part != "any";
            return known > 0 && !counted && !described ? null : Start(found, at.At, count);
        }

        if (start is { Lead: not null, Negation: null } phrase && IsObservation(phrase.Word)
            && (count > 1 ? WordSlots.SignLength(at, at.At) < count
                : SiteSlots.KindOf(at.Word) is null && SiteSlots.KindOf(phrase.Word) is not null && at.StartsSegment(at.At) && at.At + count < at.Parts.Count && at.Phrase(at.Vocabulary.Sides, at.At + count, out _) > 0))
        {
            // "gums pink, left ear red": the phrase names its own line, before its words are taken for a place
            return Start(phrase, at.At, count);
        }

        if (start is { Lead.Means: LeadMeans.Sign, Negation: not null } absent && IsObservation(absent.Word) && absent.Word != at.Word && count > LongPhrase && at.StartsSegment(at.At))
        {
            // "no open mouth breathing": the phrase, and not the word at its end
            return Start(absent, at.At, count);
        }

        // "left eye red, right ear smells": the place comes before the word
        for (int index = at.At + 1; start is null && (at.Filled.Count > 0 || at.Remark.Count > 0) && index < end; index++)
        {
            if (Head.At(at, index, out count) is { Lead: not null } sign && (count > 1 || (!sign.Word.Has(SlotKind.Medicine) && WordSlots.SignLength(at, index) == 0 && at.Phrase(at.Vocabulary.States(StateSlots.ScopeOf(at)), index, out _) == 0)) && IsObservation(sign.Word) && sign.Word != at.Word && OnlyDegrees(at.At, index))
            {
                // "tartar, a bit of bad breath"
                return Start(sign, index, count);
            }

            if (index + 1 <= end && Head.At(at, index, out count) is { Lead: null, Word.Kind: WordKind.Exam } from && from.Word != at.Word && index + count == end && at.At + WordSlots.SignLength(at, at.At + (Modifiers.At(at, at.At)?.Count ?? 0)) + (Modifiers.At(at, at.At)?.Count ?? 0) == index - 1 && (at.Is(index - 1, "from") || at.Is(index - 1, "in") || at.Is(index - 1, "on")))
            {
                // "ears clean, no discharge from nose"
                at.Mark(TokenKind.Filler, at.Parts[index - 1].Span);
                at.Mark(TokenKind.LineWord, from.Span);
                at.StartParts((Part[])[.. at.Parts.Slice(at.At, index - 1 - at.At), .. at.Parts.Slice(index + count)]);
                return from;
            }

            if (Head.At(at, index, out count) is { Lead: null } behind && IsObservation(behind.Word) && !TellsOfThis(behind, index + count) && at.Phrase(at.Vocabulary.States(StateSlots.ScopeOf(at)), index, out _) == 0 && OnlyPlaces(at.At, index))
            {
                // "girth 56cm, mid chest": nothing but a place, and the present one has none yet
                bool place = SiteSlots.KindOf(at.Word) is not null && index + at.Phrase(at.Vocabulary.Regions, index, out _) == end;
                return (place || behind.Word == head.Word || (at.Word.Kind == WordKind.Scan && at.Phrase(at.Vocabulary.Regions, index, out _) > 0)) && at.Get<Site>(SlotKind.Site) is null ? null : Start(behind, index, count);
            }
        }

        return null;
    }

    /// <summary>The next part of a list that is ok as a whole: <c>eyes, ears and nose ok</c>, <c>mouth teeth all fine</c>; null where there is none.</summary>
    public Head? ListedPart()
    {
        if (at.Word.Kind != WordKind.Exam || at.At > 0 || at.Filled.Count > 0)
        {
            return null;
        }

        Head? next = null;
        int first = 0;
        for (int index = 0; index < at.Parts.Count;)
        {
            if (at.Phrase(at.Vocabulary.Ok, index, out _) is > 0 and var ok)
            {
                return next is { } listed && (index + ok == at.Parts.Count || at.StartsSegment(index + ok)) ? Start(listed, first, 1) : null;
            }

            int count = Head.At(at, index, out int named) is { Lead: null, Word.Kind: WordKind.Exam } part ? named : 0;
            if (count > 0 && next is null)
            {
                (next, first) = (Head.At(at, index, out _), index);
            }

            count = count > 0 ? count : at.Is(index, "all") ? 1 : at.Phrase(at.Vocabulary.Small, index, out ModifierWord? small) is > 0 and var joined && small!.Kind is ModifierKind.JoinsAnd or ModifierKind.Filler && small.Word is not ("but" or "though") ? joined : 0;
            if (count == 0)
            {
                return null;
            }

            index += count;
        }

        return null;
    }

    /// <summary>
    /// The same observation once more, where a second value of it starts: <c>SRR 22, 20, 23</c>, <c>17/30s, again 16/30s</c>,
    /// <c>ate half of her breakfast and none of her dinner</c>, <c>call-if BG &lt;4 or &gt;25</c>. Null where none does.
    /// </summary>
    public Head? SameAgain(Head head)
    {
        if ((at.InRemark && !at.Word.Has(SlotKind.Portion)) || at.Blocked || at.First<NoteValue>() is not { } before)
        {
            return null;
        }

        int joined = Joins.Joining(at, at.At);
        bool side = at.Word.Kind == WordKind.Vital && at.Holds(SlotKind.Site) && at.Phrase(at.Vocabulary.Sides, at.At + joined, out _) is > 0 and var sides
            && at.At + joined + sides < at.Parts.Count && at.Parts[at.At + joined + sides].Kind == PartKind.Number;
        if (joined == 0 && !side && !at.StartsSegment(at.At))
        {
            return null;
        }

        int index = at.At + joined;
        if (index < at.Parts.Count && at.Line[Math.Max(0, at.Parts[index].Span.Start - 1)] == '(' && remarks.Compares(index))
        {
            // "156 (178 three weeks ago)"
            return null;
        }

        if (at.Word.Has(SlotKind.Limit) && joined > 0 && index < at.Parts.Count && at.Parts[index] is NumberPart { BoundSpan.Length: > 0 })
        {
            int number = Enumerable.Range(0, at.At).First(part => at.Parts[part].Span.Start >= before.Span.Start);
            at.Mark(TokenKind.Filler, at.Part.Span);
            at.StartParts((Part[])[.. at.Parts[..number], .. at.Parts[index..]]);
            return head with { Lead = head.Lead, Line = 0 };
        }

        if (at.Word.Has(SlotKind.Portion) && !at.Word.Has(SlotKind.FoodName) && (before is Portion ? at.Phrase(at.Vocabulary.Portions, index, out _) > 0 : Joins.IsAmountAhead(at, index)))
        {
            Leave(index);
            return head with { Lead = null, Line = 0, Negation = null };
        }

        if (at.Word.Kind != WordKind.Vital)
        {
            return null;
        }

        if (side)
        {
            // "thigh circ R 34cm L 37.5cm"
            Leave(index);
            return head with { Line = 0, Negation = null };
        }

        if (at.Times.Count > 0 && index < at.Parts.Count && at.Parts[index] is NumberPart
            && (TimeReader.Within(at, index + 1, out _) is not null || (at.IsWord(index + 1) && TimeReader.Within(at, index + 2, out _) is not null)))
        {
            // "glucose 8.1 at noon and 11.4 at 5 pm"
            Leave(index);
            return head with { Lead = null, Line = 0, Negation = null };
        }

        if (!at.Word.Has(SlotKind.Rate))
        {
            return null;
        }

        int words = at.Phrase(at.Vocabulary.Fixed("repeated"), index, out _);
        index += words;
        if (words > 0 && before is CountOverTime && index < at.Parts.Count && at.Parts[index] is NumberPart { Second.Exists: false, First.Unit.Length: 0 } alone)
        {
            at.Report(new Problem(ProblemRules.MissingUnit, alone.Span, $"`{at.TextOf(alone)}`: over how many seconds? Write each count with its seconds: 15/30s, 14/30s."));
            return null;
        }

        if (index >= at.Parts.Count || at.Parts[index] is not NumberPart { Second: var second, First.Unit.Length: 0 } next || second.Exists != before is CountOverTime
            || (second.Exists ? second.Sign(at.Line) != '/' || second.Unit.Length == 0 : index + 1 < at.Parts.Count && at.Parts[index + 1].Kind != PartKind.Unreadable && !at.StartsSegment(index + 1)))
        {
            return null;
        }

        if (at.Digits(next.First.Digits) is null)
        {
            return null;
        }

        Leave(index);
        return head with { Negation = null };

        void Leave(int start)
        {
            if (start > at.At)
            {
                at.Mark(TokenKind.Filler, at.SpanOf(at.At, start - at.At));
            }

            at.StartParts(at.Parts[start..]);
        }
    }

    /// <summary>The <c>anus</c> of <c>skip tail, anus</c>: another part that was not examined, where its name stands alone.</summary>
    public Head? AlsoSkipped(Head head)
    {
        int index = at.At + (at.Is(at.At, "and") || at.Is(at.At, "&") ? 1 : 0);
        if (at.Word.Kind != WordKind.Skip || at.About is null || (index == at.At && !at.StartsSegment(index))
            || Head.At(at, index, out int count) is not { Lead: null, Word.Kind: WordKind.Vital or WordKind.Exam or WordKind.Scan }
            || !(index + count == at.Parts.Count || at.StartsSegment(index + count) || at.Is(index + count, "and")))
        {
            return null;
        }

        at.Mark(TokenKind.Filler, TextSpan.Between(at.Part.Span.Start, at.Parts[index].Span.Start));
        at.StartParts(at.Parts[index..]);
        return head with { Lead = null, Line = 0, Negation = null };
    }

    /// <summary>True for <c>ate half, rest by hand</c>.</summary>
    private bool RestOfMeal() => at.Word.Has(SlotKind.Portion) && Enumerable.Range(at.At, at.Parts.Count - at.At).SkipWhile(index => at.Vocabulary.Small.Find(at.TextAt(index)) is not null).Take(1).Any(index => at.Is(index, "rest"));

    /// <summary>The next fact of <c>dog, cockapoo, female, spayed, born 2017</c>: with its word, by its value, or the breed in words that mean nothing else.</summary>
    private Head? Signalment()
    {
        if (Head.At(at, at.At, out int count) is { Word.Kind: WordKind.Fact } written && !written.Word.Has(SlotKind.Medicine) && !written.Word.Has(SlotKind.Vital))
        {
            return written.Word == at.Word ? null : Start(written, at.At, count);
        }

        if (at.Part.Span.Start > 0 && at.Line[at.Part.Span.Start - 1] == '(')
        {
            // "born about 2021 (shelter guess)": a remark on the fact before
            return null;
        }

        Head? fact = Head.Fact(at, at.At) ?? (FactSlots.IsSignalment(at.Word) ? Head.Breed(at, at.At) : null);
        if (fact is null || fact.Value.Word == at.Word)
        {
            return null;
        }

        at.StartParts(at.Parts[at.At..]);
        return fact;
    }

    /// <summary>The next task: <c>recheck wound in 10d, heartworm test due 2026-04-06</c>; null where none is named with its day.</summary>
    private Head? Task()
    {
        if (Head.At(at, at.At, out int count) is { Word.Kind: WordKind.Task } own)
        {
            return Start(own, at.At, count);
        }

        for (int index = at.At + 1; index + 1 < at.Parts.Count && !at.StartsSegment(index); index++)
        {
            if (at.Is(index, "due") && (ScheduleSlots.Starts(at, index + 1) || Dates.Starts(at, index + 1, yearless: true)))
            {
                return Start(new Head(at.Vocabulary.LineWords.Find("due")!, at.Parts[index].Span), index, 1);
            }
        }

        return null;
    }

    /// <summary>The head of another observation at a part that fits no slot of the present one.</summary>
    public Head? Another(bool joined)
    {
        bool segment = joined || at.StartsSegment(at.At);
        if (RestOfMeal() || at.Word.Kind is WordKind.Fact or WordKind.Task or WordKind.Skip || at.InRemark
            || Head.AtWithNegation(at, at.At, out int count, first: at.StartsSegment(at.At)) is not { } found || !IsObservation(found.Word) || TellsOfThis(found, at.At + count))
        {
            return null;
        }

        if (!segment && found.Word == at.Word && at.Word.Kind == WordKind.Vital && found.Lead is not null && at.First<NoteValue>() is not null)
        {
            // "bp 156 systolic": says what it is once more
            return null;
        }

        if (found.Negation is not null && WordSlots.SignLength(at, at.At + Modifiers.At(at, at.At)!.Value.Count) > 0)
        {
            // "vomit, no blood": the negation belongs to a sign of this one
            return null;
        }

        int behind = at.At + count;
        bool number = behind < at.Parts.Count && at.Parts[behind].Kind == PartKind.Number && !(at.StartsSegment(behind) && Head.Dose(at, behind) is not null) && found.Word.Kind is WordKind.Vital or WordKind.Care;
        ReadOnlySpan<char> text = at.TextAt(at.At);
        bool short_ = found.Lead is not null && (text.IndexOfAnyExceptInRange('A', 'Z') < 0 || text[^1] is '+' or '-');
        bool vital = found.Word.Kind == WordKind.Vital && found.Lead is null && at.Word.Kind is WordKind.Vital or WordKind.Exam;
        bool seen = found.Lead is null && found.Word.Kind == WordKind.Exam && at.Word.Kind is WordKind.Vital or WordKind.Care && !at.Word.Has(SlotKind.Medicine) && (at.First<NoteValue>() is not null || at.PresentSign() is not null)
            && !Enumerable.Range(1, at.At).Any(at.StartsSegment) && at.Phrase(at.Vocabulary.Describing(found.Word), behind, out _) > 0; // "rr 5/15s asleep gums pink"
        return segment || found.Negation is not null || short_ || seen || ((at.At > 0 || at.Filled.Count > 0) && (number || vital)) ? Start(found, at.At, count) : null;
    }

    /// <summary>True for the <c>has stopped</c> of <c>has stopped stealing food</c>, which ends no medicine, and for the <c>much better</c> of <c>bp 152, much better</c>.</summary>
    private bool TellsOfThis(Head head, int behind) => (head.Word.Word == "stop" && at.Phrase(at.Vocabulary.Medicines, behind, out _) == 0) || head.Lead is { Lines: [{ Words: ["better"] }] };

    private static bool IsObservation(LineWord word) => word.Kind is WordKind.Vital or WordKind.Exam or WordKind.Scan or WordKind.Care or WordKind.Act
        || (word.Kind == WordKind.Task && word.Word == "done");

    private bool OnlyDegrees(int from, int to)
    {
        while (from < to)
        {
            int count = at.Phrase(at.Vocabulary.Small, from, out _);
            count = count > 0 ? count : at.Phrase(at.Vocabulary.Describing(at.Word), from, out DescribingWord? word) is > 0 and var degree && word!.IsDegree ? degree : 0;
            if (count == 0)
            {
                return false;
            }

            from += count;
        }

        return true;
    }

    private bool OnlyPlaces(int from, int to)
    {
        for (int index = from; index < to;)
        {
            int count = Math.Max(at.Phrase(at.Vocabulary.Sides, index, out _), at.Phrase(at.Vocabulary.Small, index, out _));
            if (count == 0)
            {
                return false;
            }

            index += count;
        }

        return true;
    }

    /// <summary>Takes the head at <paramref name="index"/> out of the parts, so that what stands before it is read with what stands behind it.</summary>
    private Head Start(Head head, int index, int count)
    {
        if (head.Negation is { } negation)
        {
            at.Mark(TokenKind.Keyword, negation.Span);
        }

        at.Mark(TokenKind.LineWord, head.Span);
        at.StartParts((ArraySegment<Part>)(Part[])[.. at.Parts.Slice(at.At, index - at.At), .. at.Parts.Slice(index + count)]);
        return head;
    }
}
