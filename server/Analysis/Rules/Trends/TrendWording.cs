using HealthNotes.Analysis.Trends;
using HealthNotes.Record.Readings;

namespace HealthNotes.Analysis.Rules;

/// <summary>How a change over time is written.</summary>
internal static class TrendWording
{
    private const double KilogramsInPound = 0.45359237;
    private const double MilligramsInMillimole = 18.016;
    private const int MostDecimals = 6;

    /// <summary>What changes, with its state and place where they part it from others.</summary>
    public static string Name(NoteReading reading)
    {
        string state = reading.Comparable is "asleep" or "before-food" or "after-food" ? " " + reading.Comparable : "";
        return reading.What == "water" ? "Water drunk in a day" : Wording.NameOf(reading.What) + state;
    }

    /// <summary>The change in a month and its interval: <c>0.9 a minute each month (95% interval 0.5 to 1.2)</c>.</summary>
    public static string Rate(Trend trend, bool us)
    {
        string unit = trend.Row.Unit;
        double low = Math.Min(Math.Abs(trend.LowPerMonth), Math.Abs(trend.HighPerMonth));
        double high = Math.Max(Math.Abs(trend.LowPerMonth), Math.Abs(trend.HighPerMonth));
        return $"{Number(Math.Abs(trend.PerMonth), unit, us, 2)} {UnitOf(unit, us)} each month (95% interval {Number(low, unit, us, 2)} to {Number(high, unit, us, 2)})";
    }

    /// <summary>Where the line begins and ends: <c>from about 18.2 to 27.1 a minute</c>.</summary>
    public static string FromTo(Trend trend, bool us) =>
        $"from about {Number(trend.Start, trend.Row.Unit, us, 1)} to {Number(trend.End, trend.Row.Unit, us, 1)} {UnitOf(trend.Row.Unit, us)}";

    private static string UnitOf(string unit, bool us) => (unit, us) switch
    {
        ("/min", _) => "a minute",
        ("kg", true) => "lb",
        ("mmol/L", true) => "mg/dL",
        ("mL/kg/d", _) => "mL/kg a day",
        _ when unit.StartsWith('/') => "points of " + unit[1..],
        _ => unit,
    };

    /// <summary>A kilogram is shown more finely: a cat loses a tenth of it in a month.</summary>
    private static string Number(double number, string unit, bool us, int decimals) => Wording.Round((decimal)Math.Round((unit, us) switch
    {
        ("kg", true) => number / KilogramsInPound,
        ("mmol/L", true) => number * MilligramsInMillimole,
        _ => number,
    }, MostDecimals), unit == "kg" ? decimals + 1 : decimals);
}
