using HealthNotes.Grammar.Scanning;
using HealthNotes.Grammar.Slots;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Text;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Grammar.Parsing;

/// <summary>
/// Finds the word that a line is filed under: its own first word, or a phrase, a medicine, a place, a fact, a measure or what falls
/// due at its start. Each way leaves the cursor at the parts that are to be read behind it.
/// </summary>
internal sealed class HeadFinder
{
    /// <summary>Where the way of a place before its word stands among the ways.</summary>
    private const int PlaceWay = 3;
    private const int SecondsADay = 86_400;
    private const int ShortestPiece = 3;

    private readonly NoteVocabulary vocabulary;
    private readonly Cursor at;
    private readonly Func<int, Head?>[] ways;
    private bool wordFound;
    private string? cutLine;
    private int cutEnd;
    private ArraySegment<Part> looseParts;
    private ArraySegment<Part> tightParts;

    public HeadFinder(Cursor cursor)
    {
        at = cursor;
        vocabulary = cursor.Vocabulary;
        ways = [WordFirst, PhraseFirst, MedicineFirst, PlaceFirst, FactFirst, NumberFirst, TopicFirst];
    }

    /// <summary>How many ways there are; they are tried in order.</summary>
    public int Ways => ways.Length;

    /// <summary>True for the way in which words before the head belong to it.</summary>
    public static bool IsPlaceFirst(int way) => way == PlaceWay;

    /// <summary>The head by one of the ways; null where the line does not start so.</summary>
    public Head? Find(int way, int start)
    {
        Head? head = ways[way](start);
        wordFound = way == 0 ? head is not null : wordFound;
        return head;
    }

    /// <summary>The first word is the line's own: <c>hr 18/15s</c>.</summary>
    private Head? WordFirst(int start)
    {
        Cut(start, word: null);
        if (at.IsWord(0) && vocabulary.Fixed("species").Find(at.TextAt(0)) is not null && (at.Parts.Count == 1 || at.StartsSegment(1)))
        {
            // "dog, lab x, 26kg": what an animal is, and no laboratory
            return Head.Fact(at, 0);
        }

        if (at.Phrase(vocabulary.Medicines, 0, out _) > Math.Max(1, at.Phrase(vocabulary.LineWords, 0, out _)) && at.Phrase(vocabulary.Leads, 0, out _) == 0)
        {
            // the water of "water tablet" and the ear of "ear drops" name a medicine
            return null;
        }

        Head? head = OwnWord(start);
        if (head is { Word.Kind: WordKind.Exam or WordKind.Vital or WordKind.Scan } && Enumerable.Range(0, at.Parts.Count).TakeWhile(index => index == 0 || !at.StartsSegment(index)).Any(IsAppointment))
        {
            // "ear check at vet 26 nov 16:30" is to come, and nothing was seen
            return null;
        }

        if (head is { Word.Kind: WordKind.Skip, Lead: null } && Enumerable.Range(0, at.Parts.Count).TakeWhile(index => (index == 0 || !at.StartsSegment(index)) && Head.At(at, index, out _) is null)
            .Any(index => at.IsWord(index) && at.Phrase(vocabulary.Medicines, index, out _) > 0))
        {
            // "skipped noon gabapentin": a dose, and not a part of the body
            return head.Value with { Word = vocabulary.LineWords.Find("missed")! };
        }

        if (head is { Word.Kind: WordKind.Vital or WordKind.Exam or WordKind.Scan, Negation: null } && NotLooked() is { Count: > 0 } notLooked)
        {
            // "temp not done, he bites", "tail, anus not checked"
            ArraySegment<Part> behind = at.Parts[(notLooked.Index + notLooked.Count)..];
            at.Mark(TokenKind.Keyword, at.SpanOf(notLooked.Index, notLooked.Count));
            Cut(start, word: null);
            at.StartParts((Part[])[.. at.Parts[..(at.Parts.Count - behind.Count - notLooked.Count)], .. behind]);
            return new Head(vocabulary.LineWords.Find("skip")!, new TextSpan(start, 0));
        }

        if (head is { Word.Word: "recheck", Lead: null } && at.IsWord(0))
        {
            LineWord due = vocabulary.LineWords.Find("due")!;
            at.StartItem(due, new TextSpan(start, 0));
            bool lab = at.Phrase(vocabulary.Leads, 0, out LeadWord? analyte) > 0 && analyte!.Lines is [{ Word: "lab" }];
            bool examination = Enumerable.Range(0, at.Parts.Count).TakeWhile(index => index == 0 || !at.StartsSegment(index)).Any(index => vocabulary.Fixed("examination").Find(at.TextAt(index)) is not null);
            if (lab || examination || ((vocabulary.Fixed("ordinary").Find(at.TextAt(0)) is not null || (at.IsWord(1) && !ScheduleSlots.Starts(at, 1))) && !Enumerable.Range(0, at.Parts.Count).Any(NamesPart)))
            {
                // "recheck kidney values in 10 days": what falls due, in free words
                Cut(start, word: null);
                return new Head(due, new TextSpan(start, 0));
            }
        }

        return head;
    }

