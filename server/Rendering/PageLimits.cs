namespace HealthNotes.Rendering;

/// <summary>
/// How much of anything the page shows, so that no note makes a page that nobody can read or open. What is left out is
/// counted on the page. The numbers are common practice, no source.
/// </summary>
internal static class PageLimits
{
    /// <summary>Findings, strongest first.</summary>
    public const int Findings = 40;

    /// <summary>Evidence lines of one finding.</summary>
    public const int EvidenceLines = 6;

    /// <summary>Short lists: questions, pictures, things skipped, due and to know.</summary>
    public const int ListItems = 30;

    /// <summary>Bytes of all pictures together: a page must pass by mail.</summary>
    public const long PictureBytes = 6_000_000;

    /// <summary>Rows of a table, the latest ones.</summary>
    public const int TableRows = 60;

    /// <summary>Readings of one vital, the latest ones.</summary>
    public const int ReadingsOfOneVital = 8;

    /// <summary>Lines of the home-care log, the latest ones.</summary>
    public const int LogLines = 80;

    /// <summary>Lines that are not understood.</summary>
    public const int LinesNotUnderstood = 60;

    /// <summary>Earlier entries, the latest ones.</summary>
    public const int EarlierEntries = 120;

    /// <summary>UTF-16 units of one line or field.</summary>
    public const int FieldLength = 400;

    /// <summary>UTF-16 units of what the clinic said at the last visit, before the problems; the whole text is in the appendix.</summary>
    public const int SaidLength = 600;

    /// <summary>Characters of one problem: three lines of a page of 794 px (A4). What does not fit stands in the appendix.</summary>
    public const int ProblemLength = 240;

    /// <summary>Problems that are shown; what is a reason to phone is among them even past this number.</summary>
    public const int Problems = 40;

    /// <summary>The most problems of any level: more cannot be read, and a note of thousands of lumps must make a page that opens.</summary>
    public const int AllProblems = 200;

    /// <summary>UTF-16 units of one block of free text.</summary>
    public const int FreeTextLength = 8_000;

    /// <summary>Cells of a table in free text.</summary>
    public const int FreeTextCells = 4_000;

    /// <summary>UTF-16 units of all free text together.</summary>
    public const int AllFreeTextLength = 40_000;
}

/// <summary>The part of a list that is shown, and how many were left out.</summary>
/// <typeparam name="T">What is listed.</typeparam>
internal sealed record Shown<T>(IReadOnlyList<T> Items, int LeftOut)
{
    /// <summary>The first <paramref name="most"/>.</summary>
    public static Shown<T> First(IReadOnlyList<T> all, int most) => new([.. all.Take(most)], Math.Max(0, all.Count - most));

    /// <summary>The last <paramref name="most"/>, in the same order.</summary>
    public static Shown<T> Last(IReadOnlyList<T> all, int most) => new([.. all.Skip(all.Count - most)], Math.Max(0, all.Count - most));
}
