namespace HealthNotes.Rendering;

/// <summary>A size of paper.</summary>
public enum Paper
{
    /// <summary>210 by 297 mm (ISO 216).</summary>
    A4,

    /// <summary>8.5 by 11 inches (ANSI A).</summary>
    Letter,
}
