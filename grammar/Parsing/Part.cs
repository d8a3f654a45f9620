using HealthNotes.Grammar.Text;

namespace HealthNotes.Grammar.Parsing;

/// <summary>The shapes a part of a line can have before its meaning is known.</summary>
internal enum PartKind : byte
{
    /// <summary>Letters: a line word, a site, a state, a unit that stands alone.</summary>
    Word,

    /// <summary>Numbers with their signs and units.</summary>
    Number,

    /// <summary>A name that starts with <c>@</c>.</summary>
    Tag,

    /// <summary>Characters that fit no shape; kept as they are.</summary>
    Unreadable,
}

/// <summary>A number with what stands before it and after it: <c>/15s</c> in <c>18/15s</c>.</summary>
internal readonly record struct Operand(TextSpan SignSpan, TextSpan Digits, TextSpan Unit)
{
    public bool Exists => Digits.Length > 0;

    /// <summary>The sign itself, without the blanks round it: <c>/</c>, <c>x</c>, <c>-</c>, <c>:</c> or none (<c>\0</c>).</summary>
    public char Sign(string line) => SignSpan.Length == 0 ? '\0' : line.AsSpan(SignSpan.Start, SignSpan.Length).Trim()[0] switch
    {
        'X' or '×' or '*' => 'x',
        '–' => '-',
        var sign => sign,
    };
}

/// <summary>
/// One blank-separated part of a line. A number part holds up to three operands:
/// <c>18/15s</c>, <c>12x9x5mm</c>, <c>2026-10-04</c>, <c>07:30</c>, <c>~12mm</c>.
/// </summary>
internal sealed record Part(PartKind Kind, TextSpan Span)
{
    /// <summary>Where <c>~</c>, <c>&lt;</c> or <c>&gt;</c> stands; empty when there is none.</summary>
    public TextSpan BoundSpan { get; init; }

    public Operand First { get; init; }

    public Operand Second { get; init; }

    public Operand Third { get; init; }

    /// <summary>What Pidgin said it expected, for an unreadable part.</summary>
    public IReadOnlyList<string> Expected { get; init; } = [];

    /// <summary>Where in the line reading stopped, for an unreadable part.</summary>
    public int StoppedAt { get; init; }

    /// <summary>The part moved <paramref name="by"/> characters to the right.</summary>
    public Part Moved(int by) => by == 0 ? this : this with
    {
        Span = Moved(Span, by),
        BoundSpan = Moved(BoundSpan, by),
        First = Moved(First, by),
        Second = Moved(Second, by),
        Third = Moved(Third, by),
        StoppedAt = StoppedAt + by,
    };

    private static Operand Moved(Operand operand, int by) =>
        new(Moved(operand.SignSpan, by), Moved(operand.Digits, by), Moved(operand.Unit, by));

    private static TextSpan Moved(TextSpan span, int by) => span with { Start = span.Start + by };
}
