using HealthNotes.Grammar.Text;

namespace HealthNotes.Grammar.Scanning;

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

/// <summary>One blank-separated part of a line.</summary>
internal class Part(PartKind kind, TextSpan span)
{
    public PartKind Kind => kind;

    public TextSpan Span => span;

    /// <summary>The scopes in which a spelling starts with this part, 0 until they were looked up; see <see cref="Vocabulary.FirstWords"/>.</summary>
    public ulong Starts { get; set; }

    /// <summary>The part moved <paramref name="by"/> characters to the right.</summary>
    public virtual Part Moved(int by) => new(kind, Moved(span, by));

    protected static TextSpan Moved(TextSpan span, int by) => span with { Start = span.Start + by };
}

/// <summary>
/// A part that holds up to three operands: <c>18/15s</c>, <c>12x9x5mm</c>, <c>2026-10-04</c>, <c>07:30</c>, <c>~12mm</c>.
/// </summary>
internal sealed class NumberPart(TextSpan span, TextSpan bound, Operand first, Operand second, Operand third) : Part(PartKind.Number, span)
{
    /// <summary>Where <c>~</c>, <c>&lt;</c> or <c>&gt;</c> stands; empty when there is none.</summary>
    public TextSpan BoundSpan => bound;

    public Operand First => first;

    public Operand Second => second;

    public Operand Third => third;

    /// <summary>The same numbers behind a bound.</summary>
    public NumberPart Behind(TextSpan boundSpan) => new(TextSpan.Between(boundSpan.Start, Span.End), boundSpan, first, second, third);

    public override Part Moved(int by) =>
        by == 0 ? this : new NumberPart(Moved(Span, by), Moved(bound, by), first.Moved(by), second.Moved(by), third.Moved(by));
}

/// <summary>Characters that fit no shape, with what Pidgin said it expected and where it stopped.</summary>
internal sealed class UnreadablePart(TextSpan span, IReadOnlyList<string> expected, int stoppedAt) : Part(PartKind.Unreadable, span)
{
    public IReadOnlyList<string> Expected => expected;

    /// <summary>Where in the line reading stopped.</summary>
    public int StoppedAt => stoppedAt;
}
