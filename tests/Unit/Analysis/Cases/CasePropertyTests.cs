using System.Globalization;
using System.Text.RegularExpressions;
using HealthNotes.Analysis;
using HealthNotes.Analysis.Findings;
using HealthNotes.Grammar.Notes;

namespace HealthNotes.Tests.Analysis.Cases;

/// <summary>What may be done to any of the cases without a change of judgement.</summary>
public partial class CasePropertyTests
{
    private const decimal KilogramsInPound = 0.45359237m;
    private const decimal MillimetresInInch = 25.4m;
    private const decimal MillilitresInFluidOunce = 29.5735295625m;
    private const decimal MilligramsPerDecilitre = 18.016m;
    private const int Decimals = 6;

    public static TheoryData<string> All => [.. CaseNote.Names];

    /// <summary>Notes are read in the order of time, whatever the order in the file: the oldest entry first or last.</summary>
    [Theory]
    [MemberData(nameof(All))]
    public void Entries_in_the_other_order_are_judged_alike(string name)
    {
        var one = CaseNote.Load(name);
        NoteAnalysis analysis = one.Analyse();
        Assert.Equal(Said(analysis), Said((one with { Text = Reversed(analysis.Note, one.Text) }).Analyse()));
    }

    /// <summary>Pounds, inches, fluid ounces, Fahrenheit and mg/dL say the same as kilograms, millimetres, millilitres, Celsius and mmol/L.</summary>
    [Theory]
    [MemberData(nameof(All))]
    public void Metric_values_written_in_other_units_are_judged_alike(string name)
    {
        var one = CaseNote.Load(name);
        string other = string.Join('\n', one.Text.Split('\n').Select(line => line.StartsWith('#') || line.StartsWith("med ", StringComparison.Ordinal) ? line : Metric().Replace(line, Converted)));
        Assert.Equal(Said(one.Analyse()), Said((one with { Text = other }).Analyse()));
    }

    [Theory]
    [MemberData(nameof(All))]
    public void One_more_line_that_is_as_expected_makes_nothing_worse(string name)
    {
        var one = CaseNote.Load(name);
        IReadOnlyDictionary<int, FindingLevel> before = Strongest(one.Analyse());
        string more = string.Create(CultureInfo.InvariantCulture, $"{one.Text}\n{one.Today:yyyy-MM-dd} 23:59 log\n  mood calm\n");
        IReadOnlyDictionary<int, FindingLevel> after = Strongest((one with { Text = more }).Analyse());
        Assert.Empty(after.Where(line => line.Value > before.GetValueOrDefault(line.Key)).Select(line => $"line {line.Key + 1}: {line.Value}"));
    }

    private static IEnumerable<string> Said(NoteAnalysis analysis) =>
        analysis.Findings.Select(f => $"{analysis.Note.EntryAt(f.Line)?.Head.Date:yyyy-MM-dd} {f.Rule} {f.Level}").Order(StringComparer.Ordinal);

    /// <summary>The strongest level of each line that has more than something to know.</summary>
    private static Dictionary<int, FindingLevel> Strongest(NoteAnalysis analysis) =>
        analysis.Findings.Where(f => f.Level > FindingLevel.Info).GroupBy(f => f.Line).ToDictionary(line => line.Key, line => line.Max(f => f.Level));

    private static string Reversed(Note note, string text)
    {
        string[] lines = text.TrimEnd('\n').Split('\n');
        int[] starts = [.. note.Entries.Select(entry => entry.Line), lines.Length];
        IEnumerable<string> entries = note.Entries.Select((_, i) => string.Join('\n', lines[starts[i]..starts[i + 1]])).Reverse();
        return string.Join('\n', [.. lines[..starts[0]], .. entries]) + "\n";
    }

    private static string Converted(Match match)
    {
        decimal number = decimal.Parse(match.Groups["number"].Value, CultureInfo.InvariantCulture);
        (decimal value, string unit) = match.Groups["unit"].Value switch
        {
            "kg" => (number / KilogramsInPound, "lb"),
            "mm" => (number / MillimetresInInch, "in"),
            "ml" => (number / MillilitresInFluidOunce, "floz"),
            "C" => ((number * 1.8m) + 32, "F"),
            _ => (number * MilligramsPerDecilitre, "mg/dL"),
        };
        return string.Create(CultureInfo.InvariantCulture, $"{decimal.Round(value, Decimals)}{unit}");
    }

    [GeneratedRegex(@"(?<![-\d.x])(?<number>\d+(\.\d+)?)(?<unit>kg|mm|ml|C|mmol/L)(?=\s|$)", RegexOptions.ExplicitCapture)]
    private static partial Regex Metric();
}
