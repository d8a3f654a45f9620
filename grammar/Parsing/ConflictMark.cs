namespace HealthNotes.Grammar.Parsing;

/// <summary>The lines that a version control system puts between two versions: seven of one character at the start of a line.</summary>
public static class ConflictMark
{
    /// <summary>Before our version.</summary>
    public const char Ours = '<';

    /// <summary>Before the version that both come from; not every system writes it.</summary>
    public const char Base = '|';

    /// <summary>Between the two.</summary>
    public const char Between = '=';

    /// <summary>After theirs.</summary>
    public const char End = '>';

    private const int Length = 7;

    /// <summary>True for each of them.</summary>
    public static bool IsMark(string line) => KindOf(line) is not null;

    /// <summary>Which of them a line is; null for any other line.</summary>
    public static char? KindOf(string line) =>
        line.Length >= Length && line[0] is Ours or Base or Between or End && line.AsSpan(0, Length).IndexOfAnyExcept(line[0]) < 0
        && (line.Length == Length ? line[0] is not Base : line[Length] == ' ' && line[0] is not Between)
            ? line[0]
            : null;
}
