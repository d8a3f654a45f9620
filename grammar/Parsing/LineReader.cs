using System.Collections.Immutable;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Slots;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Text;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Grammar.Parsing;

/// <summary>Reads one line on its own: decides what kind it is from its first word and hands it on.</summary>
/// <remarks>One reader serves one thread: it keeps the working memory of the line it reads.</remarks>
internal sealed class LineReader
{
    private const int ShortestSlip = 4;
    private const int WordsOfSaid = 3;

    private readonly NoteVocabulary vocabulary;
    private readonly Cursor at;
    private readonly ItemReader items;

    private readonly bool corrects;
    private readonly Func<int, Head?>[] ways;
    private bool wordFound;

    /// <summary>A reader; one that <paramref name="corrects"/> reads a line that has a likely slip once more without it.</summary>
    public LineReader(NoteVocabulary vocabulary, bool corrects = true)
    {
        this.vocabulary = vocabulary;
        this.corrects = corrects;
        at = new Cursor(vocabulary);
        items = new ItemReader(at);
        ways = [WordFirst, PhraseFirst, MedicineFirst, PlaceFirst, FactFirst, NumberFirst, TopicFirst];
    }

    public LineSyntax Read(string text, string ending)
    {
        int start = 0;
        while (start < text.Length && Scanners.IsBlank(text[start]))
        {
            start++;
        }

        if (start == text.Length)
        {
            return new LineSyntax(LineKind.Blank, text, ending, [], [], null, []);
        }

        if (text[start] == '#')
        {
            return Comment(text, ending, start);
        }

        if (text[start] == '>' || IsSaid(text.AsSpan(start)))
        {
            return FreeText(text, ending, start);
        }

        if (text.Length > ReadingLimits.LongestLine)
        {
            return Unknown(text, ending, new Problem(ProblemRules.LineTooLong, TextSpan.Between(start, text.Length),
                $"this line has {text.Length} characters; lines of up to {ReadingLimits.LongestLine} are read. Put long text in lines that start with >"));
        }

        int end = ContentEnd(text, start);
        return EntryHeadReader.LooksLikeHead(vocabulary, text.AsSpan(start, end - start))
            ? EntryHeadReader.Read(vocabulary, text, ending, start, end)
            : Item(text, ending, start, end);
    }

    /// <summary>Where the content ends: before a comment that follows a blank, without the blanks before it.</summary>
    private static int ContentEnd(string text, int start)
    {
        int end = text.Length;
        for (int at = text.IndexOf('#', start + 1); at >= 0; at = text.IndexOf('#', at + 1))
        {
            if (Scanners.IsBlank(text[at - 1]))
            {
                end = at;
                break;
            }
        }

        while (Scanners.IsBlank(text[end - 1]))
        {
            end--;
        }

        return end;
    }

    internal static void AddComment(string text, int contentEnd, List<Token> tokens)
    {
        int at = contentEnd;
        while (at < text.Length && Scanners.IsBlank(text[at]))
        {
            at++;
        }

        if (at < text.Length)
        {
            tokens.Add(new Token(TokenKind.Comment, TextSpan.Between(at, text.Length)));
        }
    }

    /// <summary>A comment. One that reads like the head of an entry would put the lines below it under another day, which is pointed at.</summary>
    private LineSyntax Comment(string text, string ending, int start)
    {
        var span = TextSpan.Between(start, text.Length);
        ReadOnlySpan<char> content = text.AsSpan(start).TrimStart('#').Trim();
        bool head = content.Length > 0 && content.Length <= 40 && EntryHeadReader.LooksLikeHead(vocabulary, content)
            && EntryHeadReader.Read(vocabulary, content.ToString(), "", 0, content.Length) is { Problems.IsEmpty: true };
        return new LineSyntax(LineKind.Comment, text, ending, [new Token(TokenKind.Comment, span)], [], null, !head ? []
            : [new Problem(ProblemRules.Misplaced, span, "This is a comment, so the lines below it belong to the entry above. Take the # away to start an entry.", Corrected: content.ToString())]);
    }

    /// <summary>True for what somebody said, which is free text without its mark: <c>vet says keep her warm</c>.</summary>
    private bool IsSaid(ReadOnlySpan<char> text)
    {
        int length = 0;
        for (int words = 0; words < WordsOfSaid && length < text.Length; words++)
        {
            int blank = text[length..].IndexOf(' ');
            length = blank < 0 ? text.Length : length + blank;
            if (words > 0 && vocabulary.Fixed("said").Find(text[..length].TrimEnd(":,")) is not null)
            {
                return true;
            }

            length++;
        }

        return false;
    }

