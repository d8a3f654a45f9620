using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Scanning;
using HealthNotes.Grammar.Slots;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Text;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Grammar.Parsing;

/// <summary>Takes the words that mean nothing in an observation as a remark, exactly as written.</summary>
internal sealed class RemarkReader(Cursor at)
{
    private const int MostBeforeTime = 5;

    /// <summary>
    /// True where words without a meaning may be a remark: a task needs its item and its day first, and what looks like a number is
    /// none while the value of a vital is still to come.
    /// </summary>
    public bool MayRemark() => at.Word.Kind switch
    {
        WordKind.Skip => at.About is not null || (at.Part.Kind == PartKind.Word && at.At + 1 < at.Parts.Count && NamesItem(at.At + 1)),
        WordKind.Task => at.First<Schedule>() is not null,
        WordKind.Fact when FactSlots.IsSignalment(at.Word) => at.Filled.Count > 0,
        WordKind.Vital => at.First<NoteValue>() is not null || !(at.Part.Kind is PartKind.Number or PartKind.Unreadable && Scanners.IsDigit(at.TextOf(at.Part)[0])),
        _ => true,
    };

    /// <summary>True for lines whose remark runs to the end, whatever words are in it: reasons, and what follows a dose.</summary>
    public bool TakesRest() => at.Word.Has(SlotKind.Note)
        && ((at.Word.Kind == WordKind.Skip && at.About is not null)
            || (at.Word.Has(SlotKind.Rule) && at.First<Schedule>()?.Until is not null)
            || (at.Word.Has(SlotKind.Medicine) && at.Word.Kind == WordKind.Care && at.First<FreeWords>() is not null && !StartsOtherDose()));

    private bool StartsOtherDose() => at.StartsSegment(at.At) && Head.At(at, at.At, out _) is { Word.Kind: WordKind.Care or WordKind.Vital or WordKind.Exam, Lead: null };

    /// <summary>
    /// True where words start that tell when or why, or deny something that has no meaning here: <c>since the new tablets</c>,
    /// <c>didn't seem to notice</c>. Up to the next comma they are one remark, since a word taken out of them would say something else.
    /// </summary>
    public bool StartsClause(int index) => Compares(index) || IsOffered(index)
        || (Modifiers.At(at, index) is { } no ? !Modifiers.Reaches(at, index + no.Count) : at.Phrase(at.Vocabulary.Asides, index, out _) > 0);

    /// <summary>True for a stretch in doubt that has no sign of its own: <c>wound licked, I think one stitch is missing</c>.</summary>
    private bool Doubts(int index)
    {
        if (!at.StartsSegment(index) || at.PresentSign() is null || at.Phrase(at.Vocabulary.Describing(at.Subject), index, out DescribingWord? word) is not (> 0 and var count) || word is not { Part: "any", Word: "unsure" })
        {
            return false;
        }

        int end = index + count;
        bool words = false;
        while (end < at.Parts.Count && !at.StartsSegment(end))
        {
            if (WordSlots.StartsSign(at, end) || at.Parts[end].Kind == PartKind.Number || at.Is(end, "until") || OpensSlot(end))
            {
                return false;
            }

            words |= at.Phrase(at.Vocabulary.Small, end, out _) == 0;
            end++;
        }

        return words;
    }

    /// <summary>True for the <c>of 200 g</c> of <c>ate 180 g of 200 g</c>: what was in the bowl.</summary>
    private bool IsOffered(int index) => at.Word.Has(SlotKind.Portion) && at.First<NoteValue>() is not null && at.Is(index, "of") && index + 1 < at.Parts.Count && at.Parts[index + 1].Kind == PartKind.Number;

