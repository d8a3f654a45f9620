namespace HealthNotes.Rendering.Sheet;

/// <summary>How much fits on the two sides. What is left out is counted on the sheet. The numbers are common practice, no source.</summary>
internal static class SheetLimits
{
    /// <summary>Facts of one kind in the head, the latest.</summary>
    public const int FactsOfAKind = 2;

    /// <summary>Characters of one fact in the head.</summary>
    public const int FactLength = 70;

    /// <summary>Characters of a last line.</summary>
    public const int LastLength = 34;

    /// <summary>Lumps and wounds to measure again.</summary>
    public const int Places = 10;
}
