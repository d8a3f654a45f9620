using CsCheck;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Record.Readings;
using HealthNotes.Tests.Support;
using UnitsNet;

namespace HealthNotes.Tests.Analysis;

public class UnitConversionTests
{
    private static decimal Canonical(string line) =>
        MarkedFindings.Read("pet X\n2026-01-01\n" + line).Record.Readings.Single().Value.Number;

    private static Unit UnitNamed(string word) => NoteVocabulary.Default.Units.Find(word)!;

    [Theory]
    [InlineData("temp 98.06F", 36.7, 0.001)] // Levy et al., J Feline Med Surg 2015: 36.7 C is 98.06 F
    [InlineData("temp 102.02F", 38.9, 0.001)] // the same paper prints 102.1 F: rounded from the other side
    [InlineData("temp 100F", 37.7778, 0.0001)] // SI definition
    [InlineData("temp 104F", 40.0, 0.0000001)] // SI definition
    [InlineData("weight 1lb", 0.45359237, 0)] // NIST exact value
    [InlineData("weight 2oz", 0.05669904625, 0)] // NIST exact value
    [InlineData("weight 47lb 3oz", 21.403889959375, 0)] // 47 and 3 times the NIST values
    [InlineData("weight 83.2-55.9kg", 27.3, 0)] // the difference itself
    [InlineData("lump L-flank 1.680in", 42.672, 0)] // USGA and R&A, Rules of Golf: 1.680 in is 42.67 mm
    [InlineData("lump L-flank 0.955in", 24.257, 0)] // US Mint coin specifications: quarter, 24.26 mm
    [InlineData("lump L-flank 0.705in", 17.907, 0)] // US Mint coin specifications: dime, 17.91 mm
    [InlineData("lump L-flank 12x9x5mm", 12, 0)] // the longest diameter
    [InlineData("lump L-flank 9x12mm", 12, 0)]
    [InlineData("lump L-flank like golf-ball", 42.67, 0)] // USGA and R&A, Rules of Golf
    [InlineData("lump L-flank like table-tennis-ball", 40, 0)] // ITTF rule
    [InlineData("water 1floz", 29.5735295625, 0)] // NIST exact value
    [InlineData("water 30oz", 887.205886875, 0)] // an ounce of water is a fluid ounce
    [InlineData("glucose 80mg/dL", 4.44, 0.005)] // Veterinary Partner (VIN) client pages: 80 mg/dL is 4.4 mmol/L
    [InlineData("glucose 120mg/dL", 6.66, 0.005)] // the same pages print 6.6; 6.66 by 18.016
    [InlineData("seizure 2min 30s", 150, 0)]
    public void Worked_examples(string line, double expected, double tolerance) =>
        Assert.InRange(Canonical(line), (decimal)(expected - tolerance), (decimal)(expected + tolerance));

    /// <summary>UnitsNet is an independent reference for every unit that is not of our own making.</summary>
    [Fact]
    public void Conversions_agree_with_UnitsNet() => Gen.Decimal[0.1m, 5000m].ForAll(number =>
    {
        double n = (double)number;
        Agree("lb", n, Mass.FromPounds(n).Kilograms);
        Agree("oz", n, Mass.FromOunces(n).Kilograms);
        Agree("g", n, Mass.FromGrams(n).Kilograms);
        Agree("mg", n, Mass.FromMilligrams(n).Kilograms);
        Agree("ug", n, Mass.FromMicrograms(n).Kilograms);
        Agree("in", n, Length.FromInches(n).Millimeters);
        Agree("cm", n, Length.FromCentimeters(n).Millimeters);
        Agree("mi", n, Length.FromMiles(n).Millimeters);
        Agree("floz", n, Volume.FromUsOunces(n).Milliliters);
        Agree("imp-floz", n, Volume.FromImperialOunces(n).Milliliters);
        Agree("cup", n, Volume.FromUsCustomaryCups(n).Milliliters);
        Agree("l", n, Volume.FromLiters(n).Milliliters);
        Agree("F", n, Temperature.FromDegreesFahrenheit(n).DegreesCelsius);
        Agree("min", n, Duration.FromMinutes(n).Seconds);
        Agree("w", n, Duration.FromWeeks(n).Seconds);
    });

    [Fact]
    public void There_and_back_gives_the_same_number() => Gen.Decimal[0.1m, 5000m].ForAll(number =>
    {
        foreach (Unit unit in NoteVocabulary.Default.Units.Terms)
        {
            decimal back = UnitConversion.FromCanonical(UnitConversion.ToCanonical(new Amount(number, unit)), unit);
            Assert.Equal((double)number, (double)back, 9);
        }
    });

    private static void Agree(string unit, double number, double expected)
    {
        double ours = (double)UnitConversion.ToCanonical(new Amount((decimal)number, UnitNamed(unit)));
        Assert.Equal(expected, ours, Math.Abs(expected) * 1e-5 + 1e-9);
    }
}