    private static LineSyntax FreeText(string text, string ending, int start)
    {
        if (text[start] != '>')
        {
            return new LineSyntax(LineKind.FreeText, text, ending, [new Token(TokenKind.Text, TextSpan.Between(start, text.Length))], [], null, []);
        }

        ImmutableArray<Token> tokens = start + 1 == text.Length
            ? [new Token(TokenKind.QuoteMark, new TextSpan(start, 1))]
            : [new Token(TokenKind.QuoteMark, new TextSpan(start, 1)), new Token(TokenKind.Text, TextSpan.Between(start + 1, text.Length))];
        return new LineSyntax(LineKind.FreeText, text, ending, tokens, [], null, []);
    }

    private static LineSyntax Unknown(string text, string ending, Problem problem)
    {
        return new LineSyntax(LineKind.Unknown, text, ending, [new Token(TokenKind.Unknown, problem.Span)], [], null, [problem]);
    }

    private LineSyntax Item(string text, string ending, int start, int end)
    {
        if (start + 1 < end && text[start] is '-' or '*' or '•' && Scanners.IsBlank(text[start + 1]))
        {
            // a list's mark, as phones and habits put it
            start += 2;
            while (start < end && Scanners.IsBlank(text[start]))
            {
                start++;
            }
        }

        int wordStart = start;
        TimeOnly? time = null;
        Problem? badTime = null;
        Token? timeToken = null;
        if (Scanners.IsDigit(text[start]) && (TimeReader.TryTake(text, start, end, out TimeOnly? read, out int timeEnd, out badTime)
            || TimeReader.TryTakeBare(text, start, end, out read, out timeEnd) || TimeReader.TryTakeShort(text, start, end, out read, out timeEnd)))
        {
            time = read;
            timeToken = new Token(TokenKind.Time, TextSpan.Between(start, timeEnd));
            wordStart = timeEnd;
            while (wordStart < end && (Scanners.IsBlank(text[wordStart]) || Scanners.IsSeparator(text[wordStart]) || text[wordStart] == ':'))
            {
                wordStart++;
            }
        }

        LineSyntax line = wordStart < end ? ReadItems(text, ending, wordStart, end, time)
            : new LineSyntax(LineKind.Unknown, text, ending, [], [], null,
                [new Problem(ProblemRules.UnknownLine, timeToken!.Value.Span, "A time needs something behind it: a word such as hr, ear or gave.")]);
        ImmutableArray<Token> marks = line.Marks;
        if (timeToken is { } mark)
        {
            marks = marks.Insert(0, mark);
        }

        if (badTime is not null)
        {
            line = line with { Items = [], Problems = [badTime] };
        }

        if (end < text.Length)
        {
            List<Token> all = [.. marks];
            AddComment(text, end, all);
            marks = [.. all];
        }

        return marks == line.Marks ? line : line with { Marks = marks };
    }

    /// <summary>
    /// Reads the observations of a line behind its time. Its first word is tried as its head; where the line cannot be read whole
    /// so, a phrase, a place or a medicine at its start is. The first way that reads the whole line counts; else what is wrong
    /// with the first way is reported.
    /// </summary>
    private LineSyntax ReadItems(string text, string ending, int start, int end, TimeOnly? time)
    {
        LineSyntax? first = null;
        wordFound = false;
        for (int way = 0; way < ways.Length; way++)
        {
            at.StartLine(text, end);
            if (ways[way](start) is not { } head)
            {
                continue;
            }

            wordFound |= first is null && way == 0;
            if (head.Span.Length > 0)
            {
                at.Mark(TokenKind.LineWord, head.Span);
            }

            if (head.Negation is { } negation)
            {
                at.Mark(TokenKind.Keyword, negation.Span);
            }

            ImmutableArray<NoteItem> read = items.Read(head, time);
            bool ahead = first is null && ways[way] == PlaceFirst && !OnlyWhere(head.Span.Start) && read.Any(item => item.Note?.Span.Start < head.Span.Start || (head.Lead is null && item.Name?.Span.Start < head.Span.Start));
            if (at.Problems.Count == 0 && read.Length > 0 && !ahead)
            {
                return new LineSyntax(LineKind.Item, text, ending, Sorted(), read, null, []);
            }

            if (ahead)
            {
                continue;
            }

            first ??= new LineSyntax(LineKind.Item, text, ending, Sorted(), [], null, Sharpest());
            if (at.Problems.Exists(problem => problem.Rule == ProblemRules.OpenNegation))
            {
                // what can be read two ways is not read in a third
                break;
            }
        }

        return first is null ? Unread(text, ending, start, end) : WithCorrection(first);
    }


    /// <summary>True where the line's remarks before the head only describe it: <c>hind legs</c>, <c>top left gum</c>, <c>small scab</c>.</summary>
    private bool OnlyWhere(int head) => at.Tokens.TrueForAll(token => token.Kind != TokenKind.Text || token.Span.Start >= head
        || token.Span.In(at.Line).ToString().Split(' ').All(word => vocabulary.Fixed("where").Find(word) is not null));

