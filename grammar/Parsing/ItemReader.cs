using System.Collections.Immutable;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Slots;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Text;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Grammar.Parsing;

/// <summary>
/// Reads the observations of one line: each part goes to the slot of the table that it fits, in any order. A word of another line
/// begins another observation; what fits nothing is a remark where the word takes one, else a problem at exactly its characters.
/// </summary>
internal sealed partial class ItemReader(Cursor at)
{
    private readonly List<Draft> drafts = new(2);
    private const int MostBeforeTime = 3;
    private FreeWords? due;

    /// <summary>Reads from the cursor to the end of the line. The items count only where the cursor holds no problem.</summary>
    public ImmutableArray<NoteItem> Read(Head head, TimeOnly? time)
    {
        drafts.Clear();
        due = null;
        Head? next = head;
        int start = at.At;
        ArraySegment<Part> all = at.Parts;
        while (next is { } now)
        {
            if (now.Lead is { Lines.Length: 3 } && all is [NumberPart { Third.Exists: true } three, ..])
            {
                // TPR 38.4/192/30
                Operand operand = now.Line switch { 0 => three.First, 1 => three.Second, _ => three.Third };
                var span = TextSpan.Between(operand.Digits.Start, Math.Max(operand.Digits.End, operand.Unit.End));
                at.StartParts((Part[])[new NumberPart(span, default, operand with { SignSpan = default }, default, default), .. all[1..]]);
            }

            ArraySegment<Part> parts = at.Parts;
            next = ReadOne(now);
            if (now.Lead is { } lead && now.Line + 1 < lead.Lines.Length)
            {
                // V/D/C/S none: what follows is said of each
                at.StartParts(parts);
                at.At = start;
                next = now with { Line = now.Line + 1, Word = at.Vocabulary.LineWords.Find(lead.Lines[now.Line + 1].Word)! };
            }

            start = at.At;
        }

        for (int index = 0; index < drafts.Count && at.Problems.Count == 0; index++)
        {
            Complete(index);
        }

        return at.Problems.Count > 0 ? [] : drafts.Count == 1 && drafts[0].Times.Count <= 1
            ? Build(drafts[0], drafts[0].Times is [var own] ? own : time) is { } only ? [only] : []
            : [.. drafts.SelectMany(draft => draft.Times.Count == 0 ? [Build(draft, time)] : draft.Times.Select(each => Build(draft, each))).OfType<NoteItem>()];
    }

    /// <summary>Reads one observation, and gives back the head of the next; null at the end of the line.</summary>
    private Head? ReadOne(Head head)
    {
        at.StartItem(head.Word, head.Span);
        ImmutableArray<SlotReader> slots = SlotTable.For(head.Word);
        bool none = Imply(head);
        if (head.Word.Has(SlotKind.Text))
        {
            // behind a phrase for an act the phrase itself is what was done
            bool own = head.Lead is not null && head.Word.Word == "done";
            if (TextSlots.Rest(at, own ? head.Span.Start : head.Span.End, TokenKind.Text) is { } text)
            {
                at.Add(SlotKind.Text, text);
            }

            at.At = at.Parts.Count;
        }
        else if (head.Word.Has(SlotKind.File))
        {
            TextSlots.File(at, head.Span.End);
            at.At = at.Parts.Count;
        }
        else if (at.Word.Word is "gave" && Modifiers.At(at, at.At) is { Word.Kind: ModifierKind.Absent } no)
        {
            // "gave no carprofen"
            at.Mark(TokenKind.Keyword, at.SpanOf(at.At, no.Count));
            at.At += no.Count;
            return ReadOne(head with { Word = at.Vocabulary.LineWords.Find("missed")! });
        }

        Head? next = Bind(head, slots, ref none);
        if (due is null)
        {
            Finish(head, none);
        }

        return next;
    }