    /// <summary>Where the line says that nobody looked at the parts before; nothing but names of parts may stand there.</summary>
    private (int Index, int Count)? NotLooked()
    {
        for (int index = 0; index < at.Parts.Count;)
        {
            if (at.Phrase(vocabulary.Fixed("not-looked"), index, out _) is > 0 and var count)
            {
                return (index, count);
            }

            int named = Head.At(at, index, out int length) is { Word.Kind: WordKind.Vital or WordKind.Exam or WordKind.Scan } ? length : at.Phrase(vocabulary.Small, index, out ModifierWord? small) is > 0 and var joined && small!.Kind is ModifierKind.JoinsAnd or ModifierKind.JoinsOr ? joined : 0;
            if (named == 0)
            {
                return null;
            }

            index += named;
        }

        return null;
    }

    /// <summary>True where a part of the body, a line's word or a problem with the part itself stands.</summary>
    private bool NamesPart(int index) => Head.At(at, index, out _) is { Word: { Kind: not WordKind.Act, Word: not "done" } } || at.Phrase(vocabulary.Regions, index, out _) > 0 || at.Phrase(vocabulary.Sides, index, out _) > 0
        || (at.IsWord(index) && at.Parts[index].Span.Length >= LineReader.ShortestSlip && vocabulary.IsNoSlip(at.TextAt(index).ToString()) is false && NearestWord.Find(at.TextAt(index).ToString(), vocabulary.LineWords.Spellings, most: 1) is not null);

    private Head? OwnWord(int start)
    {
        string text = at.Line;
        int wordEnd = start;
        while (wordEnd < at.End && !Scanners.IsBlank(text[wordEnd]) && (wordEnd == start || !(Scanners.IsSeparator(text[wordEnd]) || text[wordEnd] is '<' or '>' or '~' or '=')))
        {
            wordEnd++;
        }

        ReadOnlySpan<char> written = text.AsSpan(start, wordEnd - start).TrimEnd(":,;.");
        var span = new TextSpan(start, written.Length);
        LineWord? word = vocabulary.LineWords.Find(written, out int phrase);
        if (word is not null && phrase == 1 && vocabulary.Leads.IsAlone(written))
        {
            if ((!word.Has(SlotKind.Text) && !word.Has(SlotKind.File)) || FactSlots.EndsAtFact(word))
            {
                Cut(span.End, word);
            }

            return new Head(word, span);
        }

        Cut(start, word);
        Head? head = Head.At(at, 0, out int count, first: true);
        return head is not null && Modifiers.At(at, 0) is { } negation && negation.Count > count ? null : Behind(head, count);
    }

    /// <summary>The head, with the cursor's parts behind it.</summary>
    private Head? Behind(Head? head, int count)
    {
        at.StartParts(at.Parts[count..]);
        return head;
    }

    /// <summary>A phrase or a negation comes first: <c>limping front left</c>, <c>no cough</c>, <c>no longer limping</c>.</summary>
    private Head? PhraseFirst(int start)
    {
        Cut(start, word: null);
        int first = 0;
        while (first + 1 < at.Parts.Count && Modifiers.At(at, first) is null && at.Phrase(vocabulary.Small, first, out ModifierWord? small) is > 0 and var count && small!.Kind == ModifierKind.Filler && Head.At(at, first, out _) is null)
        {
            // "he was limping", "I have forgotten the insulin"
            at.Mark(TokenKind.Filler, at.SpanOf(first, count));
            first += count;
        }

        return Head.AtWithNegation(at, first, out int length, first: true) is { } head && (first > 0 || head.Negation is not null || head.Lead is not null) ? Behind(head, first + length) : null;
    }

