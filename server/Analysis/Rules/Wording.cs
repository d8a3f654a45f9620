using System.Globalization;
using HealthNotes.Analysis.Findings;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Record.Ranges;
using HealthNotes.Record.Readings;

namespace HealthNotes.Analysis.Rules;

/// <summary>The words findings are written in: calm, plain, the same everywhere.</summary>
public static class Wording
{
    /// <summary>The name of a note's word as an owner says it.</summary>
    public static string NameOf(string what) => NoteVocabulary.Default.LineWords.Find(what)?.Name ?? char.ToUpperInvariant(what[0]) + what[1..];

    /// <summary>A number with its unit, rounded for reading; in US units where <paramref name="us"/>.</summary>
    public static string Show(decimal number, string unit, bool us = false) => (unit, us) switch
    {
        ("/min", _) => $"{Round(number, 0)} a minute",
        ("Cel", true) => $"{Round((number * 1.8m) + 32, 1)} °F",
        ("Cel", false) => $"{Round(number, 1)} °C",
        ("s", _) => $"{Round(number, 1)} s",
        ("kg", true) => Pounds(number),
        ("kg", false) => $"{Round(number, number < 1 ? 3 : 2)} kg",
        ("mm", true) => $"{Round(number / 25.4m, 2)} in",
        ("mm", false) => $"{Round(number, 1)} mm",
        ("mL", true) => $"{Round(number / 29.5735295625m, 1)} fl oz",
        ("mL", false) => $"{Round(number, 0)} mL",
        ("mmol/L", true) => $"{Round(number * 18.016m, 0)} mg/dL",
        ("mmol/L", false) => $"{Round(number, 1)} mmol/L",
        _ when unit.StartsWith('/') => $"{Round(number, 1)}{unit}",
        _ => $"{Round(number, 1)} {unit}",
    };

    /// <summary>A range: <c>16 to 24 a minute</c>, <c>up to 90</c>, <c>220 or more</c>.</summary>
    public static string Show(NormalRange range, bool us = false) => (range.Low, range.High) switch
    {
        ({ } low, { } high) when low == high => Show(low, range.Unit, us),
        ({ } low, { } high) => Show(low, high, range.Unit, us),
        (null, { } high) => $"up to {Show(high, range.Unit, us)}",
        ({ } low, null) => $"{Show(low, range.Unit, us)} or more",
        _ => "not known",
    };

    /// <summary>A range of this pet's own: <c>16 to 24 a minute</c>.</summary>
    public static string Show(decimal low, decimal high, string unit, bool us = false) => $"{Bare(low, unit, us)} to {Show(high, unit, us)}";

    /// <summary>How a reading was taken and counted, for the start of a message.</summary>
    public static string Describe(NoteReading reading, bool us = false)
    {
        string bound = reading.Value.Bound switch { Grammar.Items.Bound.Below => "below ", Grammar.Items.Bound.Above => "above ", Grammar.Items.Bound.About => "about ", _ => "" };
        string state = reading.State is null ? "" : " " + reading.State;
        string place = reading.What == "temp" && reading.Site is { } site ? $" ({site})" : "";
        string spread = reading.Value is { Low: { } low, High: { } high, Unit: "/min" }
            ? $" ({reading.Written}; one count more or less makes it {Round(low, 0)} to {Round(high, 0)})"
            : "";
        return $"{NameOf(reading.What)} {bound}{Show(reading.Value.Number, reading.Value.Unit, us)}{state}{place}{spread}";
    }

    /// <summary>A definition as it stands in brackets: a small letter first, no full stop.</summary>
    public static string InBrackets(string definition) => char.ToLowerInvariant(definition[0]) + definition[1..].TrimEnd('.');

    /// <summary>What the level asks of the reader. Never a treatment.</summary>
    public static string Advice(FindingLevel level) => level switch
    {
        FindingLevel.Urgent => "This cannot wait: phone your clinic or an emergency clinic now.",
        FindingLevel.Call => "A reason to phone the clinic.",
        FindingLevel.Watch => "Worth watching.",
        _ => "",
    };

    /// <summary>The level's name as it is shown.</summary>
    public static string NameOf(FindingLevel level) => level switch
    {
        FindingLevel.Error => "Not understood",
        FindingLevel.Urgent => "Urgent",
        FindingLevel.Call => "Call the vet",
        FindingLevel.Watch => "Watch",
        _ => "To know",
    };

    /// <summary>What a level asks of an owner, as a label.</summary>
    public static string ForOwner(FindingLevel level) => level switch
    {
        FindingLevel.Error => "Not understood",
        FindingLevel.Urgent => "Phone now",
        FindingLevel.Call => "Phone the clinic",
        FindingLevel.Watch => "Keep an eye on",
        _ => "For information",
    };

    /// <summary>A day for a person: <c>today</c>, <c>yesterday</c>, <c>22 Nov</c> in this year, else <c>22 Nov 2025</c>.</summary>
    public static string Day(DateOnly day, DateOnly today) => (today.DayNumber - day.DayNumber) switch
    {
        0 => "today",
        1 => "yesterday",
        _ => day.ToString(day.Year == today.Year ? "d MMM" : "d MMM yyyy", CultureInfo.InvariantCulture),
    };

    /// <summary>A number rounded half away from zero, without needless zeros.</summary>
    public static string Round(decimal number, int decimals) =>
        Math.Round(number, decimals, MidpointRounding.AwayFromZero).ToString("0." + new string('#', decimals), CultureInfo.InvariantCulture);

    private static string Bare(decimal number, string unit, bool us) => Show(number, unit, us).Split(' ')[0].Split('/')[0];

    /// <summary>Pounds and ounces for a small animal, pounds for a large one.</summary>
    private static string Pounds(decimal kg)
    {
        decimal pounds = kg / 0.45359237m;
        decimal whole = Math.Floor(pounds);
        decimal ounces = Math.Round((pounds - whole) * 16, 1, MidpointRounding.AwayFromZero);
        return pounds >= 20 || ounces >= 16 ? $"{Round(pounds, 1)} lb" : whole == 0 ? $"{Round(ounces, 1)} oz" : $"{whole} lb {Round(ounces, 1)} oz";
    }
}
