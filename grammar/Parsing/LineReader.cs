using System.Collections.Immutable;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Text;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Grammar.Parsing;

/// <summary>Reads one line on its own: decides what kind it is from its first word and hands it on.</summary>
/// <remarks>One reader serves one thread: it keeps the working memory of the line it reads.</remarks>
internal sealed class LineReader
{
    private readonly NoteVocabulary vocabulary;
    private readonly List<Token> tokens = [];
    private readonly LineBinder binder;

    public LineReader(NoteVocabulary vocabulary)
    {
        this.vocabulary = vocabulary;
        binder = new LineBinder(vocabulary, tokens);
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
            return new LineSyntax(LineKind.Blank, text, ending, [], null, null, []);
        }

        if (text[start] == '#')
        {
            return new LineSyntax(LineKind.Comment, text, ending, [new Token(TokenKind.Comment, TextSpan.Between(start, text.Length))], null, null, []);
        }

        if (text[start] == '>')
        {
            return FreeText(text, ending, start);
        }

        if (text.Length > ReadingLimits.LongestLine)
        {
            return Unknown(text, ending, new Problem(ProblemRules.LineTooLong, TextSpan.Between(start, text.Length),
                $"this line has {text.Length} characters; lines of up to {ReadingLimits.LongestLine} are read. Put long text in lines that start with >"));
        }

        int end = ContentEnd(text, start);
        return EntryHeadReader.LooksLikeDate(text.AsSpan(start, end - start))
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

    private static LineSyntax FreeText(string text, string ending, int start)
    {
        ImmutableArray<Token> tokens = start + 1 == text.Length
            ? [new Token(TokenKind.QuoteMark, new TextSpan(start, 1))]
            : [new Token(TokenKind.QuoteMark, new TextSpan(start, 1)), new Token(TokenKind.Text, TextSpan.Between(start + 1, text.Length))];
        return new LineSyntax(LineKind.FreeText, text, ending, tokens, null, null, []);
    }

    private static LineSyntax Unknown(string text, string ending, Problem problem)
    {
        return new LineSyntax(LineKind.Unknown, text, ending, [new Token(TokenKind.Unknown, problem.Span)], null, null, [problem]);
    }

    private LineSyntax Item(string text, string ending, int start, int end)
    {
        int wordStart = start;
        TimeOnly? time = null;
        Problem? badTime = null;
        tokens.Clear();
        if (Scanners.IsDigit(text[start]) && (TimeReader.TryTake(text, start, end, out TimeOnly? read, out int timeEnd, out badTime)
            || TimeReader.TryTakeBare(text, start, end, out read, out timeEnd)))
        {
            time = read;
            tokens.Add(new Token(TokenKind.Time, TextSpan.Between(start, timeEnd)));
            wordStart = timeEnd;
            while (wordStart < end && (Scanners.IsBlank(text[wordStart]) || Scanners.IsSeparator(text[wordStart]) || text[wordStart] == ':'))
            {
                wordStart++;
            }
        }

        int wordEnd = wordStart;
        while (wordEnd < end && !Scanners.IsBlank(text[wordEnd]) && (wordEnd == wordStart || !Scanners.IsSeparator(text[wordEnd])))
        {
            wordEnd++;
        }

        ReadOnlySpan<char> written = text.AsSpan(wordStart, wordEnd - wordStart).TrimEnd(":,;");
        while (wordEnd < end && Scanners.IsSeparator(text[wordEnd]) && !(wordEnd + 1 < end && text[wordEnd + 1] == '#'))
        {
            wordEnd++;
        }

        var headSpan = new TextSpan(wordStart, written.Length);
        LineWord? word = vocabulary.LineWords.Find(written);
        string? implied = null;
        if (word is null && vocabulary.Abbreviations("head").Find(written) is { } abbreviation)
        {
            int blank = abbreviation.StandsFor.IndexOf(' ', StringComparison.Ordinal);
            word = vocabulary.LineWords.Find(blank < 0 ? abbreviation.StandsFor : abbreviation.StandsFor.AsSpan(0, blank));
            implied = blank < 0 ? null : abbreviation.StandsFor[(blank + 1)..];
        }

        if (word is null)
        {
            TextSpan meant = written.IsEmpty ? TextSpan.Between(start, end) : headSpan;
            LineSyntax unknown = Unknown(text, ending, UnknownWord(text, meant));
            List<Token> unknownTokens = written.IsEmpty ? [.. unknown.Marks] : [.. tokens, new Token(TokenKind.Unknown, TextSpan.Between(wordStart, end))];
            AddComment(text, end, unknownTokens);
            return unknown with { Marks = [.. unknownTokens] };
        }

        tokens.Add(new Token(TokenKind.LineWord, headSpan));
        binder.Start(text, end, new(word, headSpan, time));
        if (badTime is not null)
        {
            binder.Report(badTime);
        }

        Notes.NoteItem? item = binder.Bind(wordEnd, implied);
        AddComment(text, end, tokens);
        return new LineSyntax(LineKind.Item, text, ending, [.. tokens], item, null, binder.Problems);
    }

    private Problem UnknownWord(string text, TextSpan span)
    {
        string typed = span.In(text).ToString();
        if (Scanners.IsDigit(typed[0]))
        {
            return new Problem(ProblemRules.UnknownLine, span,
                $"`{typed}` is no line word: a line starts with a date (2026-10-04), a time (07:30) or a word such as hr, ear or lump");
        }

        string? nearest = NearestWord.Find(typed, vocabulary.LineWords.Spellings.Concat(vocabulary.Abbreviations("head").Spellings));
        string hint = nearest is null
            ? "start it with a word such as hr, ear or lump, or with > for free text"
            : $"did you mean `{nearest}`?";
        return new Problem(ProblemRules.UnknownLine, span, $"`{typed}` is not a word that a line starts with; {hint}", nearest);
    }
}
