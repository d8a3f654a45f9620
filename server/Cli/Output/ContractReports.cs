using System.Globalization;
using HealthNotes.Analysis;
using HealthNotes.Analysis.Findings;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Record.HomeCare;
using HealthNotes.Record.Pet;
using HealthNotes.Record.Ranges;
using HealthNotes.Record.Readings;

namespace HealthNotes.Cli.Output;

/// <summary>Turns an analysis into the JSON contract.</summary>
internal static class ContractReports
{
    public static FileReport Check(string path, NoteAnalysis analysis, PlainFindings plain)
    {
        HashSet<NoteFinding> shown = [.. plain.Findings];
        return new FileReport(path, [.. analysis.Findings.Select(finding => Problem(finding, shown.Contains(finding), analysis.IsOpen(finding)))]);
    }

    public static ReadReport Read(string path, IEnumerable<LineReading> lines) => new(path, [.. lines.Select(Line)]);

    public static ValuesReport Values(NoteAnalysis analysis) => new(Pet(analysis), [.. analysis.Record.Readings.Select(Value)]);

    public static DaysReport Days(NoteAnalysis analysis) => new(Pet(analysis), [.. CareDay.Of(analysis.Record).Select(Day)]);

    private static DayReport Day(CareDay day) => new(
        day.Day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture), day.Given, day.Missed, Plain(day.Eaten), Plain(day.WaterMl), Plain(day.WaterPerKg),
        day.Pee, day.Stools, day.Vomit, day.Cough, day.Sneeze, day.Seizures, Plain(day.GlucoseLow), Plain(day.GlucoseHigh));

    private static ReadLineReport Line(LineReading line) => new(
        line.Index + 1,
        line.Line.Kind switch
        {
            LineKind.FreeText => "text",
            LineKind.EntryHead => "head",
            var kind => kind.ToString().ToLowerInvariant(),
        },
        line.Line.Text,
        line.Problem is null && line.Reading.Length > 0 ? line.Reading : null,
        line.Problem?.Message,
        line.Problem?.Corrected);

    private static ProblemReport Problem(NoteFinding finding, bool shown, bool open) => new(
        finding.Rule,
        finding.Level.ToString().ToLowerInvariant(),
        finding.Line + 1,
        finding.Span.Start + 1,
        finding.Line + 1,
        finding.Span.End + 1,
        finding.Message,
        finding.Source,
        [.. finding.Evidence.Select(line => line + 1)],
        shown,
        open);

    private static PetReport Pet(NoteAnalysis analysis)
    {
        PetProfile pet = analysis.Pet;
        Age? age = pet.AgeOn(analysis.Today);
        return new PetReport(
            pet.Name,
            pet.Species switch { Species.Dog => "dog", Species.Cat => "cat", _ => null },
            pet.Breed,
            pet.Male switch { true => "male", false => "female", null => null },
            pet.Neutered,
            pet.Born?.ToString(),
            age?.Days,
            age?.About,
            pet.StageOn(analysis.Today)?.Name,
            pet.SizeOn(analysis.Today),
            Plain(pet.AdultWeightKg));
    }

    private static ValueReport Value(NoteReading reading) => new(
        reading.Line + 1,
        reading.Day?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
        reading.Time?.ToString("HH:mm", CultureInfo.InvariantCulture),
        reading.What,
        reading.Site,
        reading.State,
        reading.Written,
        Plain(reading.Value.Number),
        reading.Value.Unit,
        Plain(reading.Value.Low),
        Plain(reading.Value.High),
        reading.Value.Bound switch { Bound.Below => "<", Bound.Above => ">", Bound.About => "~", _ => null },
        reading.Tag);

    /// <summary>Six decimals at most, and no needless zeros: 40, not 40.000000.</summary>
    private static decimal Plain(decimal number) => Math.Round(number, 6, MidpointRounding.AwayFromZero) / 1.0000000000000000000000000000m;

    private static decimal? Plain(decimal? number) => number is { } some ? Plain(some) : null;
}
