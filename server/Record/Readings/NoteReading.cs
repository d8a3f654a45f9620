using HealthNotes.Grammar.Text;

namespace HealthNotes.Record.Readings;

/// <summary>A value of one line, with what is needed to compare it.</summary>
/// <param name="Line">The index of its line.</param>
/// <param name="Span">Where the value stands.</param>
/// <param name="Day">The day of its entry.</param>
/// <param name="Time">The time of its line, else of its entry.</param>
/// <param name="What">The note's word: hr, weight, lump.</param>
/// <param name="Site">The site, or where it was taken.</param>
/// <param name="Tag">The tag, without its <c>@</c>.</param>
/// <param name="State">The state as written, or null.</param>
/// <param name="Comparable">The state it is compared in: asleep, rest, …; null when it is never compared (panting, excited).</param>
/// <param name="Written">The value as written.</param>
/// <param name="Value">The value in canonical units.</param>
public sealed record NoteReading(
    int Line,
    TextSpan Span,
    DateOnly? Day,
    TimeOnly? Time,
    string What,
    string? Site,
    string? Tag,
    string? State,
    string? Comparable,
    string Written,
    ReadValue Value)
{
    /// <summary>True when <paramref name="other"/> measures the same thing in the same way.</summary>
    public bool ComparesWith(NoteReading other) =>
        What == other.What && Comparable == other.Comparable && Site == other.Site && Tag == other.Tag && Value.Unit == other.Value.Unit;
}
