using System.Globalization;
using HealthNotes.Analysis;
using HealthNotes.Analysis.Rules;
using HealthNotes.Record.HomeCare;
using HealthNotes.Record.Readings;

namespace HealthNotes.Cli.Output;

/// <summary>Writes every value as a table.</summary>
internal static class ValuesPrinter
{
    private static readonly string[] Titles = ["line", "day", "time", "what", "where", "state", "written", "value", "normal"];

    private static readonly string[] DayTitles = ["day", "given", "missed", "meals", "water", "mL/kg", "pee", "stool", "vomit", "cough", "sneeze", "seizure", "glucose"];

    public static void Print(TextWriter output, NoteAnalysis analysis)
    {
        output.WriteLine(Who(analysis));
        output.WriteLine();
        Table(output, Titles, analysis.Record.Readings.Select(reading => Row(analysis, reading)));
    }

    /// <summary>Writes the days of home care, added up.</summary>
    public static void PrintDays(TextWriter output, NoteAnalysis analysis)
    {
        output.WriteLine(Who(analysis));
        output.WriteLine();
        Table(output, DayTitles, CareDay.Of(analysis.Record).Select(Row));
    }

    private static void Table(TextWriter output, string[] titles, IEnumerable<string[]> lines)
    {
        List<string[]> rows = [titles, .. lines];
        int[] widths = [.. titles.Select((_, column) => rows.Max(row => row[column].Length))];
        foreach (string[] row in rows)
        {
            output.WriteLine(string.Join("  ", row.Select((cell, column) => cell.PadRight(widths[column]))).TrimEnd());
        }
    }

    private static string[] Row(CareDay day) =>
    [
        day.Day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
        Count(day.Given),
        Count(day.Missed),
        day.Eaten is { } eaten ? Wording.Round(eaten, 2) : "",
        day.WaterMl is { } water ? Wording.Show(water, "mL") : "",
        day.WaterPerKg is { } each ? Wording.Round(each, 0) : "",
        Count(day.Pee),
        Count(day.Stools),
        Count(day.Vomit),
        Count(day.Cough),
        Count(day.Sneeze),
        Count(day.Seizures),
        (day.GlucoseLow, day.GlucoseHigh) switch
        {
            ({ } low, { } high) when low != high => $"{Wording.Round(low, 1)}–{Wording.Round(high, 1)} mmol/L",
            ({ } one, _) => Wording.Show(one, "mmol/L"),
            _ => "",
        },
    ];

    private static string Count(int count) => count == 0 ? "" : $"{count}";

    private static string Who(NoteAnalysis analysis)
    {
        string age = analysis.Pet.AgeOn(analysis.Today) is { } known ? $", {known} on {analysis.Today:yyyy-MM-dd}" : "";
        return analysis.Pet.Name ?? "A pet without a name" + age;
    }

    private static string[] Row(NoteAnalysis analysis, NoteReading reading)
    {
        ReadValue value = reading.Value;
        string bound = value.Bound switch { Grammar.Items.Bound.Below => "< ", Grammar.Items.Bound.Above => "> ", Grammar.Items.Bound.About => "≈ ", _ => "= " };
        string spread = value is { Low: { } low, High: { } high } ? $" ({Wording.Round(low, 1)}–{Wording.Round(high, 1)})" : "";
        return
        [
            $"{reading.Line + 1}",
            reading.Day?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) ?? "",
            reading.Time?.ToString("HH:mm", CultureInfo.InvariantCulture) ?? "",
            reading.What,
            reading.Site + (reading.Tag is null ? "" : $" @{reading.Tag}"),
            reading.State ?? "",
            reading.Written,
            bound + Wording.Show(value.Number, value.Unit) + spread,
            analysis.Record.NormalFor(reading) is { } normal ? Wording.Show(normal) : "",
        ];
    }
}
