using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Features.Completion.Places;

/// <summary>What a line says besides the word that is being typed: which of the slots of its word are filled, and what stands before the cursor.</summary>
/// <param name="At">The cursor.</param>
/// <param name="Note">What is around.</param>
/// <param name="Read">The line without the word at the cursor.</param>
/// <param name="Word">The word the line starts with.</param>
/// <param name="About">The word the line is about, where it names another (<c>usual rr</c>, <c>skip ear</c>).</param>
/// <param name="Last">The token before the cursor.</param>
internal sealed record LineState(LinePlace At, NoteAround Note, LineSyntax Read, LineWord Word, LineWord? About, Token Last)
{
    /// <summary>The state of a line whose word stands before the cursor; null where there is none.</summary>
    public static LineState? Of(LinePlace at, NoteAround note)
    {
        LineSyntax read = at.WithoutWord();
        if (read.Kind != LineKind.Item)
        {
            return null;
        }

        LineWord? word = null;
        LineWord? about = null;
        Token last = default;
        foreach (Token mark in read.Marks)
        {
            bool before = mark.Span.End <= at.Start;
            if (mark.Kind == TokenKind.LineWord)
            {
                LineWord? found = NoteVocabulary.Default.Starting(mark.Span.In(read.Text));
                if (word is null)
                {
                    if (!before)
                    {
                        return null;
                    }

                    word = found;
                }
                else
                {
                    about ??= found;
                }
            }

            if (before && mark.Kind != TokenKind.Comment && mark.Span.End >= last.Span.End)
            {
                last = mark;
            }
        }

        return word is null ? null : new LineState(at, note, read, word, about, last);
    }

    /// <summary>The word whose states, sites and units count.</summary>
    public LineWord Subject => About ?? Word;

    /// <summary>The token before the cursor, in lower case.</summary>
    public string LastText => TextOf(Last).ToLowerInvariant();

    /// <summary>True when the line holds a token of this kind.</summary>
    public bool Has(TokenKind kind) => Read.Marks.Any(mark => mark.Kind == kind);

    /// <summary>The time that the line starts with.</summary>
    public TimeOnly? Time => At.Time;

    /// <summary>The texts of all tokens of a kind.</summary>
    public IEnumerable<string> Texts(TokenKind kind) => Read.Marks.Where(mark => mark.Kind == kind).Select(TextOf);

    /// <summary>True when a value stands in the line that belongs to no schedule.</summary>
    public bool HasValue
    {
        get
        {
            Token before = default;
            foreach (Token mark in Read.Marks)
            {
                if (mark.Kind == TokenKind.Value && before.Kind != TokenKind.Keyword)
                {
                    return true;
                }

                before = mark;
            }

            return false;
        }
    }

    /// <summary>The characters of a token.</summary>
    public string TextOf(Token token) => token.Span.In(Read.Text).ToString();
}