    /// <summary>The place, or an article, comes before the word: <c>right ear smells</c>, <c>carpus R swollen</c>.</summary>
    private Head? PlaceFirst(int start)
    {
        if (wordFound)
        {
            // a line that starts with its own word is not read as another line
            return null;
        }

        Cut(start, word: null);
        if (Head.Measure(at, 0) is { Word.Word: "weight" } && at.Parts[0] is NumberPart heavy && UnitBehind(heavy, 0) is { Word: "kg" or "lb" or "st" })
        {
            // "20.6 kilos on the meal scales" is a weight
            return null;
        }

        for (int index = 1; index < at.Parts.Count; index++)
        {
            if (Modifiers.At(at, index - 1) is not null || (at.StartsSegment(index) && Enumerable.Range(0, index).Any(before => at.IsWord(before) && vocabulary.IsDescribing(at.TextAt(before).ToString()))))
            {
                // "back better, walked 20 min": what was seen belongs to its own stretch
                // what a negation belongs to stands behind it, and must stay there
                break;
            }

            if (Head.At(at, index, out int count) is { Lead: not null, Word.Word: "done" } act && index <= 2 && !Enumerable.Range(0, index).Any(before => vocabulary.IsDescribing(at.TextAt(before).ToString())))
            {
                // "front nails trimmed": the whole line names what was done
                at.StartParts(at.Parts[(index + count)..]);
                return act with { Span = TextSpan.Between(start, act.Span.End) };
            }

            if (at.Phrase(vocabulary.Sides, index, out _) > 0)
            {
                // "carpus R swollen": a side, and not the letter for breathing
                continue;
            }

            if (Head.At(at, index, out count) is { } head && head.Word.Kind is WordKind.Exam or WordKind.Scan or WordKind.Vital or WordKind.Care && !head.Word.Has(SlotKind.Medicine))
            {
                if (head.Word.Kind is WordKind.Exam or WordKind.Scan && at.Parts[0] is NumberPart { BoundSpan.Length: 0, Second.Exists: false, First: { Unit.Length: 0, Digits.Length: <= 2 } } counted && index <= 2)
                {
                    // "2 scabs", "3 teeth missing": how many, kept as written
                    at.StartParts((Part[])[new Part(PartKind.Word, counted.Span), .. at.Parts[1..]]);
                }

                at.StartParts((ArraySegment<Part>)(Part[])[.. at.Parts[..index], .. at.Parts[(index + count)..]]);
                return head;
            }
        }

        for (int index = 0, length; index < at.Parts.Count; index += Math.Max(1, length))
        {
            length = at.Phrase(vocabulary.Regions, index, out Region? region);
            if (length > 0 && PartAt(region!, index) is { } part)
            {
                return new Head(part, new TextSpan(at.Parts[index].Span.Start, 0));
            }
        }

        LineWord whole = vocabulary.LineWords.Find("limb")!;
        int first = 0;
        while (first < at.Parts.Count && at.IsWord(first) && (vocabulary.Describing(whole).Find(at.TextAt(first)) is { Part: not "any" } or { Word: "worse" or "better" } || (first > 0 && at.Is(first, "on"))))
        {
            first++;
        }

        return first < at.Parts.Count && at.Phrase(vocabulary.Sides, first, out FixedWord? limb) is > 0 and var sides && limb!.Word is not ("L" or "R" or "both" or "mid") && (first > 0 || sides < at.Parts.Count)
            ? new Head(whole, new TextSpan(at.Parts[0].Span.Start, 0)) // "RH swollen", "hind legs weak", "swollen hinds"
            : null;
    }

    /// <summary>
    /// What is looked at in a place that no word of the line names: the joint, the lymph node, the muscle, or where the line holds a
    /// sign that only skin has, the skin: <c>chin red</c>, <c>groin sore and red</c>. Null for a place that is none of these.
    /// </summary>
    private LineWord? PartAt(Region region, int place)
    {
        LineWord? part = region.Roles.FirstOrDefault(role => role is "joint" or "node" or "muscle") is { } role ? vocabulary.LineWords.Find(role) : null;
        LineWord skin = vocabulary.LineWords.Find("skin")!;
        int OwnSigns(LineWord? of) => of is null ? 0 : Enumerable.Range(0, at.Parts.Count).TakeWhile(index => index <= place || !at.StartsSegment(index)).Count(index => at.Phrase(vocabulary.Describing(of), index, out DescribingWord? sign) > 0 && sign!.Part != "any");
        return region.Roles.Contains("body") && OwnSigns(skin) > OwnSigns(part) ? skin : part;
    }

