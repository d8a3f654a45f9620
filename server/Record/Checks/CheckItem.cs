using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Record.Checks;

/// <summary>One thing that a full check looks at or measures.</summary>
/// <param name="Word">The word its line starts with.</param>
/// <param name="Site">The site that a line of it may start from (<c>both</c>, <c>both-jaw</c>); null where it needs none.</param>
/// <param name="Source">Where the row comes from.</param>
public sealed record CheckItem(LineWord Word, string? Site, string Source)
{
    /// <summary>True for a value that is counted or measured: <c>else ok</c> speaks for parts, never for a measurement.</summary>
    public bool IsMeasured => Word.Kind == WordKind.Vital;
}
