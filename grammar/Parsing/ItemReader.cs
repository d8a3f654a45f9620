using System.Collections.Immutable;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Scanning;
using HealthNotes.Grammar.Slots;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Text;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Grammar.Parsing;

/// <summary>
/// Reads the observations of one line, one after another, and makes the items of a line that was read whole.
/// </summary>
internal sealed class ItemReader
{
    private readonly List<Draft> drafts = new(2);
    private readonly ItemBinder binder;
    private readonly HeadMeaning meaning;
    private readonly ActDays acts;
    private readonly ItemCheck checks;
    private readonly Cursor at;

    public ItemReader(Cursor cursor)
    {
        at = cursor;
        meaning = new HeadMeaning(cursor);
        acts = new ActDays(cursor);
        var remarks = new RemarkReader(cursor);
        binder = new ItemBinder(cursor, remarks, new NextHead(cursor, remarks), meaning, acts);
        checks = new ItemCheck(cursor);
    }

    /// <summary>Reads from the cursor to the end of the line. The items count only where the cursor holds no problem.</summary>
    public ImmutableArray<NoteItem> Read(Head head, TimeOnly? time)
    {
        drafts.Clear();
        acts.TakeTopic();
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

        if (drafts.Count > 1 && drafts[0] is { Lacking: not null, Head.Lead: not null } title && title.Body.Filled.Length == 1 && title.Body.Get<Site>(SlotKind.Site) is { Side: Side.Both }
            && drafts[1].Word == title.Word && drafts[1].Body.Get<Site>(SlotKind.Site) is { Side: Side.L or Side.R })
        {
            // "AU: R ear waxy, L ear clean": a title, and no observation of both
            drafts.RemoveAt(0);
        }

        for (int index = 0; index < drafts.Count && at.Problems.Count == 0; index++)
        {
            Share(index);
            Complete(index);
        }

        if (at.Problems.Count == 0 && head.Lead is not { Lines.Length: > 1 } && drafts.Count > 1 && drafts[^1] is { Head.Negation: null } last && !(last.Head.Lead is { Means: LeadMeans.None })
            && (last.None || !last.Body.Filled.IsEmpty) && last.Body.Filled.All(slot => slot.Value is Described sign && (sign.Word.Word == "none" || (sign.Sense == Sense.Absent && sign.Span.End > last.Head.Span.End)))
            && drafts[^2] is { None: false, Word.Kind: WordKind.Care, Times.Count: 0, Head.Negation: null } bare && !bare.Word.Has(SlotKind.Medicine) && bare.Body.Filled.All(slot => slot.Value is Described sign && sign.Span == bare.Head.Span))
        {
            at.Report(new Problem(ProblemRules.OpenNegation, last.Head.Span, $"Does the negation reach `{bare.Head.Span.In(at.Line)}` too? Write no before each, or say how it was: no {bare.Head.Span.In(at.Line)}, no {last.Head.Span.In(at.Line)}."));
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
            List<Part> parts = [.. at.Parts.Slice(behind)];
            for (int index = given - 1; index >= at.At; index--)
            {
                if (!at.Is(index - 1, "at") && TimeReader.Within(at, index, out int count) is not null && index + count <= given)
                {
                    // "missed 3pm insulin": when it should have been
                    at.Remark.Add(at.SpanOf(index, count));
                    at.Mark(TokenKind.Text, at.SpanOf(index, count));
                    parts.RemoveRange(0, count - 1);
                }
                else
                {
                    parts.Insert(0, at.Parts[index]);
                }
            }

            at.StartParts(parts.ToArray());
        }

        ImmutableArray<SlotReader> slots = SlotTable.For(head.Word);
        bool none = meaning.Imply(head, acts.TakeTopic());
        if (FactSlots.EndsAtFact(head.Word) && at.HasPart && StretchPatterns.BreedEnd(at, head.Span.Length == 0) is { } end)
        {
            TextSpan span = at.SpanOf(0, end);
            at.At = end;
            at.Mark(TokenKind.Text, span);
            at.Add(SlotKind.Text, new FreeWords(span, at.WithSingleBlanks(span)));
        }
        else if (head.Word.Has(SlotKind.Text))
        {
            // behind a phrase for an act the phrase itself is what was done
            bool own = head.Lead is { Means: not LeadMeans.Plain } || (head.Lead is not null && head.Word.Word is "done" or "surgery");
            if (own && MedicineBehind() is { } other)
            {
                // "rang vet, stop meloxicam": what follows has a word of its own
                TextSpan said = other.Cut == 0 ? head.Span : TextSpan.Between(head.Span.Start, at.Parts[other.Cut - 1].Span.End);
                at.Add(SlotKind.Text, new FreeWords(said, at.WithSingleBlanks(said)));
                at.Mark(TokenKind.Text, TextSpan.Between(head.Span.End, said.End));
                at.Mark(TokenKind.LineWord, other.Head.Span);
                Finish(head, none);
                at.StartParts(at.Parts[(other.Cut + other.Count)..]);
                return other.Head;
            }

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

        Head? next = binder.Bind(head, slots, ref none);
        if (acts.Topic is null)
        {
            Finish(head, none);
        }

        return next;
    }

    /// <summary>Behind a comma, the word of a line about a medicine: where it stands and how many parts it has.</summary>
    private (Head Head, int Cut, int Count)? MedicineBehind()
    {
        for (int index = 0; index < at.Parts.Count; index++)
        {
            if (at.StartsSegment(index) && Head.At(at, index, out int count) is { Lead: null } head && head.Word.Has(SlotKind.Medicine))
            {
                return (head, index, count);
            }
        }

        return null;
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
        if (at.Word.Kind == WordKind.Task && at.Word.Has(SlotKind.Topic) && head.Lead is not null && !at.Holds(SlotKind.Topic) && at.First<Schedule>() is not null)
        {
            // "follow-up in 2w": the phrase itself is what falls due
            at.Add(SlotKind.Topic, new FreeWords(head.Span, at.WithSingleBlanks(head.Span)));
        }

        checks.EndsSign();
        if (at.Word.Has(SlotKind.Portion) && remark.Find(span => at.WithSingleBlanks(span).Split(' ').Any(word => at.Vocabulary.LineWords.Find(word) == at.Word)) is { Length: > 0 } meal)
        {
            // "skipped dinner, rice instead at 8pm ate 50g"
            at.Report(new Problem(ProblemRules.SaidTwice, meal, $"`{meal.In(at.Line)}` tells of another meal. Write one meal a line."));
        }

        if (remark.Count > 0)
        {
            string text = string.Concat(remark.Select((span, index) => (index == 0 ? "" : IsBehind(remark[index - 1], span) ? " " : ", ") + span.In(at.Line).ToString()));
            at.Add(SlotKind.Note, new FreeWords(TextSpan.Between(remark[0].Start, remark[^1].End), text));
        }
        else if (head.Lead is { Means: not LeadMeans.Plain } && (at.Word.Kind == WordKind.Skip || (at.Word.Word == "ate" && at.WithSingleBlanks(head.Span).Split(' ').Any(word => at.Vocabulary.Fixed("meal").Find(word) is not null))))
        {
            // "missed breakfast" says more than that nothing was eaten
            at.Add(SlotKind.Note, new FreeWords(head.Span, at.WithSingleBlanks(head.Span)));
        }

        if (none && at.Word.Kind == WordKind.Scan && TextSpan.Between(head.Negation?.Span.Start ?? head.Span.Start, head.Span.End) is var denied
            && at.WithSingleBlanks(denied).Split(' ').Any(word => at.Vocabulary.Fixed("where").Find(word) is not null))
        {
            // "no other lumps": those that are known are not gone
            at.Set(SlotKind.Note, new FreeWords(denied, at.WithSingleBlanks(denied)));
        }

        if (at.Word.Has(SlotKind.Medicine) && at.Word.Kind == WordKind.Fact && checks.AsWritten() is { } written)
        {
            FreeWords name = at.First<FreeWords>()!;
            at.StartItem(at.Word, at.HeadSpan);
            at.Add(SlotKind.Medicine, name);
            at.Add(SlotKind.Note, written);
        }

        bool zero = none ? at.Filled.All(slot => slot.Kind == SlotKind.Note || (slot.Value is Described { Sense: not Sense.Present } sign && sign.Span.Start >= at.HeadSpan.End)) : at.Filled.Any(slot => slot.Value is EventCount { Number: 0, Bound: Bound.Exact }) && !at.Holds(SlotKind.Words);
        if (zero && meaning.WorryingNone() is { } nothing)
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

    /// <summary>True where nothing but blanks parts two pieces of a remark: <c>for</c> and <c>2 days</c>.</summary>
    private bool IsBehind(TextSpan before, TextSpan span) => span.Start >= before.End && at.Line.AsSpan(before.End, span.Start - before.End).IsWhiteSpace();

    /// <summary>Gives values that share one word what was written of it once: <c>SRR 22, 20</c> are both asleep, <c>call-if BG &lt;4 or &gt;25 per vet</c> are both the vet's.</summary>
    private void Share(int index)
    {
        if (index + 1 < drafts.Count && drafts[index] is { Word.Kind: WordKind.Care, Times.Count: 0 } dose && drafts[index + 1] is { Times.Count: > 0 } with && with.Word == dose.Word
            && dose.Body.Get<FreeWords>(SlotKind.Medicine) is { } name && with.Body.Get<FreeWords>(SlotKind.Medicine) is { } second
            && at.Line.AsSpan(name.Span.End, second.Span.Start - name.Span.End).TrimEnd() is var between && between is [.., '+' or '&'] or [.., ' ', 'a', 'n', 'd'] && between.IndexOfAny(",;") < 0)
        {
            // "furosemide 20mg + pimobendan 2.5mg oral 7am": given together, the same way
            SlotValue[] way = [.. with.Body.Filled.Where(slot => slot.Kind == SlotKind.Route && dose.Body.Get<object>(SlotKind.Route) is null)];
            drafts[index] = dose with { Body = new ItemBody([.. dose.Body.Filled, .. way]), TimesOfDay = with.TimesOfDay };
        }

        foreach (int other in (ReadOnlySpan<int>)[index - 1, index + 1])
        {
            if (other >= 0 && other < drafts.Count && drafts[other].Head.Span == drafts[index].Head.Span && drafts[other].Word == drafts[index].Word
                && (drafts[index].Word.Has(SlotKind.Rate) || drafts[index].Word.Has(SlotKind.Limit)))
            {
                ItemBody own = drafts[index].Body;
                SlotValue[] shared = [.. drafts[other].Body.Filled.Where(slot => slot.Kind is SlotKind.State or SlotKind.Place or SlotKind.Per && own.Get<object>(slot.Kind) is null)];
                if (shared.Length > 0)
                {
                    drafts[index] = drafts[index] with { Body = new ItemBody([.. own.Filled, .. shared]) };
                }
            }
        }
    }

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

        if (drafts.Skip(index + 1).FirstOrDefault(other => other.Lacking is null) is { Word.Kind: WordKind.Exam, Body.Filled: [{ Kind: SlotKind.Ok }] } whole && draft.Body.Filled.IsEmpty && draft.Word.Kind == WordKind.Exam)
        {
            // "eyes, ears and nose ok"
            drafts[index] = draft with { Body = whole.Body, Lacking = null };
            return;
        }

        FreeWords? remark = draft.Body.Get<FreeWords>(SlotKind.Note);
        at.Report(remark is null || draft.Word.Kind is not (WordKind.Exam or WordKind.Scan or WordKind.Care)
            ? lacking
            : Refusals.UnknownWords(at, draft.Word, remark));
    }
}
