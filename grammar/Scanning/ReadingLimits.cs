namespace HealthNotes.Grammar.Scanning;

/// <summary>Bounds on what is read, so that hostile input costs little.</summary>
public static class ReadingLimits
{
    /// <summary>The longest line that is read word by word, in UTF-16 units; longer ones are kept and flagged. Comments and free text have no limit.</summary>
    public const int LongestLine = 1000;

    /// <summary>The most digits before the decimal mark of a number.</summary>
    public const int MostDigits = 9;

    /// <summary>Every number that is read is below this.</summary>
    public const decimal NumbersBelow = 1_000_000_000m;
}
