using HealthNotes.Analysis.Rules;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Record.Ranges;
using HealthNotes.Record.Readings;

namespace HealthNotes.Rendering.Text;

/// <summary>Canonical values in the units this pet's notes ask for.</summary>
internal sealed class ShownUnits(bool us)
{
    /// <summary>True for US units.</summary>
    public bool AreUs => us;

    /// <summary>A value with its unit.</summary>
    public string Show(decimal number, string unit) => Wording.Show(number, unit, us);

    /// <summary>A canonical value as a bare number in the shown unit, not rounded.</summary>
    public decimal Number(decimal canonical, string unit) => UsUnitOf(unit) is { } shown ? UnitConversion.FromCanonical(canonical, shown) : canonical;

    /// <summary>The name of the shown unit.</summary>
    public string NameOf(string unit) => unit switch
    {
        "/min" => "a minute",
        "Cel" => us ? "°F" : "°C",
        "mL/kg/d" => "mL/kg a day",
        _ => UsUnitOf(unit)?.Word ?? unit,
    };

    /// <summary>A step of so many degrees Celsius in the shown degrees.</summary>
    public double Degrees(double celsius) => (double)(Number((decimal)celsius, "Cel") - Number(0, "Cel"));

    /// <summary>A range.</summary>
    public string Show(NormalRange range) => Wording.Show(range, us).Replace("mL/kg/d", NameOf("mL/kg/d"), StringComparison.Ordinal);

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

    /// <summary>The US unit of a canonical one; null where metric units are shown, and for what has none.</summary>
    private Unit? UsUnitOf(string unit) => !us ? null : unit switch
    {
        "Cel" => NoteVocabulary.Default.Units.Find("F"),
        "kg" => NoteVocabulary.Default.Units.Find("lb"),
        "mm" => NoteVocabulary.Default.Units.Find("in"),
        "mmol/L" => NoteVocabulary.Default.Units.Find("mg/dL"),
        _ => null,
    };
}
