using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Record.Readings;

/// <summary>A dose against the weight of the day: a fact that is shown, never judged.</summary>
public static class DosePerWeight
{
    /// <summary>Milligrams per kilogram; null when the dose is not a mass (a tablet's strength is not known) or the weight is nothing.</summary>
    public static decimal? MilligramsPerKilogram(NoteValue? dose, decimal weightKg) =>
        dose is Measure { Quantity: Quantity.Mass } measure && weightKg > 0
            ? UnitConversion.ToCanonical(measure) * 1_000_000 / weightKg
            : null;
}
