using HealthNotes.Analysis.Ranges;
using HealthNotes.Analysis.Readings;
using HealthNotes.Analysis.Rules;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Model;

/// <summary>Canonical values in the units this pet's notes ask for.</summary>
internal sealed class ShownUnits(bool us)
{
    /// <summary>A value with its unit.</summary>
    public string Show(decimal number, string unit) =>
        Customary(unit) is { } shown ? Number(number, shown) + " " + shown.Name : Wording.Show(number, unit);

    /// <summary>A reading's value, how exactly it is known, and what it may really be.</summary>
    public string Show(ReadValue value)
    {
        string spread = value is { Low: { } low, High: { } high } && low < high ? " " + PageWords.Between(Show(low, high, value.Unit)) : "";
        ReadValue nine = value.OnScaleOfNine();
        string scale = nine.Unit != value.Unit ? PageWords.OnOtherScale(Show(nine.Number, nine.Unit)) : "";
        return PageWords.Bounded(value.Bound, Show(value.Number, value.Unit)) + spread + scale;
    }

    /// <summary>A range.</summary>
    public string Show(NormalRange range)
    {
        if (Customary(range.Unit) is null)
        {
            return Wording.Show(range);
        }

        return (range.Low, range.High) switch
        {
            ({ } low, { } high) => $"{Show(low, high, range.Unit)} {Customary(range.Unit)!.Name}",
            (null, { } high) => PageWords.UpTo(Show(high, range.Unit)),
            ({ } low, null) => PageWords.OrMore(Show(low, range.Unit)),
            _ => "",
        };
    }

    /// <summary>One to three diameters, each in millimetres or inches.</summary>
    public string Show(Diameters size) => PageWords.Bounded(size.Bound, string.Join(" × ", size.Lengths.Select(length =>
    {
        decimal mm = UnitConversion.ToCanonical(length);
        return Customary("mm") is { } inch ? Number(mm, inch) : Wording.Round(mm, 1);
    })) + " " + (Customary("mm")?.Name ?? "mm"));

    /// <summary>Two ends of a range without the unit.</summary>
    private string Show(decimal low, decimal high, string unit) => Customary(unit) is { } shown
        ? PageWords.Range(Number(low, shown), Number(high, shown))
        : PageWords.Range(Bare(low, unit), Bare(high, unit));

    private static string Bare(decimal number, string unit) => Wording.Show(number, unit).Split(' ', '/')[0];

    private static string Number(decimal canonical, UsUnit unit) =>
        Wording.Round(UnitConversion.FromCanonical(canonical, NoteVocabulary.Default.Units.Find(unit.Word)!), unit.Decimals);

    private UsUnit? Customary(string canonical) => !us ? null : canonical switch
    {
        "kg" => new("lb", "lb", 1),
        "Cel" => new("F", "°F", 1),
        "mm" => new("in", "in", 2),
        "mL" => new("floz", "fl oz", 1),
        "mmol/L" => new("mg/dL", "mg/dL", 0),
        _ => null,
    };

    private sealed record UsUnit(string Word, string Name, int Decimals);
}
