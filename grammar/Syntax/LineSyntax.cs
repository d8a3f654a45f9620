using System.Collections.Immutable;
using System.Text;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Text;

namespace HealthNotes.Grammar.Syntax;

/// <summary>The kinds of line.</summary>
public enum LineKind
{
    /// <summary>Nothing but blanks.</summary>
    Blank,

    /// <summary>A comment line.</summary>
    Comment,

    /// <summary>Free text in Markdown.</summary>
    FreeText,

    /// <summary>The head of an entry.</summary>
    EntryHead,

    /// <summary>A line that starts with a known word.</summary>
    Item,

    /// <summary>A line that is not understood; kept as written.</summary>
    Unknown,
}

/// <summary>
/// One line, read on its own: nothing in it depends on any other line or on where it stands, so it can be kept when
/// other lines change.
/// </summary>
/// <param name="Kind">What kind of line it is.</param>
/// <param name="Text">The line without its ending, exactly as written.</param>
/// <param name="Ending">Its line break: <c>\n</c>, <c>\r\n</c>, <c>\r</c> or nothing.</param>
/// <param name="Marks">The tokens in order, without the blanks between them.</param>
/// <param name="Items">What the line means, an item an observation; empty when it isn't an item, or anything in it could not be read: a line is read whole, or not at all.</param>
/// <param name="EntryHead">For the head of an entry, what it says.</param>
/// <param name="Problems">What could not be read.</param>
public sealed record LineSyntax(
    LineKind Kind,
    string Text,
    string Ending,
    ImmutableArray<Token> Marks,
    ImmutableArray<NoteItem> Items,
    EntryHead? EntryHead,
    ImmutableArray<Problem> Problems)
{
    /// <summary>The first observation, or null.</summary>
    public NoteItem? Item => Items.IsEmpty ? null : Items[0];

    /// <summary>How many blanks the line starts with.</summary>
    public int Indent => Text.Length - Text.AsSpan().TrimStart().Length;

    /// <summary>For free text, the Markdown behind the mark (one blank after the mark is not part of it).</summary>
    public string FreeText
    {
        get
        {
            if (Text[Indent] != '>')
            {
                return Text[Indent..];
            }

            string rest = Text[(Indent + 1)..];
            return rest.StartsWith(' ') ? rest[1..] : rest;
        }
    }

    /// <summary>The tokens that make up the whole line, blanks included: they follow one another without a gap.</summary>
    public IEnumerable<Token> Tokens
    {
        get
        {
            int at = 0;
            foreach (Token mark in Marks)
            {
                if (mark.Span.Start > at)
                {
                    yield return new Token(TokenKind.Blank, TextSpan.Between(at, mark.Span.Start));
                }

                yield return mark;
                at = mark.Span.End;
            }

            if (at < Text.Length)
            {
                yield return new Token(TokenKind.Blank, TextSpan.Between(at, Text.Length));
            }
        }
    }

    /// <summary>Appends the line, put together from its tokens, and its ending.</summary>
    public void Print(StringBuilder into)
    {
        foreach (Token token in Tokens)
        {
            into.Append(token.Span.In(Text));
        }

        into.Append(Ending);
    }
}

/// <summary>The head of an entry; the date is null when it could not be read.</summary>
public sealed record EntryHead(TextSpan DateSpan, DateOnly? Date, TimeOnly? Time, string Kind, string? By)
{
    /// <summary>The day of a date without its year (<c>3 nov</c>), which the entry before it settles; null for all others.</summary>
    public (int Month, int Day)? NoYear { get; init; }

    /// <summary>The part of the day behind the date, as written (<c>evening</c>); null where none is. It orders nothing.</summary>
    public string? PartOfDay { get; init; }
}
