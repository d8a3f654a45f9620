using HealthNotes.Analysis.Ranges;
using HealthNotes.Analysis.Readings;
using HealthNotes.Analysis.Rules;
using HealthNotes.Grammar.Notes;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Model;

/// <summary>Canonical values in the units this pet's notes ask for.</summary>
internal sealed class ShownUnits(bool us)
{
    /// <summary>Degrees Fahrenheit in one degree Celsius.</summary>
    private const decimal FahrenheitDegrees = 1.8m;

    private const decimal FahrenheitFreezing = 32;
    private const decimal KilogramsInAPound = 0.45359237m;
    private const decimal MillimetresInAnInch = 25.4m;

    /// <summary>mg/dL in one mmol/L of glucose (molar mass 180.16 g/mol).</summary>
    private const decimal MilligramsInAMillimole = 18.016m;

    /// <summary>A value with its unit.</summary>
    public string Show(decimal number, string unit) => Wording.Show(number, unit, us);

    /// <summary>How far two values lie apart, without a sign: a temperature's difference has no offset.</summary>
    public string Difference(decimal number, string unit)
    {
        decimal size = Math.Abs(number);
        return (unit, us) switch
        {
            ("Cel", true) => $"{Wording.Round(size * FahrenheitDegrees, 1)} °F",
            ("kg", true) => $"{Wording.Round(size / KilogramsInAPound, 2)} lb",
            ("kg", false) => $"{Wording.Round(size, 2)} kg",
            ("/min", _) => Wording.Show(size, unit),
            _ when unit.StartsWith('/') => Wording.Round(size, 1),
            _ => Wording.Show(size, unit, us),
        };
    }

    /// <summary>A canonical value as a bare number in the shown unit, not rounded.</summary>
    public decimal Number(decimal canonical, string unit) => (unit, us) switch
    {
        ("Cel", true) => (canonical * FahrenheitDegrees) + FahrenheitFreezing,
        ("kg", true) => canonical / KilogramsInAPound,
        ("mm", true) => canonical / MillimetresInAnInch,
        ("mmol/L", true) => canonical * MilligramsInAMillimole,
        _ => canonical,
    };

    /// <summary>The name of the shown unit.</summary>
    public string NameOf(string unit) => (unit, us) switch
    {
        ("/min", _) => "a minute",
        ("Cel", _) => us ? "°F" : "°C",
        ("kg", true) => "lb",
        ("mm", true) => "in",
        ("mmol/L", true) => "mg/dL",
        ("mL/kg/d", _) => "mL/kg a day",
        _ => unit,
    };

    /// <summary>A step of so many degrees Celsius in the shown degrees.</summary>
    public double Degrees(double celsius) => us ? celsius * (double)FahrenheitDegrees : celsius;

    /// <summary>A range.</summary>
    public string Show(NormalRange range) => Wording.Show(range, us);

    /// <summary>A range of two values.</summary>
    public string Show(decimal low, decimal high, string unit) => Wording.Show(low, high, unit, us);

    /// <summary>A reading's value, how exactly it is known, and what it may really be.</summary>
    public string Show(ReadValue value)
    {
        string spread = value is { Low: { } low, High: { } high } && low < high ? " " + PageWords.Between(Bare(low, value.Unit), Bare(high, value.Unit)) : "";
        ReadValue nine = value.OnScaleOfNine();
        string scale = nine.Unit != value.Unit ? PageWords.OnOtherScale(Show(nine.Number, nine.Unit)) : "";
        return PageWords.Bounded(value.Bound, Show(value.Number, value.Unit)) + spread + scale;
    }

    /// <summary>One to three diameters: <c>12 × 9 mm</c>.</summary>
    public string Show(Diameters size)
    {
        string[] shown = [.. size.Lengths.Select(length => Show(UnitConversion.ToCanonical(length), "mm"))];
        return PageWords.Bounded(size.Bound, string.Join(" × ", shown[..^1].Select(NumberOf).Append(shown[^1])));
    }

    private string Bare(decimal number, string unit) => NumberOf(Show(number, unit));

    private static string NumberOf(string shown) => shown.Split(' ', '/')[0];
}
