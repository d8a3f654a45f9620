namespace HealthNotes.Cli.Output;

/// <summary>What <c>hnote</c> says to the program that called it.</summary>
public static class ExitCodes
{
    /// <summary>Done. From <c>check</c>: nothing at call or worse, and nothing that could not be read.</summary>
    public const int Fine = 0;

    /// <summary>From <c>check</c>: something at call or worse, or something that could not be read.</summary>
    public const int Findings = 1;

    /// <summary>Wrong use, or a file that can't be read or written.</summary>
    public const int Refused = 2;

    /// <summary>An internal error in hnote.</summary>
    public const int Fault = 3;
}
