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
internal sealed class ItemReader
{
    private readonly List<Draft> drafts = new(2);
    private readonly RemarkReader remarks;
    private readonly NextHead others;
    private readonly ItemCheck checks;
    private readonly Cursor at;
    private FreeWords? due;

    public ItemReader(Cursor cursor)
    {
        at = cursor;
        remarks = new RemarkReader(cursor);
        others = new NextHead(cursor, remarks);
        checks = new ItemCheck(cursor);
    }

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
                // V/D/C/S none: what follows holds for each
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

        if (time is { } ahead && drafts is [{ Times.Count: > 0 } dose, ..] && dose.Word.Has(SlotKind.Medicine))
        {
            // "07:45 and 19:45 phenobarbital 60mg"
            drafts[0] = dose with { TimesOfDay = [ahead, .. dose.TimesOfDay] };
        }
        else if (time is not null && drafts is [{ Times.Count: > 0 } first, ..])
        {
            at.Report(new Problem(ProblemRules.SaidTwice, head.Span, $"Two times, and one `{head.Word.Word}`. Write one line for each time."));
        }

        return at.Problems.Count > 0 ? [] : drafts.Count == 1 && drafts[0].Times.Count <= 1
            ? ItemBuilder.Build(drafts[0], drafts[0].Times is [var own] ? own : time) is { } only ? [only] : []
            : [.. drafts.SelectMany(draft => draft.Times.Count == 0 ? [ItemBuilder.Build(draft, time)] : draft.Times.Select(each => ItemBuilder.Build(draft, each))).OfType<NoteItem>()];
    }

    /// <summary>Reads one observation, and gives back the head of the next; null at the end of the line.</summary>
    private Head? ReadOne(Head head)
    {
        at.StartItem(head.Word, head.Span);
        if (head.Word.Word == "missed" && StretchPatterns.GivenLater(at) is { } given)
        {
            // "forgot insulin, gave it at 11am": it was given, and that it was late is kept as written
            head = head with { Word = at.Vocabulary.LineWords.Find("gave")!, Lead = null };
            at.StartItem(head.Word, head.Span);
            at.Remark.Add(head.Span);
            at.Mark(TokenKind.Text, head.Span);
            int behind = given + 1 + (at.Is(given + 1, "it") || at.Is(given + 1, "them") ? 1 : 0);
            at.Mark(TokenKind.Filler, at.SpanOf(given, behind - given));
            at.StartParts((Part[])[.. at.Parts.Slice(at.At, given - at.At), .. at.Parts.Slice(behind)]);
        }

        ImmutableArray<SlotReader> slots = SlotTable.For(head.Word);
        bool none = Imply(head);
        if (head.Word.Has(SlotKind.Text) && head.Word.Word == "breed" && at.HasPart && StretchPatterns.BreedEnd(at, head.Span.Length == 0) is { } end)
        {
            TextSpan span = at.SpanOf(0, end);
            at.At = end;
            at.Mark(TokenKind.Text, span);
            at.Add(SlotKind.Text, new FreeWords(span, at.WithSingleBlanks(span)));
        }
        else if (head.Word.Has(SlotKind.Text))
        {
            // behind a phrase for an act the phrase itself is what was done
            bool own = head.Lead is { Means: LeadMeans.None } || (head.Lead is not null && head.Word.Word == "done");
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

            if ((joined is not null || at.StartsSegment(at.At)) && others.AnotherAtSegment(head) is { } other)
            {
                return others.Negated(head, other, joined);
            }

            if ((at.Is(at.At, "and") || at.Is(at.At, "&") || at.Is(at.At, "+")) && at.First<NoteValue>() is not null && NextHead.MedicineStarts(at, at.At + 1))
            {
                // "carprofen 50mg and gabapentin 100mg"
                at.Mark(TokenKind.Filler, at.Part.Span);
                at.StartParts(at.Parts[(at.At + 1)..]);
                return head with { Lead = null, Line = 0, Negation = null };
            }

            if (SiteSlots.StartsSecond(at) || SiteSlots.StartsOtherSide(at))
            {
                return head with { Lead = null, Line = 0, Negation = null };
            }

            if ((at.At == 0 || at.Word.Kind == WordKind.Scan) && at.BehindSign < 0 && NoneBehindHead(ref none))
            {
                continue;
            }

            if (at.Word.Kind == WordKind.Act && at.Phrase(at.Vocabulary.Fixed("next"), at.At, out _) is > 0 and var words && Next(words))
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

            if (!remarks.TakesRest() && Modifiers.At(at, at.At) is { } no)
            {
                int sign = WordSlots.SignLength(at, at.At);
                if (no.Count > 1 && no.Count > sign && Modifiers.BindBefore(at))
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

    /// <summary><c>cough none</c>, <c>seizure gone</c>: behind the bare word itself, where it has no such word of its own.</summary>
    private bool NoneBehindHead(ref bool none)
    {
        int here = at.At;
        if (at.Word.Kind is not (WordKind.Care or WordKind.Scan) || !at.Word.Has(SlotKind.Words) || at.Filled.Any(slot => slot.Value is not Site)
            || AfterHead(here, out ModifierWord? word) is not (> 0 and var count)
            || (here > 0 && word!.Kind == ModifierKind.EndedAfter)
            || (here + count < at.Parts.Count && at.Line[at.Parts[here + count - 1].Span.End] == '.')
            || (Modifiers.NeedsEnd(word!) && here + count < at.Parts.Count && !at.StartsSegment(here + count))
            || (at.Phrase(at.Vocabulary.Describing(at.Subject), here, out DescribingWord? sign) > 0 && sign!.Part != "any")
            || (word!.Kind == ModifierKind.AbsentAfter && (WordSlots.StartsSign(at, here) || (at.Word.Has(SlotKind.Portion) && at.Vocabulary.Portions.Find(at.TextAt(here)) is not null))))
        {
            return false;
        }

        at.Mark(TokenKind.Keyword, at.SpanOf(here, count));
        if (word.Kind == ModifierKind.EndedAfter && (here + count == at.Parts.Count || at.StartsSegment(here + count)) && word.Word.Contains("stopped", StringComparison.Ordinal) && WorryingNone() is { } nothing)
        {
            // "pee stopped" is a sign, not the end of one
            at.Add(SlotKind.Words, new Described(nothing, at.SpanOf(here, count), nothing.Word));
            at.At = here + count;
            return true;
        }

        if (word.Kind == ModifierKind.EndedAfter)
        {
            Over(at.SpanOf(here, count));
        }

        at.At = here + count;
        none = true;
        return true;
    }

    /// <summary>A <c>none</c>, a <c>gone</c>, or a <c>no</c> that ends a stretch: <c>vomiting: no, diarrhoea: yes</c>.</summary>
    private int AfterHead(int index, out ModifierWord? word)
    {
        int count = at.Phrase(at.Vocabulary.After, index, out word);
        if (count == 0 && Modifiers.At(at, index) is { Word.Kind: ModifierKind.Absent } no && (index + no.Count == at.Parts.Count || at.StartsSegment(index + no.Count)))
        {
            (word, count) = no;
        }

        return count;
    }

    /// <summary>Says of the whole observation that it is over.</summary>
    private void Over(TextSpan span)
    {
        string written = at.WithSingleBlanks(span);
        bool known = at.Vocabulary.Describing(at.Subject).Find(written) is { Part: "any" };
        DescribingWord gone = known ? at.Vocabulary.Describing(at.Subject).Find(written)! : at.Vocabulary.Describing(at.Subject).Find("gone")!;
        at.Add(SlotKind.Words, new Described(gone, span, known ? written : gone.Word));
    }

    /// <summary>When an act is to be repeated: <c>flea treatment done, next one 5 Nov</c>, <c>next in 4 weeks</c>. It holds until then.</summary>
    private bool Next(int words)
    {
        int behind = at.At + words;
        bool length = at.Is(behind, "in") && behind + 1 < at.Parts.Count && at.Parts[behind + 1].Kind == PartKind.Number;
        behind += length || at.Is(behind, "on") ? 1 : 0;
        if (!length && !Dates.Starts(at, behind, yearless: true))
        {
            return false;
        }

        at.Mark(TokenKind.Keyword, at.SpanOf(at.At, behind - at.At));
        at.At = behind;
        if (!length && Dates.Take(at, yearless: true) is { } until)
        {
            at.Set(SlotKind.Validity, (at.First<Schedule>() ?? Schedule.None) with { Until = until });
        }

        return true;
    }

    /// <summary>An act that is still to come: <c>vaccine lepto due in 4 weeks</c>. Behind a date it says until when the act holds.</summary>
    private Head? Due(Head head)
    {
        if (at.First<Schedule>() is { On: not null } && at.At + 1 < at.Parts.Count)
        {
            TextSpan keyword = at.Part.Span;
            at.Taken(TokenKind.Keyword);
            if (Dates.Starts(at, at.At, yearless: true))
            {
                PartialDate? until = Dates.Take(at, yearless: true);
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
            if (at.Vocabulary.Ok.Find(word) is { } ok && at.Word.Has(SlotKind.Ok) | at.Word.Has(SlotKind.Words) && at.Vocabulary.Describing(at.Subject).Find(word) is null)
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
            else if (at.Word.Has(SlotKind.Topic) || at.Word.Has(SlotKind.Analyte) || at.Word.Has(SlotKind.Medicine))
            {
                SlotKind name = at.Word.Has(SlotKind.Topic) ? SlotKind.Topic : at.Word.Has(SlotKind.Analyte) ? SlotKind.Analyte : SlotKind.Medicine;
                at.Set(name, new FreeWords(head.Span, at.Get<FreeWords>(name) is { } before ? $"{before.Text} {word}" : word));
            }
        }

        if (signs && negation is not null && at.Word.Kind == WordKind.Exam)
        {
            Modifiers.AfterSign(at, negation with { OfHead = false });
        }
        else if (negation is { Sense: Sense.Ended } && at.Word.Has(SlotKind.Words) && at.Word.Kind is WordKind.Care or WordKind.Scan && !signs && WorryingNone() is null)
        {
            Over(negation.Span);
        }

        bool none = head.Lead?.Means == LeadMeans.None && !signs && at.Filled.Count == 0;
        if (negation is not null && !(signs && at.Word.Kind == WordKind.Exam))
        {
            at.Pending = negation;
            none = at.Word.Kind is WordKind.Care or WordKind.Scan && !at.Word.Has(SlotKind.Medicine);
        }

        return none;
    }

    private void Finish(Head head, bool none)
    {
        List<TextSpan> remark = at.Remark;
        if (at.Pending is { OfHead: true } && !at.Word.Has(SlotKind.Medicine) && (none || at.Word.Kind is WordKind.Care or WordKind.Scan))
        {
            none = true;
            at.Pending = null;
        }

        Modifiers.Unused(at);
        checks.EndsSign();
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

        if (at.Word.Has(SlotKind.Medicine) && at.Word.Kind == WordKind.Fact && checks.AsWritten() is { } written)
        {
            FreeWords name = at.First<FreeWords>()!;
            at.StartItem(at.Word, at.HeadSpan);
            at.Add(SlotKind.Medicine, name);
            at.Add(SlotKind.Note, written);
        }

        bool zero = none ? at.Filled.All(slot => slot.Kind == SlotKind.Note || (slot.Value is Described { Sense: not Sense.Present } sign && sign.Span.Start >= at.HeadSpan.End)) : at.Filled.Any(slot => slot.Value is EventCount { Number: 0, Bound: Bound.Exact }) && !at.Holds(SlotKind.Words);
        if (zero && WorryingNone() is { } nothing)
        {
            // "pee 0" is a sign, as "pee none" is
            none = false;
            at.Remove(SlotKind.Times);
            at.Add(SlotKind.Words, new Described(nothing, at.HeadSpan, nothing.Word));
        }

        if (at.Problems.Count == 0)
        {
            checks.Check(none, head.Lead);
        }

        drafts.Add(new Draft(head, at.Word, at.Body(), none, at.Times.Count == 0 ? [] : [.. at.Times], at.Problems.Count == 0 && !none ? Refusals.Lacking(at) : null));
    }

    /// <summary>The sign that says that none came, where that is more than an absence: no urine, no stool; else null.</summary>
    private DescribingWord? WorryingNone() =>
        at.Vocabulary.Describing(at.Subject).Find("none") is { } nothing && nothing.Meanings.Any(meaning => meaning.Level > Level.Expected) ? nothing : null;

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
            if (draft.Body.Get<FreeWords>(SlotKind.Note) is null && other >= 0 && other < drafts.Count && drafts[other].Word == draft.Word && drafts[other].Body.Filled.Where(slot => slot.Kind is SlotKind.Words or SlotKind.Ok).ToList() is { Count: > 0 } words)
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
}
