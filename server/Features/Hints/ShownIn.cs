using HealthNotes.Analysis.Rules;
using HealthNotes.Features.Documents;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Record.Readings;

namespace HealthNotes.Features.Hints;

/// <summary>In which units values are shown to this reader.</summary>
internal static class ShownIn
{
    /// <summary>True where the reader is shown pounds, inches and degrees Fahrenheit.</summary>
    public static bool Us(Document document, FeatureSettings settings) =>
        settings.Units == UnitsShown.Us || (settings.Units == UnitsShown.AsNoted && document.Record.Pet.ShowUsUnits);

    /// <summary>True for a unit that this reader reads anyway. Medicine is written in milligrams everywhere.</summary>
    public static bool IsRead(Unit unit, bool us) => (unit.Quantity, unit.Word) switch
    {
        (Quantity.Temperature, var word) => word == (us ? "F" : "C"),
        (Quantity.Mass, "mg" or "ug") => true,
        (Quantity.Mass, var word) => us == (word is "lb" or "oz"),
        (Quantity.Length, var word) => us == (word is "in" or "mi"),
        (Quantity.Volume, var word) => us == (word is "floz" or "cup"),
        (Quantity.Glucose, var word) => word == (us ? "mg/dL" : "mmol/L"),
        _ => true,
    };

    /// <summary>A number of a fact in the canonical unit of its vital.</summary>
    public static decimal Canonical(decimal number, Unit? unit) => unit is null ? number : UnitConversion.ToCanonical(new Amount(number, unit));

    /// <summary>A difference of two values; a difference of temperatures has no zero point to shift.</summary>
    public static string Difference(decimal difference, string unit, bool us) => unit == "Cel"
        ? us ? $"{Wording.Round(difference * 1.8m, 1)} °F" : $"{Wording.Round(difference, 1)} °C"
        : Wording.Show(difference, unit, us);

    /// <summary>A dose against a weight, with as many decimals as it takes to tell two doses apart.</summary>
    public static string PerKilogram(decimal dose) => Wording.Round(dose, dose >= 10 ? 1 : dose >= 0.1m ? 2 : dose >= 0.01m ? 3 : 5) + " mg/kg";
}