    /// <summary>True for the <c>L kidney small</c> of <c>belly soft, L kidney small</c>: a side of something that is not known.</summary>
    private bool OtherPart(int index)
    {
        if (at.SaysSomething && at.StartsSegment(index) && at.IsWord(index) && index + 1 < at.Parts.Count && !at.StartsSegment(index + 1) && !at.Vocabulary.CanStart(at.TextAt(index).ToString()) && Modifiers.At(at, index) is null && at.Phrase(at.Vocabulary.Ok, index, out _) == 0 && !WordSlots.StartsSign(at, index)
            && at.Phrase(at.Vocabulary.Describing(at.Subject), index + 1, out DescribingWord? of) > 0 && of is { Part: "any", Word: not "unsure", IsDegree: false } && Slip(at.Parts[index]) is null)
        {
            // "bum fine, balls gone": the word behind it tells of the one before
            return true;
        }

        if (OnlyThen(index))
        {
            return true;
        }

        int side = at.Filled.Count > 0 && at.StartsSegment(index) && SiteSlots.KindOf(at.Word) is not null ? at.Phrase(at.Vocabulary.Sides, index, out _) : 0;
        return side > 0 && at.IsWord(index + side) && !at.StartsSegment(index + side) && !at.Vocabulary.Knows(at.TextAt(index + side).ToString()) && Slip(at.Parts[index + side]) is null;
    }

    /// <summary>True for the <c>worse after rest</c> of <c>limping, worse after rest</c>: not how it goes from day to day.</summary>
    private bool OnlyThen(int index)
    {
        if (at.PresentSign() is null || !at.StartsSegment(index) || at.Phrase(at.Vocabulary.Describing(at.Subject), index, out DescribingWord? trend) is not (> 0 and var words) || trend is not { Part: "any", Word: "better" or "worse" }
            || !at.IsWord(index + words) || at.StartsSegment(index + words) || at.Vocabulary.Fixed("only-then").Find(at.TextAt(index + words)) is null)
        {
            return false;
        }

        int when = index + words + 1;
        while (when < at.Parts.Count && at.Phrase(at.Vocabulary.Small, when, out _) is > 0 and var small)
        {
            when += small;
        }

        return at.IsWord(when) && at.Vocabulary.Fixed("self").Find(at.TextAt(when)) is null && at.Phrase(at.Vocabulary.Sides, when, out _) == 0 && at.Phrase(at.Vocabulary.Regions, when, out _) == 0;
    }

    /// <summary>True for a stretch that is about something else than the line: what a value was before (<c>5.95 kg, that is 200 g less than in October</c>), another part.</summary>
    public bool Compares(int index)
    {
        if (OtherPart(index) || Doubts(index))
        {
            return true;
        }

        bool worded = at.Word.Kind == WordKind.Care && at.PresentSign() is not null;
        if (!(at.Word.Kind is WordKind.Vital or WordKind.Care || at.Word.Has(SlotKind.Score)) || at.Word.Has(SlotKind.Medicine) || (at.First<NoteValue>() is null && !worded) || !at.StartsSegment(index))
        {
            return false;
        }

        bool compares = false;
        bool number = false;
        int end = index;
        do
        {
            compares |= at.Vocabulary.Fixed("compares").Find(at.TextAt(end)) is not null;
            number |= at.Parts[end].Kind == PartKind.Number;
            end++;
        }
        while (end < at.Parts.Count && !at.StartsSegment(end));
        return compares && number;
    }

    /// <summary>Takes words without a meaning here as a remark, up to the next comma or the next sign; a reason and a clause run on.</summary>
    public void Take()
    {
        bool rest = TakesRest();
        bool clause = false;
        int first = at.At;
        int end = first;
        do
        {
            Part part = at.Parts[end];
            clause |= !rest && (StartsClause(end) || at.Is(end, "than"));
            if (at.Word.Kind == WordKind.Vital && part.Kind == PartKind.Word && at.Vocabulary.IsState(at.TextOf(part).ToString()))
            {
                at.Report(new Problem(ProblemRules.UnknownWord, part.Span, $"`{at.TextOf(part)}` does not go with {at.Word.Word}. Write {Refusals.Expected(at)}."));
            }
            else if (!rest && !clause && part.Kind == PartKind.Word && Slip(part) is { } nearest)
            {
                at.Report(new Problem(ProblemRules.UnknownWord, part.Span, $"`{at.TextOf(part)}` is not a word I know behind {at.Word.Word}. Did you mean `{nearest}`?", nearest));
            }

            end++;
        }
        while (end < at.Parts.Count && !Joins.Same(at, end) && (rest || !Joins.Other(at, end)) && !(at.Is(end, "and") && Head.Dose(at, end + 1) is not null) && !(TimeReader.Within(at, end, out int count) is not null && !(at.Word.Has(SlotKind.Portion) && SaysRest(first, end)) && (!rest || (at.Word.Word is "gave" or "missed" && !(at.Times.Count > 0 && at.StartsSegment(first)) && end - first <= MostBeforeTime && OnlyTimes(end + count)))) && !Joins.MedicineStarts(at, end) && !SinceSlot.IsAhead(at, end) && !(at.TextAt(end) is [_, .., '+' or '-'] && Head.At(at, end, out _) is not null)
            && (rest || (!at.StartsSegment(end) && (clause || at.Is(end, "than") || StartsClause(end) || (!WordSlots.StartsSign(at, end) && Modifiers.At(at, end) is null && !OpensSlot(end))))));

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
        while (!rest && end < at.Parts.Count && !at.StartsSegment(end) && last - 1 > first && at.IsWord(last - 1) && at.Vocabulary.Small.Find(at.TextAt(last - 1)) is not null)
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
        at.InRemark = end >= at.Parts.Count || !(OpensSlot(end) || SinceSlot.IsAhead(at, end));
    }

