using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Record.Checks;

/// <summary>When in an examination something is looked at.</summary>
public enum CheckStage
{
    /// <summary>Before the pet is woken.</summary>
    Asleep,

    /// <summary>From across the room.</summary>
    Across,

    /// <summary>On the scales.</summary>
    Scales,

    /// <summary>With the hands, from head to tail.</summary>
    Hands,

    /// <summary>Last: what a pet minds most.</summary>
    Last,

    /// <summary>Not looked at: what the days before were like.</summary>
    Asked,
}

/// <summary>One thing that a full check looks at or measures.</summary>
/// <param name="Word">The word its line starts with.</param>
/// <param name="Site">The site that a line of it may start from (<c>both</c>, <c>both-jaw</c>); null where it needs none.</param>
/// <param name="Stage">When it is looked at.</param>
/// <param name="Source">Where the row comes from.</param>
public sealed record CheckItem(LineWord Word, string? Site, CheckStage Stage, string Source)
{
    /// <summary>True for a value that is counted or measured: <c>else ok</c> speaks for parts, never for a measurement.</summary>
    public bool IsMeasured => Word.Kind == WordKind.Vital;
}
