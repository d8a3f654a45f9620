using HealthNotes.Rendering.Model;

namespace HealthNotes.Rendering.Sheet;

/// <summary>How much fits on the two sides. What is left out is counted on the sheet. The numbers are common practice, no source.</summary>
internal static class SheetLimits
{
    /// <summary>Facts of one kind in the head, the latest.</summary>
    public const int FactsOfAKind = 2;

    /// <summary>Characters of one fact in the head.</summary>
    public const int FactLength = 56;

    /// <summary>Characters of the pet's name.</summary>
    public const int NameLength = 20;

    /// <summary>Characters of a place.</summary>
    public const int PlaceLength = 24;

    /// <summary>Characters of a last line.</summary>
    public const int LastLength = 34;

    /// <summary>Lumps and wounds to measure again.</summary>
    public const int Places = 8;

    /// <summary>Rows of their table, with blank ones for what is new.</summary>
    public const int PlaceRows = 7;

    /// <summary>A text cut to so many characters, with a mark where it was cut.</summary>
    public static string Cut(string text, int most) => text.Length <= most ? text : NoteText.Clip(text, most) + "…";
}
