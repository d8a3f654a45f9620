using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Tests.Support;
using UnitsNet;
using Quantity = HealthNotes.Grammar.Vocabulary.Quantity;
using Unit = HealthNotes.Grammar.Vocabulary.Unit;

namespace HealthNotes.Tests.Grammar.Vocabulary;

/// <summary>Unit factors against an independent library (UnitsNet), and against round published figures.</summary>
public class UnitTests
{
    [Theory]
    [MemberData(nameof(Physical))]
    public void The_factor_is_that_of_an_independent_library(string unit, double canonical) =>
        Assert.Equal(canonical, (double)(Found(unit).Factor / Found(unit).Divisor), canonical * 1e-9);

    public static TheoryData<string, double> Physical { get; } = new()
    {
        { "s", Duration.FromSeconds(1).Seconds },
        { "min", Duration.FromMinutes(1).Seconds },
        { "h", Duration.FromHours(1).Seconds },
        { "d", Duration.FromDays(1).Seconds },
        { "w", Duration.FromWeeks(1).Seconds },
        { "mo", Duration.FromJulianYears(1).Seconds / 12 },
        { "y", Duration.FromJulianYears(1).Seconds },
        { "kg", Mass.FromKilograms(1).Kilograms },
        { "g", Mass.FromGrams(1).Kilograms },
        { "mg", Mass.FromMilligrams(1).Kilograms },
        { "ug", Mass.FromMicrograms(1).Kilograms },
        { "lb", Mass.FromPounds(1).Kilograms },
        { "st", 14 * Mass.FromPounds(1).Kilograms },
        { "oz", Mass.FromOunces(1).Kilograms },
        { "mm", Length.FromMillimeters(1).Millimeters },
        { "cm", Length.FromCentimeters(1).Millimeters },
        { "in", Length.FromInches(1).Millimeters },
        { "km", Length.FromKilometers(1).Millimeters },
        { "mi", Length.FromMiles(1).Millimeters },
        { "ml", Volume.FromMilliliters(1).Milliliters },
        { "l", Volume.FromLiters(1).Milliliters },
        { "floz", Volume.FromUsOunces(1).Milliliters },
        { "imp-floz", Volume.FromImperialOunces(1).Milliliters },
        { "cup", Volume.FromUsCustomaryCups(1).Milliliters },
        { "tsp", Volume.FromMetricTeaspoons(1).Milliliters },
        { "tbsp", Volume.FromUkTablespoons(1).Milliliters },
        { "mmHg", Pressure.FromMillimetersOfMercury(1).MillimetersOfMercury },
        { "mmol/L", Molarity.FromMillimolesPerLiter(1).MillimolesPerLiter },

        // molar mass of glucose 180.16 g/mol (C6H12O6, from memory)
        { "mg/dL", MassConcentration.FromMilligramsPerDeciliter(1).ToMolarity(MolarMass.FromGramsPerMole(180.16)).MillimolesPerLiter },
        { "%", Ratio.FromPercent(1).DecimalFractions },
    };

    [Theory]
    [InlineData(101.5, 38.611)] // a dog's ordinary temperature
    [InlineData(32, 0)] // ice
    [InlineData(-40, -40)]
    public void Fahrenheit_is_that_of_an_independent_library(double fahrenheit, double celsius)
    {
        Unit unit = Found("F");
        decimal found = ((decimal)fahrenheit + unit.Offset) * unit.Factor / unit.Divisor;
        Assert.Equal(Temperature.FromDegreesFahrenheit(fahrenheit).DegreesCelsius, (double)found, 1e-9);
        Assert.Equal(celsius, (double)found, 0.001);
    }

    [Fact]
    public void Every_physical_unit_is_compared() => None.Wrong(
        NoteVocabulary.Default.Units.Terms.Where(unit => unit.Quantity is not (Quantity.Dose or Quantity.DoseRate or Quantity.Rate or Quantity.Temperature))
            .Select(unit => unit.Word).Except(Physical.Select(row => (string)row[0])));

    [Fact]
    public void Units_of_one_quantity_share_a_canonical_unit() => Assert.All(
        NoteVocabulary.Default.Units.Terms.Where(unit => unit.Quantity != Quantity.Dose).GroupBy(unit => unit.Quantity),
        group => Assert.Single(group.Select(unit => unit.Canonical).Distinct()));

    [Fact]
    public void Only_temperatures_have_an_offset() =>
        Assert.All(NoteVocabulary.Default.Units.Terms.Where(unit => unit.Offset != 0), unit => Assert.Equal("F", unit.Word));

    private static Unit Found(string unit) => NoteVocabulary.Default.Units.Find(unit)!;
}