    /// <summary>The first word is the line's own: <c>hr 18/15s</c>.</summary>
    private Head? WordFirst(int start)
    {
        Cut(start, word: null);
        if (at.Phrase(vocabulary.Medicines, 0, out _) > Math.Max(1, at.Phrase(vocabulary.LineWords, 0, out _)) && at.Phrase(vocabulary.Leads, 0, out _) == 0)
        {
            // the water of "water tablet" and the ear of "ear drops" name a medicine
            return null;
        }

        Head? head = OwnWord(start);
        if (head is { Word.Kind: WordKind.Skip, Lead: null } && Enumerable.Range(0, at.Parts.Count).TakeWhile(index => (index == 0 || !at.StartsSegment(index)) && Head.At(at, index, out _) is null)
            .Any(index => at.IsWord(index) && at.Phrase(vocabulary.Medicines, index, out _) > 0))
        {
            // "skipped noon gabapentin": a dose, and not a part of the body
            return head.Value with { Word = vocabulary.LineWords.Find("missed")! };
        }

        if (head is { Word.Word: "recheck", Lead: null } && at.IsWord(0) && at.IsWord(1))
        {
            LineWord due = vocabulary.LineWords.Find("due")!;
            at.StartItem(due, new TextSpan(start, 0));
            if (!ScheduleSlots.Starts(at, 1) && !Enumerable.Range(0, at.Parts.Count).Any(NamesPart))
            {
                // "recheck kidney values in 10 days": what falls due, in free words
                Cut(start, word: null);
                return new Head(due, new TextSpan(start, 0));
            }
        }

        return head;
    }

