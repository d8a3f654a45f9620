using System.Collections.Immutable;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Scanning;
using HealthNotes.Grammar.Slots;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Text;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Grammar.Parsing;

/// <summary>Reads one line on its own: decides what kind it is from its first word and hands it on.</summary>
/// <remarks>One reader serves one thread: it keeps the working memory of the line it reads.</remarks>
internal sealed class LineReader
{
    internal const int ShortestSlip = 4;
    private const int ShortestProse = 4;
    private const int WordsOfSaid = 3;

    private readonly NoteVocabulary vocabulary;
    private readonly Cursor at;
    private readonly ItemReader items;

    private readonly bool corrects;
    private LineReader? alone;
    private readonly HeadFinder heads;

    /// <summary>A reader; one that <paramref name="corrects"/> reads a line that has a likely slip once more without it.</summary>
    public LineReader(NoteVocabulary vocabulary, bool corrects = true)
    {
        this.vocabulary = vocabulary;
        this.corrects = corrects;
        at = new Cursor(vocabulary);
        items = new ItemReader(at);
        heads = new HeadFinder(at);
    }

    /// <summary>A reader that corrects nothing, for a part of a line or another form of it.</summary>
    private LineReader Alone => alone ??= new LineReader(vocabulary, corrects: false);

    public LineSyntax Read(string text, string ending)
    {
        if (ConflictMark.IsMark(text))
        {
            return Unknown(text, ending, new Problem(ProblemRules.Conflict, TextSpan.Between(0, text.Length),
                "This line marks two versions of the lines around it, which were not joined. Keep both versions, or take out the lines that are not right and the three marks."));
        }

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

        if (text[start] != '>' && FoundByVet(text, ending, start) is { } found)
        {
            return found;
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

    /// <summary>What a vet found, where all of it is read: <c>vet heard wheezes both sides</c>; null for what a vet thinks, says or advises.</summary>
    private LineSyntax? FoundByVet(string text, string ending, int start)
    {
        int end = ContentEnd(text, start);
        int words = PhraseLength("found-by-vet", text.AsSpan(start, end - start));
        if (words == 0 || text.Length > ReadingLimits.LongestLine)
        {
            return null;
        }

        int from = start + words;
        while (from < end && Scanners.IsBlank(text[from]))
        {
            from++;
        }

        return from < end && ReadItems(text, ending, from, end, null) is { Kind: LineKind.Item, Problems.IsEmpty: true } line
            && line.Items.All(item => item.Word.Kind is WordKind.Exam or WordKind.Vital or WordKind.Scan) ? StretchReader.WithAside(line, new TextSpan(start, words)) : null;
    }

    /// <summary>True for what somebody said, which is free text without its mark: <c>vet says keep her warm</c>.</summary>
    private bool IsSaid(ReadOnlySpan<char> text) => (text[0] | ' ') is 'v' or 't' or 'c' or 'n' or 'd' or 'p' or 'a' or 's' or 'h' or 'e' or 'o' && (Starts("said", text) || IsVet(text));

    /// <summary>True for <c>vet: yeast in the left ear, eardrum ok</c>: a name starts with a capital and is short.</summary>
    private static bool IsVet(ReadOnlySpan<char> text) => text.StartsWith("vet:", StringComparison.OrdinalIgnoreCase) && text[4..].TrimStart() is { Length: > 0 } said
        && !char.IsUpper(said[0]) && said.Count(' ') >= WordsOfSaid;

    private bool Starts(string list, ReadOnlySpan<char> text) => PhraseLength(list, text) > 0;

    /// <summary>How many characters the phrase of two or three words has with which the text starts, out of a list; 0 where none does.</summary>
    private int PhraseLength(string list, ReadOnlySpan<char> text)
    {
        int length = 0;
        for (int words = 0; words < WordsOfSaid && length < text.Length; words++)
        {
            int blank = text[length..].IndexOf(' ');
            length = blank < 0 ? text.Length : length + blank;
            if (words > 0 && vocabulary.Fixed(list).Find(text[..length].TrimEnd(":,")) is not null)
            {
                return length;
            }

            length++;
        }

        return 0;
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
            if (read is { } clock && TimeReader.WithHalf(vocabulary, text, timeEnd, end, clock) is { } whole)
            {
                (time, timeEnd) = whole;
            }

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
        for (int way = 0; way < heads.Ways; way++)
        {
            at.StartLine(text, end);
            if (heads.Find(way, start) is not { } head)
            {
                continue;
            }

            if (head.Span.Length > 0)
            {
                at.Mark(TokenKind.LineWord, head.Span);
            }

            if (head.Negation is { } negation)
            {
                at.Mark(TokenKind.Keyword, negation.Span);
            }

            ImmutableArray<NoteItem> read = items.Read(head, time);
            bool ahead = HeadFinder.IsPlaceFirst(way) && (first is null || NamesMedicine(head.Span.Start)) && !OnlyWhere(head.Span.Start) && read.Any(item => item.Note?.Span.Start < head.Span.Start || (head.Lead is null && item.Name?.Span.Start < head.Span.Start));
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

        if (corrects && (first?.Problems is null or [{ Rule: ProblemRules.UnknownWord or ProblemRules.UnknownLine or ProblemRules.Missing, Nearest: null }]) && ByStretch(text, ending, start, end, time) is { } joined)
        {
            return joined;
        }

        LineSyntax unread = first is null || Dates.StartsWithDay(text.AsSpan(start, end - start)) ? Unread(text, ending, start, end) : WithCorrection(first);
        return time is null && unread.Problems is not [{ Corrected: not null }] && (Starts("advice", text.AsSpan(start, end - start)) || text.AsSpan(start, end - start).StartsWith("the vet ", StringComparison.OrdinalIgnoreCase) || (first is null && IsProse(text, start, end)))
            ? new LineSyntax(LineKind.FreeText, text, ending, [new Token(TokenKind.Text, TextSpan.Between(start, end))], [], null, [])
            : unread;
    }

    /// <summary>The line read stretch by stretch, by a reader that corrects nothing.</summary>
    private LineSyntax? ByStretch(string text, string ending, int start, int end, TimeOnly? time)
    {
        return Dates.StartsWithDay(text.AsSpan(start, end - start)) ? null
            : new StretchReader(vocabulary, stretch => Alone.ReadItems(text, ending, stretch.Start, stretch.End, time)).Read(text, ending, start, end);
    }

    /// <summary>
    /// True for ordinary prose, which is kept as free text: four words or more, most of them ordinary ones, with nothing in it that
    /// could have been meant as an observation: no number, part of the body, sign, medicine, nor a word that is nearly one.
    /// </summary>
    private bool IsProse(string text, int start, int end)
    {
        ArraySegment<Part> parts = PartReader.Read(text, end, blanksInNumbers: false);
        int words = 0;
        int ordinary = 0;
        for (int index = 0; index < parts.Count; index++)
        {
            Part part = parts[index];
            if (part.Span.Start < start)
            {
                continue;
            }

            string word = part.Span.In(text).ToString();
            if (part.Kind != PartKind.Word || vocabulary.MeansSomething(word))
            {
                return false;
            }

            bool plain = vocabulary.IsNoSlip(word);
            if (!plain && word.Length >= ShortestSlip && NearestWord.Find(word, vocabulary.Signs, most: 1) is not null)
            {
                return false;
            }

            words++;
            ordinary += plain ? 1 : 0;
        }

        return words >= ShortestProse && ordinary * 2 >= words;
    }

    /// <summary>True where the line's remarks before the head only describe it: <c>hind legs</c>, <c>top left gum</c>, <c>small scab</c>.</summary>
    private bool OnlyWhere(int head) => at.Tokens.TrueForAll(token => token.Kind != TokenKind.Text || token.Span.Start >= head
        || token.Span.In(at.Line).ToString().Split(' ').All(word => vocabulary.Fixed("where").Find(word) is not null || word.All(char.IsAsciiDigit)));

    /// <summary>True where a medicine stands in a remark before the head: <c>meloxicam given with breakfast</c> is not a meal.</summary>
    private bool NamesMedicine(int head) => at.Tokens.Exists(token => token.Kind == TokenKind.Text && token.Span.Start < head && token.Span.In(at.Line).ToString().Split(' ').Any(word => vocabulary.Medicines.Find(word) is not null));

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
        LineSyntax tried = Alone.Read(corrected, line.Ending);
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
        problem = problem.Nearest is null && RestIsRead(text, start, end) is { } rest ? problem with { Span = TextSpan.Between(start, rest.Start - 1), Message = $"`{TextSpan.Between(start, rest.Start - 1).In(text)}` holds no word a line starts with. Write `> {TextSpan.Between(start, rest.Start - 1).In(text)}` on one line, and `{rest.In(text).Trim()}` on another." } : problem;
        var line = new LineSyntax(LineKind.Unknown, text, ending, [new Token(TokenKind.Unknown, TextSpan.Between(start, end))], [], null, [problem]);
        return WithCorrection(line);
    }

    /// <summary>What stands behind the first comma, where that alone is a line that is read: <c>slipped on tiles, RH worse</c>.</summary>
    private TextSpan? RestIsRead(string text, int start, int end)
    {
        int comma = text.AsSpan(start, end - start).IndexOfAny(',', ';');
        var rest = TextSpan.Between(start + comma + 1, end);
        return corrects && comma > 0 && rest.Length > 0 && Alone.Read(rest.In(text).ToString(), "") is { Kind: LineKind.Item, Problems.IsEmpty: true } ? rest : null;
    }

    /// <summary>A part of the body that the sign behind a negation at the start goes with; null where none stands.</summary>
    private string? PartsLooked(string text, TextSpan span)
    {
        string[] words = text[span.Start..].Split([' ', ',', ';'], StringSplitOptions.RemoveEmptyEntries);
        return words.Length > 1 && vocabulary.Before.Find(words[0]) is not null
            ? vocabulary.LineWords.Terms.FirstOrDefault(word => word.Kind is WordKind.Scan && vocabulary.Describing(word).Find(words[1]) is { Part: not "any" })?.Word
                ?? vocabulary.LineWords.Terms.FirstOrDefault(word => word.Kind is WordKind.Exam && vocabulary.Describing(word).Find(words[1]) is { Part: not "any" })?.Word
            : null;
    }

    private Problem UnknownWord(string text, TextSpan span)
    {
        string typed = span.In(text).ToString();
        if (Scanners.IsDigit(typed[0]) && !Dates.StartsWithDay(text.AsSpan(span.Start)))
        {
            string behind = text[span.End..].Trim().Split([' ', ',', ';'])[0];
            return new Problem(ProblemRules.UnknownLine, span, vocabulary.Medicines.Find(behind) is not null
                ? $"`{typed} {behind}`: how much of it? Write gave, the medicine and the amount with its unit, such as gave {behind} {typed} tablet."
                : $"`{typed}` does not start a line I can read. Start with a date (2026-10-04), a time (07:30) or a word such as hr, ear or lump.");
        }

        if (Dates.StartsWithDay(text.AsSpan(span.Start)))
        {
            return new Problem(ProblemRules.UnknownLine, span, "This line starts with a day. Write the date with its year on a line of its own, such as 2026-10-22, and what happened below it.");
        }

        if (PartsLooked(text, span) is { } parts)
        {
            string looked = text[span.Start..].TrimEnd();
            return new Problem(ProblemRules.UnknownLine, span, $"`{typed}`: where was it looked for? Start with the part, such as {parts} {looked}.");
        }

        string? nearest = typed.Length < ShortestSlip || vocabulary.IsNoSlip(typed) ? null
            : NearestWord.Find(typed, vocabulary.LineWords.Spellings.Concat(vocabulary.Leads.Spellings), most: typed.Length < 8 ? 1 : 2) is { } near
                && char.ToLowerInvariant(near[0]) == char.ToLowerInvariant(typed[0]) ? near : null;
        string hint = nearest is null
            ? "Start with a word such as gums, ear, lump, ate or gave, or with > for free text."
            : $"Did you mean `{nearest}`?";
        return new Problem(ProblemRules.UnknownLine, span, $"I don't know what this line is about: `{typed}` is not a word a line starts with. {hint}", nearest);
    }
}
