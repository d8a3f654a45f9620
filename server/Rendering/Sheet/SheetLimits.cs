using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Sheet;

/// <summary>How much fits on a sheet. What is left out is counted there. The numbers are common practice, no source.</summary>
internal static class SheetLimits
{
    /// <summary>Facts of one kind in the head, the latest.</summary>
    public const int FactsOfAKind = 2;

    /// <summary>Characters of one fact in the head.</summary>
    public const int FactLength = 40;

    /// <summary>Medicines in the head, the latest.</summary>
    public const int Medicines = 3;

    /// <summary>Characters of the pet's name.</summary>
    public const int NameLength = 20;

    /// <summary>Characters of a place.</summary>
    public const int PlaceLength = 24;

    /// <summary>Characters of what was last seen.</summary>
    public const int LastLength = 40;

    /// <summary>Lines of a part that are not as expected.</summary>
    public const int Standing = 2;

    /// <summary>Lumps and wounds to measure again.</summary>
    public const int Places = 5;

    /// <summary>Rows of their table, with blank ones for what is new.</summary>
    public const int PlaceRows = 5;

    /// <summary>Questions, and things due.</summary>
    public const int Tasks = 3;

    /// <summary>Characters of a question or of something due.</summary>
    public const int TaskLength = 70;

    /// <summary>Limits of the clinic.</summary>
    public const int ClinicLimits = 3;

    /// <summary>Rows of medicines on the log.</summary>
    public const int DoseRows = 6;

    /// <summary>A text of a note cut to so many characters, with a mark where it was cut.</summary>
    public static string Cut(string text, int most) => text.Length <= most ? text : NoteText.Clip(text, most) + "…";
}
