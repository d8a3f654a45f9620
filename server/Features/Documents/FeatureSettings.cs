namespace HealthNotes.Features.Documents;

/// <summary>In which units computed values are shown.</summary>
public enum UnitsShown
{
    /// <summary>As the note's <c>units</c> fact says; metric where it says nothing.</summary>
    AsNoted,

    /// <summary>Kilograms, millimetres, degrees Celsius.</summary>
    Metric,

    /// <summary>Pounds, inches, degrees Fahrenheit.</summary>
    Us,
}

/// <summary>What the reader has chosen; the editor's settings in our own terms.</summary>
public sealed record FeatureSettings
{
    /// <summary>As delivered.</summary>
    public static FeatureSettings Default { get; } = new();

    /// <summary>In which units computed values are shown.</summary>
    public UnitsShown Units { get; init; }

    /// <summary>Which computed values are shown at the end of their value.</summary>
    public HintSettings Hints { get; init; } = new();

    /// <summary>Whether findings of entries before the current period are shown too.</summary>
    public bool PastFindings { get; init; }
}

/// <summary>A switch for each kind of hint.</summary>
/// <param name="Rates">Per-minute values of counts: <c>18/15s</c> = 72/min.</param>
/// <param name="Sizes">Sizes of comparison objects: <c>like pea</c> ≈ 8 mm.</param>
/// <param name="Conversions">Values in the other unit: <c>101.5F</c> = 38.6 °C.</param>
/// <param name="Differences">Weighings with the person subtracted.</param>
/// <param name="Doses">Doses against the weight of the day.</param>
/// <param name="Days">Days since the entry before, and to the day that is meant.</param>
/// <param name="Readings">How a line was read, where that is more than its letters: <c>carprofen 75mg 8am</c> = gave carprofen 75 mg, 08:00.</param>
public sealed record HintSettings(
    bool Rates = true,
    bool Sizes = true,
    bool Conversions = true,
    bool Differences = true,
    bool Doses = true,
    bool Days = true,
    bool Readings = true);