    private Head? Bind(Head head, ImmutableArray<SlotReader> slots, ref bool none)
    {
        ModifierWord? joined = null;
        while (at.HasPart)
        {
            if (at.StartsSegment(at.At))
            {
                at.InRemark = false;
            }

            if (SiteSlots.StartsSecond(at))
            {
                return head with { Lead = null, Line = 0, Negation = null };
            }

            if ((joined is not null || at.StartsSegment(at.At)) && AnotherAtSegment(head) is { } other)
            {
                return Negated(head, other, joined);
            }

            if (at.At == 0 && at.BehindSign < 0 && NoneBehindHead(ref none))
            {
                continue;
            }

            if (at.Word.Kind == WordKind.Act && at.Is(at.At, "due"))
            {
                if (Due(head) is { } due)
                {
                    return due;
                }

                continue;
            }

            if (!TakesRest() && Modifiers.At(at, at.At) is { Count: > 1 } no && no.Count > WordSlots.SignLength(at, at.At) && Modifiers.BindBefore(at))
            {
                // "free of", "can't see any": longer than the sign that starts so
                continue;
            }

            if (Modifiers.BindAfter(at) || BindSlot(slots))
            {
                joined = null;
                continue;
            }

            if (!TakesRest() && Another(joined is not null) is { } another)
            {
                return Negated(head, another, joined);
            }

            if (!TakesRest() && Modifiers.BindBefore(at))
            {
                continue;
            }

            if (!at.InRemark && !TakesRest() && Modifiers.BindSmall(at, out joined))
            {
                continue;
            }

            joined = null;
            if (at.Word.Has(SlotKind.Note) && !at.Blocked && MayRemark())
            {
                Remark();
                continue;
            }

            at.Report(Refusals.Of(at, at.Part));
            at.Taken(TokenKind.Unknown);
        }

        return null;
    }

    /// <summary>
    /// True where words without a meaning may be a remark: a task needs its item and its day first, and what looks like a number is
    /// none while the value of a vital is still to come.
    /// </summary>
    private bool MayRemark() => at.Word.Kind switch
    {
        WordKind.Skip => at.About is not null,
        WordKind.Task => at.First<Schedule>() is not null,
        WordKind.Vital => at.First<NoteValue>() is not null || !(at.Part.Kind is PartKind.Number or PartKind.Unreadable && Scanners.IsDigit(at.TextOf(at.Part)[0])),
        _ => true,
    };

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

        if (at.Part.Kind == PartKind.Word && at.Phrase(at.Vocabulary.Bounds, at.At, out FixedWord? bound) is > 0 and var words
            && at.At + words < at.Parts.Count && at.Parts[at.At + words] is NumberPart { BoundSpan.Length: 0 } && !at.InRemark && !at.Blocked)
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

        if (at.Part.Kind == PartKind.Unreadable)
        {
            return false;
        }

