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
internal sealed class ItemReader(Cursor at)
{
    private readonly List<Draft> drafts = new(2);

    /// <summary>Reads from the cursor to the end of the line. The items count only where the cursor holds no problem.</summary>
    public ImmutableArray<NoteItem> Read(Head head, TimeOnly? time)
    {
        drafts.Clear();
        Head? next = head;
        int start = at.At;
        while (next is not null)
        {
            Head now = next;
            next = ReadOne(now);
            if (now.Lead is { } lead && now.Line + 1 < lead.Lines.Length)
            {
                // V/D/C/S none: what follows is said of each
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
            bool own = head.Lead is { Means: not LeadMeans.Plain };
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

        List<TextSpan> remark = [];
        Head? next = Bind(head, slots, remark, ref none);
        Finish(head, remark, none);
        return next;
    }

    private Head? Bind(Head head, ImmutableArray<SlotReader> slots, List<TextSpan> remark, ref bool none)
    {
        bool joined = false;
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

            if (joined || at.StartsSegment(at.At))
            {
                if (AnotherAtSegment(head) is { } other)
                {
                    return other;
                }
            }

            if (at.At == 0 && at.BehindSign < 0 && NoneBehindHead(ref none))
            {
                continue;
            }

            if (Modifiers.BindAfter(at) || BindSlot(slots))
            {
                joined = false;
                continue;
            }

            if (!TakesRest() && Another(joined) is { } another)
            {
                return another;
            }

            if (!TakesRest() && Modifiers.BindBefore(at))
            {
                continue;
            }

            if (!at.InRemark && !TakesRest() && Modifiers.BindSmall(at, out joined))
            {
                continue;
            }

            joined = false;
            if (at.Word.Has(SlotKind.Note) && !at.Blocked)
            {
                Remark(remark);
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
            || (word!.Kind == ModifierKind.AbsentAfter && (WordSlots.StartsSign(at, 0) || (at.Word.Has(SlotKind.Portion) && at.Vocabulary.Fixed("portion").Find(at.TextAt(0)) is not null)))
            || (word.Kind == ModifierKind.AbsentAfter && Head.At(at, count, out _) is not null))
        {
            return false;
        }

        at.Mark(TokenKind.Keyword, at.SpanOf(0, count));
        at.At = count;
        at.Pending = new Pending(word, at.Parts[0].Span, OfHead: true);
        none = true;
        return true;
    }

    /// <summary>Puts in what the phrase implies, negated where a negation stands before it. True where the observation itself is negated.</summary>
    private bool Imply(Head head)
    {
        Pending? negation = head.Negation;
        bool signs = false;
        Sense sense = negation?.Sense ?? Sense.Present;
        foreach (string word in head.Implied)
        {
            if (at.Vocabulary.Ok.Find(word) is { } ok && at.Word.Has(SlotKind.Ok) | at.Word.Has(SlotKind.Words) && at.Vocabulary.Describing(at.Word.Word).Find(word) is null)
            {
                at.Set(SlotKind.Ok, ok);
            }
            else if (at.Word.Has(SlotKind.Words) && WordSlots.AddImplied(at, word, head.Span, sense))
            {
                signs = true;
                at.BehindSign = at.At;
            }
            else if (at.Word.Has(SlotKind.Portion) && at.Vocabulary.Fixed("portion").Find(word) is { Word: "none" or "all" } part)
            {
                at.Add(SlotKind.Portion, new Portion(head.Span, Bound.Exact, part.Word == "all" ? 1 : 0, 1));
            }
            else if (at.Vocabulary.Sides.Find(word) is { } side)
            {
                at.Set(SlotKind.Site, new Site(head.Span, Enum.Parse<Side>(side.Word, ignoreCase: true), null, null));
            }
            else if (at.Vocabulary.States(StateSlots.ScopeOf(at)).Find(word) is { } state)
            {
                StateSlots.Keep(at, state, head.Span);
            }
            else if (at.Word.Has(SlotKind.Topic))
            {
                at.Set(SlotKind.Topic, new FreeWords(head.Span, at.Get<FreeWords>(SlotKind.Topic) is { } before ? $"{before.Text} {word}" : word));
            }
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
        if (at.At == 0 || TakesRest() || at.Word.Kind is WordKind.Fact or WordKind.Task or WordKind.Skip)
        {
            return null;
        }

        int end = at.At + 1;
        while (end < at.Parts.Count && !at.StartsSegment(end))
        {
            end++;
        }

        Head? found = Head.AtWithNegation(at, at.At, out int count);
        if (found is { Lead: null } && IsObservation(found.Word))
        {
            int known = Math.Max(WordSlots.SignLength(at, at.At), at.Phrase(at.Vocabulary.States(StateSlots.ScopeOf(at)), at.At, out _));
            return found.Negation is null && known > 0 && at.At + known == end ? null : Start(found, at.At, count);
        }

        // "left eye red, right ear smells": the place comes before the word
        for (int index = at.At + 1; found is null && index < end; index++)
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
        bool segment = joined || (at.At > 0 && at.StartsSegment(at.At));
        if (at.Word.Kind is WordKind.Fact or WordKind.Task or WordKind.Skip || at.InRemark
            || Head.AtWithNegation(at, at.At, out int count) is not { } found || !IsObservation(found.Word))
        {
            return null;
        }

        int behind = at.At + count;
        bool number = behind < at.Parts.Count && at.Parts[behind].Kind == PartKind.Number && found.Word.Kind is WordKind.Vital or WordKind.Care;
        bool short_ = found.Lead is { Means: LeadMeans.Plain } && at.TextAt(at.At).IndexOfAnyExceptInRange('A', 'Z') < 0;
        bool vital = found.Word.Kind == WordKind.Vital && found.Lead is null && at.Word.Kind is WordKind.Vital or WordKind.Exam;
        return segment || found.Negation is not null || (at.At > 0 && (number || short_ || vital)) ? Start(found, at.At, count) : null;
    }

    private static bool IsObservation(LineWord word) => word.Kind is WordKind.Vital or WordKind.Exam or WordKind.Scan or WordKind.Care or WordKind.Act
        || (word.Kind == WordKind.Task && word.Word == "done");

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
    private void Remark(List<TextSpan> remark)
    {
        bool rest = TakesRest();
        int first = at.At;
        int end = first;
        do
        {
            Part part = at.Parts[end];
            if (!rest && part.Kind == PartKind.Word && Slip(part) is { } nearest)
            {
                at.Report(new Problem(ProblemRules.UnknownWord, part.Span, $"`{at.TextOf(part)}` is not a word I know behind {at.Word.Word}. Did you mean `{nearest}`?", nearest));
            }

            end++;
        }
        while (end < at.Parts.Count && (rest
            || (!at.StartsSegment(end) && !WordSlots.StartsSign(at, end) && Modifiers.At(at, end) is null && TimeReader.Within(at, end, out _) is null)));

        // brackets and marks that part nothing belong to the remark
        int start = at.Parts[first].Span.Start;
        while (start > 0 && !Scanners.IsBlank(at.Line[start - 1]) && !Scanners.IsSeparator(at.Line[start - 1]) && (at.Tokens.Count == 0 || at.Tokens[^1].Span.End < start))
        {
            start--;
        }

        int stop = at.Parts[end - 1].Span.End;
        stop = rest ? at.End : stop < at.End && at.Line[stop] is ')' or ']' ? stop + 1 : stop;
        var span = TextSpan.Between(start, stop);
        at.Mark(TokenKind.Text, span);
        remark.Add(span);
        at.At = end;
        at.InRemark = true;
    }

    /// <summary>The word that is one slip away from what was typed, when both are long enough for that to say something.</summary>
    private string? Slip(Part part) => part.Span.Length >= 5 ? Refusals.Slip(at, at.TextOf(part).ToString()) : null;

    private void Finish(Head head, List<TextSpan> remark, bool none)
    {
        if (at.Pending is { OfHead: true } && (none || at.Word.Kind is WordKind.Care or WordKind.Scan))
        {
            none = true;
            at.Pending = null;
        }

        Modifiers.Unused(at);
        if (remark.Count > 0)
        {
            string text = string.Join(", ", remark.Select(span => span.In(at.Line).ToString()));
            at.Add(SlotKind.Note, new FreeWords(TextSpan.Between(remark[0].Start, remark[^1].End), text));
        }

        if (at.Problems.Count == 0)
        {
            at.Problems.AddRange(Wrong(none));
        }

        drafts.Add(new Draft(head, at.Word, at.Body(), none, [.. at.Times], at.Problems.Count == 0 && !none ? Refusals.Lacking(at) : null));
    }

    private IEnumerable<Problem> Wrong(bool none)
    {
        if (!MeasureSlots.SubjectFits(at) && at.First<NoteValue>() is { } value && at.About is { } about)
        {
            yield return Refusals.Subject(at, value.Span, value.Span, (value as ValueRange)?.Unit ?? (value as Limit)?.Unit, about);
        }

        if (none && at.First<NoteValue>() is { } counted)
        {
            yield return new Problem(ProblemRules.OpenNegation, counted.Span, $"`{counted.Span.In(at.Line)}` does not go with a negation. Write what happened, or that nothing did.");
        }

        if (at.Word.Has(SlotKind.Medicine) && at.Word.Kind == WordKind.Care && at.First<FreeWords>() is { } name)
        {
            string first = name.Text.Split(' ')[0];
            if (NameSlots.IsOrdinary(at.Vocabulary, first) && !NameSlots.IsMedicine(at.Vocabulary, name.Text))
            {
                yield return new Problem(ProblemRules.UnknownWord, name.Span,
                    $"`{name.Text}` does not look like a medicine. Write {at.Word.Word} and the medicine's name; anything else goes on a line that starts with >.");
            }

            if (at.Get<FreeWords>(SlotKind.Note) is { } note && note.Text.Split(' ', ',').Any(word => at.Vocabulary.Fixed("times").Find(word) is not null || word is "2x" or "x2" or "3x" or "x3"))
            {
                yield return new Problem(ProblemRules.WrongValue, note.Span, $"`{note.Text}`: write one line a dose, each with its time, such as 08:00 gave {name.Text}");
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
            WordKind.Scan => draft.None || body.Get<Site>(SlotKind.Site) is null ? new NotSeen(head, body) : new Finding(head, body),
            WordKind.Care when draft.Word.Has(SlotKind.Medicine) => new DoseEvent(head, body),
            WordKind.Care when draft.Word.Has(SlotKind.Analyte) => new LabResult(head, body),
            WordKind.Care => draft.None || SaysNone(body) ? new NotSeen(head, body) : new CareEvent(head, body),
            WordKind.Act => new Act(head, body),
            WordKind.Task => head.Word.Word switch { "recheck" => new Recheck(head, body), "due" => new DueTask(head, body), _ => new TextTask(head, body) },
            WordKind.Picture => new Photo(head, body),
            WordKind.Skip => new Skipped(head, body),
            _ => new RestOk(head, body),
        };
    }

    /// <summary>True where nothing is said but that it did not happen, or is over.</summary>
    private static bool SaysNone(ItemBody body) => (body.Words.Length > 0 || body.Absent.Any(sign => sign.Sense == Sense.Ended))
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
    private sealed record Draft(Head Head, LineWord Word, ItemBody Body, bool None, ImmutableArray<TimeOnly> TimesOfDay, Problem? Lacking)
    {
        public IReadOnlyList<TimeOnly> Times => TimesOfDay;
    }
}