    /// <summary>The medicine comes first: <c>carprofen 75mg 8am</c>, <c>gabapentin missed 16:00</c>. With an interval it is a plan.</summary>
    private Head? MedicineFirst(int start)
    {
        Cut(start, word: null, tight: true);
        (ModifierWord Word, int Count)? negation = at.HasPart ? Modifiers.At(at, 0) : null;
        bool more = at.Is(0, "no") && at.Is(1, "more"); // "no more meloxicam"
        bool not = negation is { } no && Skip(no.Count, TokenKind.Keyword);
        if (!at.IsWord(0) || MedicineLength(out int longest) is not (> 0 and var name) || (wordFound && longest < 2))
        {
            return null;
        }

        if ((not && Enumerable.Range(name, at.Parts.Count - name).Any(index => at.IsWord(index) && vocabulary.Fixed("needed").Find(at.TextAt(index)) is not null))
            || at.Is(name, "level") || at.Is(name, "levels") || Enumerable.Range(name, at.Parts.Count - name).Any(index => at.Is(index, "due")))
        {
            // "no antibiotics needed": none was missed; "phenobarbital level 98 umol/L": none was given
            return null;
        }

        TextSpan span = at.SpanOf(0, name);
        string word = !not ? "gave" : more || negation!.Value.Word.Kind == ModifierKind.Ended ? "stop" : "missed";
        List<Part> parts = [.. at.Parts];
        for (int index = name; index < parts.Count; index++)
        {
            if (at.StartsSegment(index) && parts.Take(index).Any(part => part is NumberPart && TimeReader.Read(at.TextOf(part)) is not null))
            {
                // "pimobendan 6.30am, spat out the evening one": another dose
                word = at.Is(index + 1, "it") && vocabulary.Fixed("dose-refused").Find(at.TextAt(index)) is not null ? "missed" : word;
                break;
            }

            if (parts[index].Kind != PartKind.Word)
            {
                continue;
            }

            if (vocabulary.Before.Find(at.TextOf(parts[index])) is not null && index + 1 < parts.Count && parts[index + 1].Kind == PartKind.Word && vocabulary.DoseEvents.Find(at.TextOf(parts[index + 1])) is { Word: "gave" })
            {
                // "carprofen not given"
                word = "missed";
                at.Mark(TokenKind.Filler, at.SpanOf(index, 2));
                parts.RemoveRange(index, 2);
                break;
            }

            if (vocabulary.DoseEvents.Find(at.TextOf(parts[index])) is { } said)
            {
                if (said.Word == "missed" && Enumerable.Range(name, index - name).Any(before => vocabulary.Fixed("day").Find(at.TextAt(before)) is not null) && Enumerable.Range(name + 1, index - name).Any(at.StartsSegment))
                {
                    // "drops in am, forgot pm one": one was given
                    return null;
                }

                if (said.Word == "missed" && StretchPatterns.GivenLater(at) > index)
                {
                    // "forgotten, given at 11:10": it was given, and that it was late is kept as written
                    continue;
                }

                word = not ? word : said.Word;
                at.Mark(TokenKind.Filler, parts[index].Span);
                parts.RemoveAt(index);
                break;
            }

            if (vocabulary.Fixed("dose-refused").Find(at.TextOf(parts[index])) is not null)
            {
                word = "missed";
                break;
            }
        }

        at.StartItem(vocabulary.LineWords.Find("med")!, span);
        bool times = Enumerable.Range(name, at.Parts.Count - name).Any(index => at.Parts[index] is NumberPart && TimeReader.Read(at.TextAt(index)) is not null && !ScheduleSlots.Starts(at, index - 1));
        bool ordered = vocabulary.Fixed("ordered").Find(at.TextAt(0)) is not null;
        bool changed = word == "gave" && !times && Enumerable.Range(name, at.Parts.Count - name).Any(index => at.Phrase(vocabulary.Fixed("dose-change"), index, out _) > 0);
        bool plan = ordered || changed || (word == "gave" && !times && Enumerable.Range(name, at.Parts.Count - name).Any(index => (ScheduleSlots.Starts(at, index) && TimeReader.Within(at, index, out _) is null) || (at.Phrase(vocabulary.States(StateSlots.ScopeOf(at)), index, out StateWord? manner) > 0 && manner!.Kind == StateKind.When)));
        TextSpan order = at.Parts[0].Span;
        if (ordered)
        {
            at.Mark(TokenKind.LineWord, parts[0].Span);
            parts.RemoveAt(0);
        }

        at.StartParts(parts.ToArray());
        return new Head(vocabulary.LineWords.Find(plan ? "med" : word)!, ordered ? order : new TextSpan(span.Start, 0));
    }

