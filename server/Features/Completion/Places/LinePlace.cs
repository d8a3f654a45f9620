using HealthNotes.Features.Documents;
using HealthNotes.Grammar.Parsing;
using HealthNotes.Grammar.Scanning;
using HealthNotes.Grammar.Syntax;

namespace HealthNotes.Features.Completion.Places;

/// <summary>The cursor in its line, and the word it stands in.</summary>
/// <param name="Document">The document.</param>
/// <param name="Line">The index of the line.</param>
/// <param name="Cursor">The cursor's character.</param>
/// <param name="Start">Where the word starts; the cursor itself where no word is begun.</param>
/// <param name="End">Where the word ends: an offer takes the place of the whole word.</param>
internal sealed record LinePlace(Document Document, int Line, int Cursor, int Start, int End)
{
    /// <summary>The line's text.</summary>
    public string Text => Document.Syntax.Lines[Line].Text;

    /// <summary>The part of the word that is before the cursor.</summary>
    public string Typed => Text[Start..Cursor];

    /// <summary>What stands before the word.</summary>
    public string Before => Text[..Start];

    /// <summary>What stands behind the word.</summary>
    public string After => Text[End..];

    /// <summary>True where the next character belongs to another word: an offer needs a blank behind it.</summary>
    public bool NeedsBlank => Start == Cursor && End < Text.Length && !EndsWord(Text[End]);

    /// <summary>The place, or null where words are the writer's own: comments, free text, a line too long.</summary>
    public static LinePlace? At(Document document, Place place)
    {
        Place clamped = document.Clamp(place);
        LineSyntax line = document.Syntax.Lines[clamped.Line];
        int cursor = clamped.Character;
        if (line.Kind is LineKind.Comment or LineKind.FreeText || line.Text.Length > ReadingLimits.LongestLine)
        {
            return null;
        }

        foreach (Token mark in line.Marks)
        {
            if (mark.Kind == TokenKind.Comment && cursor >= mark.Span.Start)
            {
                return null;
            }
        }

        int start = cursor;
        while (start > 0 && !EndsWord(line.Text[start - 1]))
        {
            start--;
        }

        int end = cursor;
        while (start < cursor && end < line.Text.Length && !EndsWord(line.Text[end]))
        {
            end++;
        }

        return new LinePlace(document, clamped.Line, cursor, start, end);
    }

    /// <summary>A line as it would be read.</summary>
    public static LineSyntax Read(string text) => NoteSyntax.Parse("\n" + text).Lines[1]; // never the first line: a byte-order mark would be taken away

    /// <summary>The line as it reads without the word.</summary>
    public LineSyntax WithoutWord() => Read(Before + After);

    /// <summary>The time that the line starts with; null where it has none.</summary>
    public TimeOnly? Time => Read(Before.TrimStart() is { Length: > 0 } before ? $"{before.Split(' ')[0]} pee" : "").Item?.Head.Time;

    /// <summary>True where the word that starts the line belongs: at its start, or behind a time.</summary>
    public bool IsAtLineWord()
    {
        if (string.IsNullOrWhiteSpace(Before))
        {
            return true;
        }

        LineSyntax probe = Read(Before + "pee");
        return probe.Kind == LineKind.Item && probe.Marks is [{ Kind: TokenKind.Time }, { Kind: TokenKind.LineWord } word] && word.Span.Start == Start;
    }

    private static bool EndsWord(char c) => char.IsWhiteSpace(c) || c is ',' or ';';
}