    /// <summary>True for <c>ate half, then the rest at 2pm</c>: the time belongs to what was eaten later.</summary>
    private bool SaysRest(int first, int end) => Enumerable.Range(first, end - first).Any(index => at.Vocabulary.Fixed("rest-of-meal").Find(at.TextAt(index)) is not null);

    /// <summary>True where the word of another line stands: the claws of <c>skip hind claws</c>.</summary>
    private bool NamesItem(int index) => Head.At(at, index, out _) is { Word.Kind: WordKind.Exam or WordKind.Vital or WordKind.Scan };

    /// <summary>True where nothing but times of day is left.</summary>
    private bool OnlyTimes(int index)
    {
        while (index < at.Parts.Count && TimeReader.Within(at, index, out int count) is not null)
        {
            index += count;
        }

        return index + (at.IsWord(index) && at.Vocabulary.Fixed("after-all").Find(at.TextAt(index)) is not null ? 1 : 0) == at.Parts.Count;
    }

    /// <summary>True for a number with a unit that goes into a slot which is still empty: <c>belly lump under ribs 5mm</c>.</summary>
    private bool OpensSlot(int index)
    {
        if (at.Word.Kind == WordKind.Skip && at.About is null && NamesItem(index))
        {
            return true;
        }

        if (at.Word.Kind == WordKind.Fact && at.Word.Has(SlotKind.Medicine) && at.First<Schedule>()?.Every is null
            && (IntervalWords.Short(at, index) is not null || IntervalWords.Daily(at, index, out _) is not null || IntervalWords.EveryAbbreviation(at.TextAt(index), out _)))
        {
            return true;
        }

        if (ScheduleSlots.LengthAhead(at, index))
        {
            return true;
        }

        if ((at.Word.Has(SlotKind.Times) && !at.Holds(SlotKind.Times) && at.Phrase(at.Vocabulary.TimesWords, index, out _) > 0)
            || (at.Word.Kind == WordKind.Scan && !at.Holds(SlotKind.Site) && Math.Max(at.Phrase(at.Vocabulary.Sides, index, out _), at.Phrase(at.Vocabulary.Regions, index, out _)) > 0))
        {
            return true;
        }

        if (at.First<NoteValue>() is not null || at.Parts[index] is not NumberPart number)
        {
            return false;
        }

        TextSpan last = number.Third.Exists ? number.Third.Unit : number.Second.Exists ? number.Second.Unit : number.First.Unit;
        ReadOnlySpan<char> unit = last.Length > 0 ? last.In(at.Line) : at.IsWord(index + 1) ? at.TextAt(index + 1) : "";
        return at.Vocabulary.Units.Find(unit) is { } known && (known.Quantity != Quantity.Time || (at.Word.Word == "walk" && !at.Holds(SlotKind.Duration))) && Numbers.FitsAny(at, known);
    }

    /// <summary>The word that is one slip away from what was typed, when both are long enough for that to say something.</summary>
    private string? Slip(Part part) => part.Span.Length >= 4 ? Refusals.Slip(at, at.TextOf(part).ToString()) : null;
}