    /// <summary>A fact comes without its word: <c>dog, female, spayed</c>.</summary>
    private Head? FactFirst(int start)
    {
        Cut(start, word: null);
        int end = 1;
        while (end < at.Parts.Count && !at.StartsSegment(end))
        {
            end++;
        }

        // "greyhound, girl, desexed": a breed, where a fact without its word follows
        return Head.Fact(at, 0) ?? (end < at.Parts.Count && Head.Fact(at, end) is not null ? Head.Breed(at, 0) : null);
    }

    /// <summary>A measure comes without its word, where its unit tells it: <c>5.2kg on the scales at the vet</c>.</summary>
    private Head? NumberFirst(int start)
    {
        Cut(start, word: null);
        return Head.Measure(at, 0);
    }

    /// <summary>What falls due comes before the word: <c>glucose curve due Nov 9</c>.</summary>
    private Head? TopicFirst(int start)
    {
        Cut(start, word: null);
        for (int index = 1; index + 1 < at.Parts.Count && !at.StartsSegment(index); index++)
        {
            LineWord due = vocabulary.LineWords.Find("due")!;
            at.StartItem(due, new TextSpan(start, 0));
            if (at.Is(index, "due") && (ScheduleSlots.Starts(at, index + 1) || Dates.Starts(at, index + 1, yearless: true) || (at.Parts[index + 1] is NumberPart length && UnitBehind(length, index + 1) is { Quantity: Quantity.Time })))
            {
                at.Mark(TokenKind.LineWord, at.Parts[index].Span);
                int topic = index > 1 && (at.Is(index - 1, "is") || at.Is(index - 1, "are")) ? index - 1 : index;
                if (topic < index)
                {
                    at.Mark(TokenKind.Filler, at.Parts[topic].Span);
                }

                at.StartParts((ArraySegment<Part>)(Part[])[.. at.Parts[..topic], .. at.Parts[(index + 1)..]]);
                return new Head(due, new TextSpan(start, 0));
            }

            if (IsAppointment(index))
            {
                return new Head(due, new TextSpan(start, 0));
            }

            if ((!wordFound || at.Phrase(vocabulary.Leads, 0, out LeadWord? act) > 0 && act!.Lines is [{ Word: "done" }]) && at.Is(index, "in") && vocabulary.DoseEvents.Find(at.TextAt(0)) is null && index + 2 <= at.Parts.Count && at.Parts[index + 1] is NumberPart ahead && UnitBehind(ahead, index + 1) is { Quantity: Quantity.Time, Factor: >= SecondsADay }
                && (index + (ahead.First.Unit.Length > 0 ? 2 : 3)) == at.Parts.Count)
            {
                // "curve in 2 wks", "staples out in 14d": what lies days ahead is to come
                return new Head(due, new TextSpan(start, 0));
            }
        }

        return null;
    }

    /// <summary>True for the <c>check at vet 26 nov</c> of <c>ear check at vet 26 nov</c>.</summary>
    private bool IsAppointment(int index)
    {
        if (!at.IsWord(index) || vocabulary.Fixed("entry").Find(at.TextAt(index)) is not { Word: "check" or "visit" })
        {
            return false;
        }

        at.StartItem(vocabulary.LineWords.Find("due")!, default);
        int day = index + 1;
        while (at.IsWord(day) && (vocabulary.Small.Find(at.TextAt(day)) is not null || at.Is(day, "at") || at.Is(day, "on") || vocabulary.Fixed("entry").Find(at.TextAt(day)) is not null))
        {
            day++;
        }

        return Dates.Starts(at, day, yearless: true);
    }