        if (Numbers.TimeOfDay(at))
        {
            return true;
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

    /// <summary>True for lines whose remark runs to the end, whatever words are in it: reasons, and what is told of a dose.</summary>
    private bool TakesRest() => at.Word.Has(SlotKind.Note)
        && ((at.Word.Kind == WordKind.Skip && at.About is not null)
            || (at.Word.Has(SlotKind.Rule) && at.First<Schedule>()?.Until is not null)
            || (at.Word.Has(SlotKind.Medicine) && at.Word.Kind == WordKind.Care && at.First<FreeWords>() is not null && !StartsOtherDose()));

    private bool StartsOtherDose() => at.StartsSegment(at.At) && Head.At(at, at.At, out _) is { Word.Kind: WordKind.Care or WordKind.Vital or WordKind.Exam, Lead: null };

    /// <summary><c>cough none</c>, <c>seizure gone</c>: behind the bare word itself, where it has no such word of its own.</summary>
    private bool NoneBehindHead(ref bool none)
    {
        if (at.Word.Kind is not (WordKind.Care or WordKind.Scan) || at.Word.Has(SlotKind.Medicine) || at.Filled.Count > 0
            || at.Phrase(at.Vocabulary.After, 0, out ModifierWord? word) is not (> 0 and var count)
            || (Modifiers.NeedsEnd(word!) && count < at.Parts.Count && !at.StartsSegment(count))
            || (at.Phrase(at.Vocabulary.Describing(at.Word), 0, out DescribingWord? sign) > 0 && sign!.Part != "any")
            || (word!.Kind == ModifierKind.AbsentAfter && (WordSlots.StartsSign(at, 0) || (at.Word.Has(SlotKind.Portion) && at.Vocabulary.Portions.Find(at.TextAt(0)) is not null)))
)
        {
            return false;
        }

        at.Mark(TokenKind.Keyword, at.SpanOf(0, count));
        if (word.Kind == ModifierKind.EndedAfter)
        {
            Over(at.SpanOf(0, count));
        }

        at.At = count;
        none = true;
        return true;
    }

    /// <summary>Says of the whole observation that it is over.</summary>
    private void Over(TextSpan span)
    {
        string written = at.WithSingleBlanks(span);
        bool known = at.Vocabulary.Describing(at.Word).Find(written) is { Part: "any" };
        DescribingWord gone = known ? at.Vocabulary.Describing(at.Word).Find(written)! : at.Vocabulary.Describing(at.Word).Find("gone")!;
        at.Add(SlotKind.Words, new Described(gone, span, known ? written : gone.Word));
    }

    /// <summary>The same head, negated where <c>or</c> carries a negation on. After a comma a bare word may be meant either way, which is reported.</summary>
    private Head Negated(Head head, Head next, ModifierWord? joined)
    {
        if (head.Lead is not null && joined is { Kind: ModifierKind.JoinsAnd, Word: not ("but" or "though") } && next.Negation is null
            && at.Vocabulary.Before.Find(head.Span.In(at.Line).ToString().Split(' ')[0]) is not null)
        {
            at.Report(new Problem(ProblemRules.OpenNegation, next.Span,
                $"`{head.Span.In(at.Line)}` may or may not reach `{next.Span.In(at.Line)}`. Write each on a line of its own."));
        }

        if (head.Negation is not { Modifier.NegatesLists: true } negation || next.Negation is not null)
        {
            return next;
        }

        bool bare = !at.HasPart || at.StartsSegment(0) || at.Phrase(at.Vocabulary.Small, 0, out ModifierWord? small) > 0 && small!.Kind == ModifierKind.JoinsOr;
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

    /// <summary>An act that is still to come: <c>vaccine lepto due in 4 weeks</c>. Behind a date it says until when the act holds.</summary>
    private Head? Due(Head head)
    {
        if (at.First<Schedule>() is { On: not null } && at.At + 1 < at.Parts.Count)
        {
            TextSpan keyword = at.Part.Span;
            at.Taken(TokenKind.Keyword);
            if (at.Part is NumberPart part && Dates.LooksLikeDate(at, part))
            {
                PartialDate? until = Dates.Take(at, part);
                at.Set(SlotKind.Validity, at.First<Schedule>()! with { Until = until });
            }
            else
            {
                at.Report(new Problem(ProblemRules.Missing, keyword, "`due` needs a date behind it, such as due 2029-11-01"));
            }

            return null;
        }

        var topic = TextSpan.Between(head.Span.Start, at.At > 0 ? at.Parts[at.At - 1].Span.End : head.Span.End);
        at.Mark(TokenKind.Keyword, at.Part.Span);
        at.At++;
        due = new FreeWords(topic, at.WithSingleBlanks(topic));
        return head with { Word = at.Vocabulary.LineWords.Find("due")!, Lead = null, Line = 0 };
    }

    /// <summary>Puts in what the phrase implies, negated where a negation stands before it. True where the observation itself is negated.</summary>
    private bool Imply(Head head)
    {
        Pending? negation = head.Negation;
        bool signs = false;
        if (due is not null)
        {
            at.Add(SlotKind.Topic, due);
            due = null;
        }

        Sense sense = negation?.Sense ?? Sense.Present;
        foreach (string word in head.Implied)
        {
            if (at.Vocabulary.Ok.Find(word) is { } ok && at.Word.Has(SlotKind.Ok) | at.Word.Has(SlotKind.Words) && at.Vocabulary.Describing(at.Word).Find(word) is null)
            {
                at.Set(SlotKind.Ok, ok);
            }
            else if (at.Word.Has(SlotKind.Words) && WordSlots.AddImplied(at, word, head.Span, sense))
            {
                signs = true;
                at.BehindSign = at.At;
            }
            else if (at.Word.Has(SlotKind.Portion) && at.Vocabulary.Portions.Find(word) is { } part)
            {
                at.Add(SlotKind.Portion, WordSlots.PortionOf(part, head.Span));
            }
            else if (at.Vocabulary.Sides.Find(word) is { } side)
            {
                at.Set(SlotKind.Site, new Site(head.Span, Enum.Parse<Side>(side.Word, ignoreCase: true), null, null));
            }
            else if (at.Vocabulary.States(StateSlots.ScopeOf(at)).Find(word) is { } state)
            {
                StateSlots.Keep(at, state, head.Span);
            }
            else if (at.Word.Has(SlotKind.Sex))
            {
                SexWords known = at.First<SexWords>() ?? new SexWords(null, null);
                at.Set(SlotKind.Sex, at.Vocabulary.Fixed("sex").Find(word) is { } sex ? known with { Male = sex.Word == "male" } : known with { Neutered = word == "neutered" });
            }
            else if (at.Word.Has(SlotKind.Topic) || at.Word.Has(SlotKind.Analyte))
            {
                SlotKind name = at.Word.Has(SlotKind.Topic) ? SlotKind.Topic : SlotKind.Analyte;
                at.Set(name, new FreeWords(head.Span, at.Get<FreeWords>(name) is { } before ? $"{before.Text} {word}" : word));
            }
        }

        if (signs && negation is not null && at.Word.Kind == WordKind.Exam)
        {
            Modifiers.AfterSign(at, negation with { OfHead = false });
        }
        else if (negation is { Sense: Sense.Ended } && at.Word.Kind is WordKind.Care or WordKind.Scan && !signs)
        {
            Over(negation.Span);
        }

        bool none = head.Lead?.Means == LeadMeans.None && !signs && at.Filled.Count == 0;
        if (negation is not null && !(signs && at.Word.Kind == WordKind.Exam))
        {
            at.Pending = negation;
            none = at.Word.Kind is WordKind.Care or WordKind.Scan;
        }

        return none;
    }

    /// <summary>
    /// The head of another observation at the start of a stretch between commas. A word that the present observation knows as a
    /// sign stays with it where it stands alone: <c>vomit 2x, food</c>; <c>walk 20min, coughed twice</c> is two observations.
    /// </summary>
    private Head? AnotherAtSegment(Head head)
    {
        bool plan = at.Word.Has(SlotKind.Medicine) && at.Word.Kind == WordKind.Fact;
        if (at.Word.Kind is WordKind.Task or WordKind.Skip or WordKind.Picture || (at.Word.Kind == WordKind.Fact && !plan) || (TakesRest() && !MedicineStarts(at.At)))
        {
            return null;
        }

        int end = at.At + 1;
        while (end < at.Parts.Count && !at.StartsSegment(end))
        {
            end++;
        }

        Head? start = Head.AtWithNegation(at, at.At, out int count, first: at.StartsSegment(at.At));
        if (at.Word.Has(SlotKind.Medicine) && at.First<FreeWords>() is not null && MedicineStarts(at.At))
        {
            at.StartParts(at.Parts[at.At..]);
            return head with { Lead = null, Line = 0, Negation = null };
        }

        if (start is { Lead: null } found && IsObservation(found.Word))
        {
            int sign = at.At + (found.Negation is null ? 0 : Modifiers.At(at, at.At)!.Value.Count);
            int known = Math.Max(WordSlots.SignLength(at, sign), at.Phrase(at.Vocabulary.States(StateSlots.ScopeOf(at)), sign, out _));
            bool counted = Enumerable.Range(at.At, end - at.At).Any(index => at.Parts[index].Kind == PartKind.Number || at.Vocabulary.TimesWords.Find(at.TextAt(index)) is not null);
            return known > 0 && !counted ? null : Start(found, at.At, count);
        }

        // "left eye red, right ear smells": the place comes before the word
        for (int index = at.At + 1; start is null && index < end; index++)
        {
            if (Head.At(at, index, out count) is { Lead: null } behind && IsObservation(behind.Word) && OnlyPlaces(at.At, index))
            {
                return behind.Word == head.Word && at.Get<Site>(SlotKind.Site) is null ? null : Start(behind, index, count);
            }
        }

        return null;
    }

    /// <summary>The head of another observation at a part that fits no slot of the present one.</summary>
    private Head? Another(bool joined)
    {
        bool segment = joined || at.StartsSegment(at.At);
        if (at.Word.Kind is WordKind.Fact or WordKind.Task or WordKind.Skip || at.InRemark
            || Head.AtWithNegation(at, at.At, out int count, first: at.StartsSegment(at.At)) is not { } found || !IsObservation(found.Word))
        {
            return null;
        }

        if (found.Negation is not null && WordSlots.SignLength(at, at.At + Modifiers.At(at, at.At)!.Value.Count) > 0)
        {
            // "vomit, no blood": the negation belongs to a sign of this one
            return null;
        }

        int behind = at.At + count;
        bool number = behind < at.Parts.Count && at.Parts[behind].Kind == PartKind.Number && found.Word.Kind is WordKind.Vital or WordKind.Care;
        ReadOnlySpan<char> text = at.TextAt(at.At);
        bool short_ = found.Lead is not null && (text.IndexOfAnyExceptInRange('A', 'Z') < 0 || text[^1] is '+' or '-');
        bool vital = found.Word.Kind == WordKind.Vital && found.Lead is null && at.Word.Kind is WordKind.Vital or WordKind.Exam;
        return segment || found.Negation is not null || short_ || ((at.At > 0 || at.Filled.Count > 0) && (number || vital)) ? Start(found, at.At, count) : null;
    }

    private static bool IsObservation(LineWord word) => word.Kind is WordKind.Vital or WordKind.Exam or WordKind.Scan or WordKind.Care or WordKind.Act
        || (word.Kind == WordKind.Task && word.Word == "done");

    /// <summary>True where another medicine starts: <c>gave carprofen 75mg, gabapentin 100mg</c>.</summary>
    private bool MedicineStarts(int index) => at.Word.Has(SlotKind.Medicine) && at.IsWord(index) && at.StartsSegment(index)
        && (at.Phrase(at.Vocabulary.Medicines, index, out _) > 0
            || (index + 1 < at.Parts.Count && at.Parts[index + 1] is NumberPart { First.Unit.Length: > 0 } number && !NameSlots.IsOrdinary(at.Vocabulary, at.TextAt(index).ToString())
                && at.Vocabulary.Units.Find(number.First.Unit.In(at.Line)) is { Word: "mg" or "ml" or "ug" }));

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

    /// <summary>Takes words without a meaning here as a remark, up to the next comma or the next sign; a reason runs to the end.</summary>
    private void Remark()
    {
        bool rest = TakesRest();
        int first = at.At;
        int end = first;
        do
        {
            Part part = at.Parts[end];
            if (at.Word.Kind == WordKind.Vital && part.Kind == PartKind.Word && at.Vocabulary.IsState(at.TextOf(part).ToString()))
            {
                at.Report(new Problem(ProblemRules.UnknownWord, part.Span, $"`{at.TextOf(part)}` does not go with {at.Word.Word}. Write {Refusals.Expected(at)}."));
            }
            else if (!rest && part.Kind == PartKind.Word && Slip(part) is { } nearest)
            {
                at.Report(new Problem(ProblemRules.UnknownWord, part.Span, $"`{at.TextOf(part)}` is not a word I know behind {at.Word.Word}. Did you mean `{nearest}`?", nearest));
            }

            end++;
        }
        while (end < at.Parts.Count && !(TimeReader.Within(at, end, out int count) is not null && (!rest || (at.Word.Word is "gave" or "missed" && end - first <= MostBeforeTime && OnlyTimes(end + count)))) && !MedicineStarts(end)
            && (rest || (!at.StartsSegment(end) && !WordSlots.StartsSign(at, end) && Modifiers.At(at, end) is null && !OpensSlot(end))));

        // brackets and marks that part nothing belong to the remark
        int start = at.Parts[first].Span.Start;
        while (at.Tokens.Count > 0 && at.Tokens[^1] is { Kind: TokenKind.Filler } filler && filler.Span.End <= start && TextSpan.Between(filler.Span.End, start).In(at.Line).IsWhiteSpace())
        {
            // "in the morning": the small words before a remark are part of it
            start = filler.Span.Start;
            at.Tokens.RemoveAt(at.Tokens.Count - 1);
        }

        while (start > 0 && !Scanners.IsBlank(at.Line[start - 1]) && !Scanners.IsSeparator(at.Line[start - 1]) && (at.Tokens.Count == 0 || at.Tokens[^1].Span.End < start))
        {
            start--;
        }

        int last = end;
        while (!rest && last - 1 > first && at.IsWord(last - 1) && at.Vocabulary.Small.Find(at.TextAt(last - 1)) is not null)
        {
            last--;
        }

        int stop = at.Parts[last - 1].Span.End;
        stop = rest && end == at.Parts.Count ? at.End : stop < at.End && at.Line[stop] is ')' or ']' ? stop + 1 : stop;
        var span = TextSpan.Between(start, stop);
        at.Mark(TokenKind.Text, span);
        at.Remark.Add(span);
        for (int index = last; index < end; index++)
        {
            at.Mark(TokenKind.Filler, at.Parts[index].Span);
        }

        at.At = end;
        at.InRemark = true;
    }

    /// <summary>True where nothing but times of day is left.</summary>
    private bool OnlyTimes(int index)
    {
        while (index < at.Parts.Count && TimeReader.Within(at, index, out int count) is not null)
        {
            index += count;
        }

        return index == at.Parts.Count;
    }

    /// <summary>True for a number with a unit that goes into a slot which is still empty: <c>belly lump under ribs 5mm</c>.</summary>
    private bool OpensSlot(int index) => at.First<NoteValue>() is null && at.Parts[index] is NumberPart { First.Unit.Length: > 0 } number
        && at.Vocabulary.Units.Find(number.First.Unit.In(at.Line)) is { } unit && unit.Quantity != Quantity.Time && Numbers.FitsAny(at, unit);

    /// <summary>The word that is one slip away from what was typed, when both are long enough for that to say something.</summary>
    private string? Slip(Part part) => part.Span.Length >= 4 ? Refusals.Slip(at, at.TextOf(part).ToString()) : null;

    private void Finish(Head head, bool none)
    {
        List<TextSpan> remark = at.Remark;
        if (at.Pending is { OfHead: true } && (none || at.Word.Kind is WordKind.Care or WordKind.Scan))
        {
            none = true;
            at.Pending = null;
        }

        Modifiers.Unused(at);
        EndsSign();
        if (remark.Count > 0)
        {
            string text = string.Join(", ", remark.Select(span => span.In(at.Line).ToString()));
            at.Add(SlotKind.Note, new FreeWords(TextSpan.Between(remark[0].Start, remark[^1].End), text));
        }
        else if (head.Lead is { Means: not LeadMeans.Plain } && (at.Word.Kind == WordKind.Skip || (at.Word.Word == "ate" && at.Vocabulary.Fixed("meal").Find(at.WithSingleBlanks(head.Span).Split(' ')[^1]) is not null)))
        {
            // "missed breakfast" says more than that nothing was eaten
            at.Add(SlotKind.Note, new FreeWords(head.Span, at.WithSingleBlanks(head.Span)));
        }

        if (at.Word.Has(SlotKind.Medicine) && at.Word.Kind == WordKind.Fact && AsWritten() is { } written)
        {
            FreeWords name = at.First<FreeWords>()!;
            at.StartItem(at.Word, at.HeadSpan);
            at.Add(SlotKind.Medicine, name);
            at.Add(SlotKind.Note, written);
        }

        if (at.Problems.Count == 0)
        {
            Check(none);
        }

        drafts.Add(new Draft(head, at.Word, at.Body(), none, at.Times.Count == 0 ? [] : [.. at.Times], at.Problems.Count == 0 && !none ? Refusals.Lacking(at) : null));
    }

    /// <summary>
    /// A <c>gone</c> that stands apart from its sign (<c>bloated earlier but gone now</c>) ends it where there is only one; where there
    /// are several, which of them is gone is not guessed. A lump that is gone is gone itself.
    /// </summary>
    private void EndsSign()
    {
        if (!at.SaysGone())
        {
            return;
        }

        List<Described> signs = [.. at.Filled.Select(slot => slot.Value).OfType<Described>().Where(sign => sign.Sense == Sense.Present)];
        if (at.Word.Kind is not (WordKind.Exam or WordKind.Care or WordKind.Vital) || signs.Find(sign => sign.Word is { Part: "any", Word: "gone" or "resolved" }) is not { } gone)
        {
            return;
        }

        signs.RemoveAll(sign => sign.Word.Part == "any");
        if (signs.Count > 1)
        {
            at.Report(new Problem(ProblemRules.OpenNegation, gone.Span, $"`{gone.Text}`: which of them is gone? Write it directly behind: {signs[0].Text} gone."));
        }
        else if (signs.Count == 1)
        {
            at.Exchange(signs[0], signs[0] with { Sense = Sense.Ended }, gone);
        }
    }

    /// <summary>The plan behind its medicine as it was written, where it holds steps or times that could not be worked out; else null.</summary>
    private FreeWords? AsWritten()
    {
        if (at.First<FreeWords>() is not { } name || at.Get<FreeWords>(SlotKind.Note) is not { } note)
        {
            return null;
        }

        bool open = at.First<Schedule>()?.Every is null || note.Text.Any(char.IsAsciiDigit) || note.Text.Split(' ', ',').Any(word => at.Vocabulary.Fixed("taper").Find(word) is not null);
        int start = Math.Min(at.End, name.Span.End);
        while (start < at.End && (Scanners.IsBlank(at.Line[start]) || Scanners.IsSeparator(at.Line[start])))
        {
            start++;
        }

        int stop = note.Span.End;
        return open && start < stop ? new FreeWords(TextSpan.Between(start, stop), at.Line[start..stop]) : null;
    }

    private void Check(bool none)
    {
        if (!MeasureSlots.SubjectFits(at) && at.First<NoteValue>() is { } value && at.About is { } about)
        {
            at.Report(Refusals.Subject(at, value.Span, value.Span, (value as ValueRange)?.Unit ?? (value as Limit)?.Unit, about));
        }

        if (none && at.First<NoteValue>() is { } counted)
        {
            at.Report(new Problem(ProblemRules.OpenNegation, counted.Span, $"`{counted.Span.In(at.Line)}` does not go with a negation. Write what happened, or that nothing did."));
        }

        if (at.Word.Kind == WordKind.Care && (none || at.First<EventCount>() is { Number: 0, Bound: Bound.Exact } || at.HasNone()) && at.PresentSign() is { } there)
        {
            at.Report(new Problem(ProblemRules.OpenNegation, there.Span, $"`{there.Text}` does not go with a negation. Write what happened, or that nothing did."));
        }

        if (at.Word.Has(SlotKind.Medicine) && at.Word.Kind == WordKind.Care && at.First<FreeWords>() is { } name)
        {
            string first = name.Text.Split(' ')[0];
            if (at.Vocabulary.NumberWords.Find(first) is not null)
            {
                at.Report(new Problem(ProblemRules.WrongValue, name.Span, $"`{name.Text}`: how much of it? Write the medicine, then the amount: gave carprofen 1/2 tablet"));
            }
            else if (NameSlots.IsOrdinary(at.Vocabulary, first) && !NameSlots.IsMedicine(at.Vocabulary, name.Text))
            {
                at.Report(new Problem(ProblemRules.UnknownWord, name.Span,
                    $"`{name.Text}` does not look like a medicine. Write {at.Word.Word} and the medicine's name; anything else goes on a line that starts with >."));
            }

            if (at.Get<FreeWords>(SlotKind.Note) is { } note && note.Text.Split(' ', ',').Any(word => (word.Length > 0 && char.IsLetter(word[0]) && at.Vocabulary.TimesWords.Find(word) is not null) || word is "2x" or "x2" or "3x" or "x3"))
            {
                at.Report(new Problem(ProblemRules.WrongValue, note.Span, $"`{note.Text}`: write one line a dose, each with its time, such as 08:00 gave {name.Text}"));
            }
            else if (at.Get<FreeWords>(SlotKind.Note) is { } more && more.Text.Split(' ', ',').FirstOrDefault(word => at.Vocabulary.Medicines.Find(word) is not null) is { } other)
            {
                at.Report(new Problem(ProblemRules.SaidTwice, more.Span, $"`{other}` is a second medicine. Write one medicine a line."));
            }
        }

        if (at.First<FreeWords>() is null)
        {
            return;
        }

        if ((at.Word.Kind == WordKind.Care || at.Word.Word == "done") && ShortDate() is { } date)
        {
            at.Report(new Problem(ProblemRules.BadDate, date, $"`{date.In(at.Line)}` can be read two ways. Write year-month-day, such as 2026-10-20."));
        }

        if (at.First<NoteValue>() is not null && at.Word.Kind == WordKind.Care && !at.Word.Has(SlotKind.Medicine) && at.Filled.Select(slot => slot.Value).OfType<FreeWords>()
            .FirstOrDefault(words => at.Vocabulary.Fixed("remains").Find(words.Text.Split(' ')[0]) is not null) is { } left)
        {
            at.Report(new Problem(ProblemRules.WrongValue, left.Span, $"`{left.Text}` may mean what was left. Write what was eaten or drunk, such as ate half."));
        }
    }

    /// <summary>A day and a month with a slash, which two countries read differently, in free words; null where none stands.</summary>
    private TextSpan? ShortDate()
    {
        foreach (FreeWords words in at.Filled.Select(slot => slot.Value).OfType<FreeWords>())
        {
            foreach (System.Text.RegularExpressions.ValueMatch match in ShortDates().EnumerateMatches(words.Text))
            {
                int start = at.Line.IndexOf(words.Text.AsSpan(match.Index, match.Length).ToString(), words.Span.Start, StringComparison.Ordinal);
                return start < 0 ? words.Span : new TextSpan(start, match.Length);
            }
        }

        return null;
    }

    [System.Text.RegularExpressions.GeneratedRegex(@"(?<![\d/])\d{1,2}/\d{1,2}(/\d{2,4})?(?![\d/]|\s*(cup|tab|can|tsp|tbsp))")]
    private static partial System.Text.RegularExpressions.Regex ShortDates();

    /// <summary>Gives an observation that lacks its words those of its neighbour: <c>gait lame LF, RH</c>, <c>tooth 104 108 tartar</c>.</summary>
    private void Complete(int index)
    {
        Draft draft = drafts[index];
        if (draft.Lacking is not { } lacking)
        {
            return;
        }

        foreach (int other in (ReadOnlySpan<int>)[index - 1, index + 1])
        {
            if (other >= 0 && other < drafts.Count && drafts[other].Word == draft.Word && drafts[other].Body.Filled.Where(slot => slot.Kind is SlotKind.Words or SlotKind.Ok).ToList() is { Count: > 0 } words)
            {
                drafts[index] = draft with { Body = new ItemBody([.. draft.Body.Filled, .. words]), Lacking = null };
                return;
            }
        }

        FreeWords? remark = draft.Body.Get<FreeWords>(SlotKind.Note);
        at.Report(remark is null || draft.Word.Kind is not (WordKind.Exam or WordKind.Scan or WordKind.Care)
            ? lacking
            : Refusals.UnknownWords(at, draft.Word, remark));
    }

    private static NoteItem? Build(Draft draft, TimeOnly? time)
    {
        var head = new ItemHead(draft.Word, draft.Head.Span, time, draft.Head.Lead);
        ItemBody body = draft.Body;
        return draft.Word.Kind switch
        {
            WordKind.Fact => Fact(head, body),
            WordKind.Vital => body.First<NoteValue>(SlotKind.Reference) is null ? new Examined(head, body) : new Reading(head, body),
            WordKind.Exam => new Examined(head, body),
            WordKind.Scan => draft.None ? new NotSeen(head, body) : body.Get<Site>(SlotKind.Site) is null ? new Examined(head, body) : new Finding(head, body),
            WordKind.Care when draft.Word.Has(SlotKind.Medicine) => new DoseEvent(head, body),
            WordKind.Care when draft.Word.Has(SlotKind.Analyte) => new LabResult(head, body),
            WordKind.Care => draft.None || SaysNone(body, draft.Head.Lead) ? new NotSeen(head, body) : new CareEvent(head, body),
            WordKind.Act => new Act(head, body),
            WordKind.Task => head.Word.Word switch { "recheck" => new Recheck(head, body), "due" => new DueTask(head, body), _ => new TextTask(head, body) },
            WordKind.Picture => new Photo(head, body),
            WordKind.Skip => new Skipped(head, body),
            _ => new RestOk(head, body),
        };
    }

    /// <summary>True where nothing is said but that it did not happen, or is over.</summary>
    private static bool SaysNone(ItemBody body, LeadWord? lead) => body.First<EventCount>() is { Number: 0, Bound: Bound.Exact }
        || (body.Words.Length > 0 || (body.Absent.Length > 0 && lead is { Means: not LeadMeans.Plain }) || body.Absent.Any(sign => sign.Sense == Sense.Ended))
        && body.Words.All(sign => sign.Word.Word is "gone" or "resolved" or "none" && sign.Word.Meanings.All(meaning => meaning.Level == Level.Expected))
        && body.Filled.All(slot => slot.Kind is SlotKind.Words or SlotKind.Note);

    private static NoteItem Fact(ItemHead head, ItemBody body) => head.Word.Word switch
    {
        "species" => new SpeciesFact(head, body),
        "sex" => new SexFact(head, body),
        "born" => new BornFact(head, body),
        "adult-weight" => new AdultWeightFact(head, body),
        "units" => new UnitsFact(head, body),
        "usual" => new UsualFact(head, body),
        "call-if" => new CallIfFact(head, body),
        "med" => new MedicinePlan(head, body),
        "home-check" => new HomeCheckFact(head, body),
        "accept" => new AcceptFact(head, body),
        _ => new TextFact(head, body),
    };

    /// <summary>An observation as it was read, before its neighbours complete it.</summary>
    private readonly record struct Draft(Head Head, LineWord Word, ItemBody Body, bool None, ImmutableArray<TimeOnly> TimesOfDay, Problem? Lacking)
    {
        public IReadOnlyList<TimeOnly> Times => TimesOfDay;
    }
}
