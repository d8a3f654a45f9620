using System.Collections.Immutable;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Record.Readings;

namespace HealthNotes.Features.Actions.Rewrites;

/// <summary>Values in the other system, with as many figures as a scale, a ruler or a thermometer gives.</summary>
internal static class UnitRounding
{
    private const decimal OuncesBelowPounds = 20;

    /// <summary>The value in the other system; null where it has none, or where nothing would be left of it.</summary>
    public static NoteValue? Convert(NoteValue value) => value switch
    {
        Measure measure => Amounts(measure) is { Count: > 0 } amounts && amounts.All(amount => amount.Number > 0) ? measure with { Amounts = [.. amounts] } : null,
        Diameters size => Lengths(size) is { } lengths && lengths.All(length => length.Number > 0) ? size with { Lengths = lengths } : null,
        Difference difference => Weighings(difference),
        _ => null,
    };

    private static List<Amount> Amounts(Measure measure)
    {
        decimal canonical = UnitConversion.ToCanonical(measure);
        Unit unit = measure.Amounts[0].Unit;
        return unit.Word switch
        {
            "kg" or "g" => Pounds(canonical),
            "lb" or "oz" => [Kilograms(canonical)],
            "C" => [In("F", canonical, 1)],
            "F" => [In("C", canonical, 1)],
            "mmol/L" => [In("mg/dL", canonical, 0)],
            "mg/dL" => [In("mmol/L", canonical, 1)],
            "ml" or "l" => [In("floz", canonical, 1)],
            "floz" or "imp-floz" or "cup" => [In("ml", canonical, 0)],
            _ => [],
        };
    }

    /// <summary>A large animal in pounds and tenths, a small one in pounds and ounces, the smallest in ounces.</summary>
    private static List<Amount> Pounds(decimal kg)
    {
        decimal pounds = UnitConversion.FromCanonical(kg, Unit("lb"));
        if (pounds >= OuncesBelowPounds)
        {
            return [In("lb", kg, 1)];
        }

        decimal ounces = UnitConversion.FromCanonical(kg, Unit("oz"));
        if (ounces < 16)
        {
            return [In("oz", kg, 1)];
        }

        decimal all = Math.Round(ounces, 0, MidpointRounding.AwayFromZero);
        decimal left = all % 16;
        return left == 0 ? [new Amount(all / 16, Unit("lb"))] : [new Amount((all - left) / 16, Unit("lb")), new Amount(left, Unit("oz"))];
    }

    private static Amount Kilograms(decimal kg) => kg < 1 ? In("g", kg, 0) : In("kg", kg, kg < 10 ? 2 : 1);

    private static ImmutableArray<Amount>? Lengths(Diameters size)
    {
        bool metric = size.Lengths[0].Unit.Word is "mm" or "cm";
        return [.. size.Lengths.Select(length => UnitConversion.ToCanonical(length)).Select(mm => metric ? In("in", mm, 2) : In("mm", mm, mm < 3 ? 1 : 0))];
    }

    private static Difference? Weighings(Difference difference)
    {
        bool metric = difference.Total.Unit.Word is "kg" or "g";
        Amount total = In(metric ? "lb" : "kg", UnitConversion.ToCanonical(difference.Total), 1);
        Amount less = In(metric ? "lb" : "kg", UnitConversion.ToCanonical(difference.Less), 1);
        return less.Number > 0 && total.Number > less.Number ? difference with { Total = total, Less = less } : null;
    }

    private static Amount In(string unit, decimal canonical, int decimals)
    {
        decimal rounded = Math.Round(UnitConversion.FromCanonical(canonical, Unit(unit)), decimals, MidpointRounding.AwayFromZero);
        return new Amount(rounded / 1.000000000000m, Unit(unit));
    }

    private static Unit Unit(string word) => NoteVocabulary.Default.Units.Find(word)!;
}
