namespace HealthNotes.LanguageServer.Protocol;

/// <summary>The commands that a client may run here. Names are a contract: keys are bound to them.</summary>
internal static class CommandNames
{
    /// <summary>Makes the visit page and shows it. Takes the note's name.</summary>
    public const string OpenPage = "hnote.openPage";

    /// <summary>Adds a check for today to the end of the note. Takes the note's name.</summary>
    public const string AddCheckToday = "hnote.addCheckToday";

    /// <summary>Shows values in other units. Takes <c>metric</c>, <c>us</c> or <c>asNoted</c>; without it the next of them.</summary>
    public const string ShowUnits = "hnote.showUnits";

    /// <summary>Moves the cursor. Takes the note's name, a line and a character, as the protocol counts them.</summary>
    public const string GoTo = "hnote.goTo";

    /// <summary>Takes a check one part further. Takes the note's name and the line of the cursor.</summary>
    public const string NextPart = "hnote.nextPart";

    /// <summary>Tells what is usual for a rate that is counted. Takes the note's name, the word and the state.</summary>
    public const string Usual = "hnote.usual";

    /// <summary>All of them.</summary>
    public static string[] All => [OpenPage, AddCheckToday, ShowUnits, GoTo, NextPart, Usual];
}