    private bool Skip(int count, TokenKind kind)
    {
        at.Mark(kind, at.SpanOf(0, count));
        at.StartParts(at.Parts[count..]);
        return true;
    }

    /// <summary>How many parts at the start name a medicine: one that is known, or a name of one or two words before an amount of medicine.</summary>
    private int MedicineLength(out int longest)
    {
        longest = 0;
        for (int index = 0; index < Math.Min(3, at.Parts.Count); index++)
        {
            if (at.IsWord(index) && at.Phrase(vocabulary.Medicines, index, out _) is > 0 and var count)
            {
                longest = index == 0 ? count : 0;
                return index + count;
            }

            if (at.IsWord(index) && vocabulary.Fixed("ordered").Find(at.TextAt(index)) is null && vocabulary.Small.Find(at.TextAt(index)) is null && vocabulary.NumberWords.Find(at.TextAt(index)) is null
                && vocabulary.Units.Find(at.TextAt(index)) is null && vocabulary.Fixed("day").Find(at.TextAt(index)) is null)
            {
                // "held", "last dose": words before the medicine may mean that it was not given
                break;
            }
        }

        for (int index = 1; index <= 2 && index < at.Parts.Count; index++)
        {
            if (NameSlots.IsOrdinary(vocabulary, at.TextAt(index - 1).ToString()))
            {
                return 0;
            }

            if (at.Parts[index] is NumberPart number && UnitBehind(number, index) is { Quantity: Quantity.Dose or Quantity.DoseRate } or { Word: "mg" or "ug" or "ml" })
            {
                return index;
            }
        }

        return 0;
    }

    private Unit? UnitBehind(NumberPart number, int index)
    {
        Operand last = number.Second.Exists ? number.Second : number.First;
        ReadOnlySpan<char> unit = last.Unit.Length > 0 ? last.Unit.In(at.Line) : at.IsWord(index + 1) ? at.TextAt(index + 1) : "";
        return vocabulary.Units.Find(unit) ?? vocabulary.Units.Find(unit[..Math.Max(0, unit.IndexOf('/'))]);
    }

    /// <summary>The parts of the line, cut once each way.</summary>
    private ArraySegment<Part> PartsOf(bool loose)
    {
        if (!ReferenceEquals(cutLine, at.Line) || cutEnd != at.End)
        {
            (cutLine, cutEnd) = (at.Line, at.End);
            looseParts = tightParts = ArraySegment<Part>.Empty;
        }

        ref ArraySegment<Part> parts = ref loose ? ref looseParts : ref tightParts;
        if (parts.Count == 0)
        {
            parts = PartReader.Read(at.Line, at.End, loose);
            if (at.Line.Contains('/'))
            {
                parts = parts.SelectMany(Pieces).ToArray();
            }
        }

        return parts;
    }

    /// <summary>The words of <c>fleas/ticks</c>, with the slash as a word between them; the part itself where it has a meaning, or a piece has none.</summary>
    private IEnumerable<Part> Pieces(Part part)
    {
        string text = at.TextOf(part).ToString();
        if (text is "24/7")
        {
            yield return new Part(PartKind.Word, part.Span);
            yield break;
        }

        if (part.Kind != PartKind.Word || !text.Contains('/') || vocabulary.MeansSomething(text) || !text.Split('/').All(piece => piece.Length >= ShortestPiece && vocabulary.MeansSomething(piece)))
        {
            yield return part;
            yield break;
        }

        int start = part.Span.Start;
        foreach (string piece in text.Split('/'))
        {
            if (start > part.Span.Start)
            {
                yield return new Part(PartKind.Word, new TextSpan(start - 1, 1));
            }

            yield return new Part(PartKind.Word, new TextSpan(start, piece.Length));
            start += piece.Length + 1;
        }
    }

    private void Cut(int from, LineWord? word, bool tight = false)
    {
        bool loose = !tight && (word is null || word.Has(SlotKind.Range) || !(word.Has(SlotKind.Medicine) || word.Has(SlotKind.Rule) || word.Has(SlotKind.Times) || word.Has(SlotKind.Duration)));
        ArraySegment<Part> parts = PartsOf(loose);
        int first = 0;
        while (first < parts.Count && parts[first].Span.Start < from)
        {
            first++;
        }

        at.StartParts(parts[first..]);
    }
}
