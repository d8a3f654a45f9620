using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Record.Readings;

/// <summary>Converts amounts with the exact factors of the units table. Nothing is rounded here; rounding is for showing.</summary>
public static class UnitConversion
{
    /// <summary>The amount in its unit's canonical unit: kg, mm, Cel, mL, s, mmol/L, /min.</summary>
    public static decimal ToCanonical(Amount amount) => (amount.Value + amount.Unit.Offset) * amount.Unit.Factor / amount.Unit.Divisor;

    /// <summary>The measure in its canonical unit; its amounts are added (<c>47lb 3oz</c>).</summary>
    public static decimal ToCanonical(Measure measure) => measure.Amounts.Sum(ToCanonical);

    /// <summary>A canonical value in <paramref name="unit"/>.</summary>
    public static decimal FromCanonical(decimal canonical, Unit unit) => (canonical * unit.Divisor / unit.Factor) - unit.Offset;
}
