using HealthNotes.Grammar.Text;

namespace HealthNotes.Grammar.Syntax;

/// <summary>What a stretch of a line is. The tokens of a line follow one another without a gap.</summary>
public readonly record struct Token(TokenKind Kind, TextSpan Span);

/// <summary>The kinds of token.</summary>
public enum TokenKind : byte
{
    /// <summary>Blanks, and commas between words.</summary>
    Blank,

    /// <summary>A comment.</summary>
    Comment,

    /// <summary>The mark before free text.</summary>
    QuoteMark,

    /// <summary>Free words.</summary>
    Text,

    /// <summary>The word a line starts with.</summary>
    LineWord,

    /// <summary>A date.</summary>
    Date,

    /// <summary>A time of day.</summary>
    Time,

    /// <summary>The kind of an entry.</summary>
    EntryKind,

    /// <summary>A side, a region, a gland or a tooth.</summary>
    Site,

    /// <summary>A tag.</summary>
    Tag,

    /// <summary>A value with its unit.</summary>
    Value,

    /// <summary>A state, place, route or manner.</summary>
    State,

    /// <summary>A describing word.</summary>
    Describing,

    /// <summary>A word that joins: every, for, from, per, by, like.</summary>
    Keyword,

    /// <summary>The name of a medicine, food or file.</summary>
    Name,

    /// <summary>A word that carries no meaning of its own here: the, is, and.</summary>
    Filler,

    /// <summary>Not understood.</summary>
    Unknown,
}
