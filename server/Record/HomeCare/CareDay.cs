using System.Collections.Immutable;
using HealthNotes.Grammar.Items;
using HealthNotes.Record.Courses;

namespace HealthNotes.Record.HomeCare;

/// <summary>One day of home care, added up. What no line tells of is 0, or null where nothing is not the same as none.</summary>
/// <param name="Day">The day.</param>
/// <param name="Given">Doses written as given.</param>
/// <param name="Missed">Doses written as missed.</param>
/// <param name="Eaten">Meals eaten, in whole meals; null where no line says how much.</param>
/// <param name="WaterMl">Water drunk in mL; null where no line says how much.</param>
/// <param name="WaterPerKg">The same for each kilogram of the last weighing; null without one.</param>
/// <param name="Pee">Times urine was passed.</param>
/// <param name="Stools">Times stool was passed.</param>
/// <param name="Vomit">Times it vomited, hair-balls and grass left out.</param>
/// <param name="Cough">Times it coughed.</param>
/// <param name="Sneeze">Times it sneezed.</param>
/// <param name="Seizures">Seizures.</param>
/// <param name="GlucoseLow">The lowest glucose in mmol/L; null where none was measured.</param>
/// <param name="GlucoseHigh">The highest.</param>
public sealed record CareDay(
    DateOnly Day,
    int Given,
    int Missed,
    decimal? Eaten,
    decimal? WaterMl,
    decimal? WaterPerKg,
    int Pee,
    int Stools,
    int Vomit,
    int Cough,
    int Sneeze,
    int Seizures,
    decimal? GlucoseLow,
    decimal? GlucoseHigh)
{
    private static readonly string[] Words = ["gave", "missed", "ate", "water", "pee", "stool", "vomit", "cough", "sneeze", "seizure", "glucose"];

    /// <summary>Every day that tells of home care, the earliest first.</summary>
    public static ImmutableArray<CareDay> Of(PetRecord record) =>
        [.. Words.SelectMany(word => record.All(word)).SelectMany(course => course.Lines.Select(line => (course.Key.Word, Line: line)))
            .GroupBy(one => one.Line.Day).OrderBy(day => day.Key)
            .Select(day => Add(day.Key, day.ToLookup(one => one.Word, one => one.Line), record))];

    private static CareDay Add(DateOnly day, ILookup<string, Noted> lines, PetRecord record)
    {
        decimal? water = Sum(lines["water"].Where(line => line.Reading is { Value.Bound: not Bound.Below }).Select(line => line.Reading!.Value.Number));
        decimal? weight = record.Pet.WeightOn(day)?.Value.Number;
        decimal[] glucose = [.. lines["glucose"].Select(line => line.Reading!.Value.Number)];
        return new CareDay(
            day,
            lines["gave"].Count(),
            lines["missed"].Count(),
            Sum(lines["ate"].Select(line => line.Item).OfType<CareEvent>().Select(care => care.Quantity).OfType<Portion>().Select(portion => portion.Part / portion.Whole)),
            water,
            weight > 0 ? water / weight : null,
            Times(lines["pee"]),
            Times(lines["stool"]),
            Times(lines["vomit"].Where(CareWords.Counts)),
            Times(lines["cough"].Where(CareWords.Counts)),
            Times(lines["sneeze"].Where(CareWords.Counts)),
            Times(lines["seizure"]),
            glucose.Length == 0 ? null : glucose.Min(),
            glucose.Length == 0 ? null : glucose.Max());
    }

    private static int Times(IEnumerable<Noted> lines) => lines.Sum(CareWords.Times);

    private static decimal? Sum(IEnumerable<decimal> values) => values.Aggregate((decimal?)null, (sum, value) => (sum ?? 0) + value);
}
