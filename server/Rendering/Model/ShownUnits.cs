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

    private const decimal KilogramsInAPound = 0.45359237m;

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

    /// <summary>A range.</summary>
    public string Show(NormalRange range) => Wording.Show(range, us);

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