    /// <summary>True where a part of the body, a line's word or a problem with the part itself stands.</summary>
    private bool NamesPart(int index) => Head.At(at, index, out _) is not null || at.Phrase(vocabulary.Regions, index, out _) > 0 || at.Phrase(vocabulary.Sides, index, out _) > 0
        || (at.IsWord(index) && at.Parts[index].Span.Length >= ShortestSlip && vocabulary.Knows(at.TextAt(index).ToString()) is false && NearestWord.Find(at.TextAt(index).ToString(), vocabulary.LineWords.Spellings, most: 1) is not null);

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
            if (!word.Has(SlotKind.Text) && !word.Has(SlotKind.File))
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
                at.StartParts((ArraySegment<Part>)(Part[])[.. at.Parts[..index], .. at.Parts[(index + count)..]]);
                return head;
            }
        }

        for (int index = 0; index < at.Parts.Count; index++)
        {
            if (at.IsWord(index) && at.Phrase(vocabulary.Regions, index, out Region? region) > 0 && region!.Roles.FirstOrDefault(role => role is "joint" or "node" or "muscle") is { } part)
            {
                return new Head(vocabulary.LineWords.Find(part)!, new TextSpan(at.Parts[index].Span.Start, 0));
            }
        }

        return null;
    }

    /// <summary>The medicine comes first: <c>carprofen 75mg 8am</c>, <c>gabapentin missed 16:00</c>. With an interval it is a plan.</summary>
    private Head? MedicineFirst(int start)
    {
        Cut(start, word: null, tight: true);
        bool not = at.HasPart && Modifiers.At(at, 0) is { } negation && Skip(negation.Count, TokenKind.Keyword);
        if (!at.IsWord(0) || MedicineLength(out int longest) is not (> 0 and var name) || (wordFound && longest < 2))
        {
            return null;
        }

        TextSpan span = at.SpanOf(0, name);
        string word = not ? "missed" : "gave";
        List<Part> parts = [.. at.Parts];
        for (int index = name; index < parts.Count; index++)
        {
            if (at.StartsSegment(index) && parts.Take(index).Any(part => part is NumberPart && TimeReader.Read(at.TextOf(part)) is not null))
            {
                // "pimobendan 6.30am, spat out the evening one": another dose
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

        bool times = at.Parts.Skip(name).Any(part => part is NumberPart && TimeReader.Read(at.TextOf(part)) is not null);
        at.StartItem(vocabulary.LineWords.Find("med")!, span);
        bool ordered = vocabulary.Fixed("ordered").Find(at.TextAt(0)) is not null;
        bool plan = ordered || (word == "gave" && !times && Enumerable.Range(name, at.Parts.Count - name).Any(index => ScheduleSlots.Starts(at, index)));
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
            if (at.Is(index, "due") && (ScheduleSlots.Starts(at, index + 1) || (at.Parts[index + 1] is NumberPart length && UnitBehind(length, index + 1) is { Quantity: Quantity.Time })))
            {
                at.Mark(TokenKind.LineWord, at.Parts[index].Span);
                at.StartParts((ArraySegment<Part>)(Part[])[.. at.Parts[..index], .. at.Parts[(index + 1)..]]);
                return new Head(due, new TextSpan(start, 0));
            }
        }

        return null;
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

    private void Cut(int from, LineWord? word, bool tight = false)
    {
        bool loose = !tight && (word is null || !(word.Has(SlotKind.Medicine) || word.Has(SlotKind.Rule) || word.Has(SlotKind.Times) || word.Has(SlotKind.Duration)));
        ArraySegment<Part> parts = PartReader.Read(at.Line, at.End, loose);
        int first = 0;
        while (first < parts.Count && parts[first].Span.Start < from)
        {
            first++;
        }

        at.StartParts(parts[first..]);
    }

    /// <summary>The tokens in the order of the line, each once.</summary>
    private ImmutableArray<Token> Sorted()
    {
        List<Token> tokens = at.Tokens;
        bool sorted = true;
        for (int index = 1; index < tokens.Count && sorted; index++)
        {
            sorted = tokens[index].Span.Start >= tokens[index - 1].Span.End;
        }

        if (sorted)
        {
            return [.. tokens];
        }

        ImmutableArray<Token>.Builder ordered = ImmutableArray.CreateBuilder<Token>(tokens.Count);
        foreach (Token token in tokens.Where(token => token.Span.Length > 0).OrderBy(token => token.Span.Start).ThenByDescending(token => token.Span.Length))
        {
            if (ordered.Count == 0 || token.Span.Start >= ordered[^1].Span.End)
            {
                ordered.Add(token);
            }
        }

        return ordered.DrainToImmutable();
    }

    /// <summary>One message a line: the first problem, or that a needed part is missing where nothing else is wrong.</summary>
    private ImmutableArray<Problem> Sharpest() => at.Problems.Count == 0
        ? [new Problem(ProblemRules.Missing, at.HeadSpan, $"Something is missing behind `{at.HeadSpan.In(at.Line)}`.")]
        : [at.Problems.MinBy(problem => problem.Span.Start)!];

    /// <summary>Adds the corrected line where a known word in place of the typed one makes it right.</summary>
    private LineSyntax WithCorrection(LineSyntax line)
    {
        if (!corrects || line.Problems is not [{ Nearest: { } nearest } problem])
        {
            return line;
        }

        string corrected = string.Concat(line.Text.AsSpan(0, problem.Span.Start), nearest, line.Text.AsSpan(problem.Span.End));
        LineSyntax tried = new LineReader(vocabulary, corrects: false).Read(corrected, line.Ending);
        return tried.Problems.IsEmpty ? line with { Problems = [problem with { Corrected = corrected.Trim() }] } : line;
    }

    private LineSyntax Unread(string text, string ending, int start, int end)
    {
        int wordEnd = start;
        while (wordEnd < end && !Scanners.IsBlank(text[wordEnd]) && (wordEnd == start || !Scanners.IsSeparator(text[wordEnd])))
        {
            wordEnd++;
        }

        ReadOnlySpan<char> written = text.AsSpan(start, wordEnd - start).TrimEnd(":,;");
        TextSpan meant = written.IsEmpty ? TextSpan.Between(start, end) : new TextSpan(start, written.Length);
        Problem problem = UnknownWord(text, meant);
        var line = new LineSyntax(LineKind.Unknown, text, ending, [new Token(TokenKind.Unknown, TextSpan.Between(start, end))], [], null, [problem]);
        return WithCorrection(line);
    }

    private Problem UnknownWord(string text, TextSpan span)
    {
        string typed = span.In(text).ToString();
        if (Scanners.IsDigit(typed[0]) && !Dates.StartsWithDay(text.AsSpan(span.Start)))
        {
            return new Problem(ProblemRules.UnknownLine, span,
                $"`{typed}` does not start a line I can read. Start with a date (2026-10-04), a time (07:30) or a word such as hr, ear or lump.");
        }

        if (Dates.StartsWithDay(text.AsSpan(span.Start)))
        {
            return new Problem(ProblemRules.UnknownLine, span, "This line starts with a day. Write the date with its year on a line of its own, such as 2026-10-22, and what happened below it.");
        }

        string? nearest = typed.Length < ShortestSlip || vocabulary.Knows(typed) ? null
            : NearestWord.Find(typed, vocabulary.LineWords.Spellings.Concat(vocabulary.Leads.Spellings), most: typed.Length < 8 ? 1 : 2) is { } near
                && char.ToLowerInvariant(near[0]) == char.ToLowerInvariant(typed[0]) ? near : null;
        string hint = nearest is null
            ? "Start with a word such as gums, ear, lump, ate or gave, or with > for free text."
            : $"Did you mean `{nearest}`?";
        return new Problem(ProblemRules.UnknownLine, span, $"I don't know what this line is about: `{typed}` is not a word a line starts with. {hint}", nearest);
    }
}
