namespace HealthNotes.Features.Tokens;

/// <summary>The types of <see cref="SemanticToken"/>, in the order of <see cref="TokenLegend.Types"/>.</summary>
public enum TokenType : byte
{
    /// <summary>A comment.</summary>
    Comment,

    /// <summary>The word a line starts with.</summary>
    Keyword,

    /// <summary>The kind of an entry.</summary>
    Type,

    /// <summary>A side, a region, a tooth.</summary>
    Property,

    /// <summary>A tag.</summary>
    Decorator,

    /// <summary>A value, a date, a time.</summary>
    Number,

    /// <summary>A state, a place it was taken, a route.</summary>
    Parameter,

    /// <summary>A describing word.</summary>
    EnumMember,

    /// <summary>A word that joins, or the mark before free text.</summary>
    Operator,

    /// <summary>The name of a medicine, a food, a file, a person.</summary>
    Variable,

    /// <summary>Free words.</summary>
    String,
}

/// <summary>What more is known of a token: flags, bit by bit in the order of <see cref="TokenLegend.Modifiers"/>.</summary>
[Flags]
public enum TokenModifiers
{
    /// <summary>Nothing.</summary>
    None = 0,

    /// <summary>The date of an entry's head.</summary>
    Declaration = 1,

    /// <summary>A describing word worth watching.</summary>
    Watch = 2,

    /// <summary>A describing word that is a reason to phone the clinic.</summary>
    Call = 4,

    /// <summary>A describing word that cannot wait.</summary>
    Urgent = 8,

    /// <summary>Emphasised free text.</summary>
    Emphasis = 16,

    /// <summary>Strongly emphasised free text.</summary>
    Strong = 32,

    /// <summary>Code in free text.</summary>
    Code = 64,

    /// <summary>A link in free text.</summary>
    Link = 128,
}

/// <summary>A stretch of one line and what it is.</summary>
/// <param name="Line">The index of the line.</param>
/// <param name="Start">UTF-16 units from the start of the line.</param>
/// <param name="Length">UTF-16 units; at least 1.</param>
/// <param name="Type">What it is.</param>
/// <param name="Modifiers">What more is known of it.</param>
public readonly record struct SemanticToken(int Line, int Start, int Length, TokenType Type, TokenModifiers Modifiers);
