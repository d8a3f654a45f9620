using HealthNotes.Analysis.Findings;
using HealthNotes.Analysis.HomeCare;
using HealthNotes.Analysis.Ranges;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Notes;
using HealthNotes.Record;
using HealthNotes.Record.Courses;
using HealthNotes.Record.Readings;

namespace HealthNotes.Analysis.Rules;

/// <summary>Water drunk in a day, for each kilogram, past a published line. Said once of days that follow one another.</summary>
public sealed class WaterRangeRule : ICourseRule
{
    /// <inheritdoc/>
    public RuleKind Kind { get; } = new("water-range", "drinking", 1);

    /// <inheritdoc/>
    public bool Wants(CourseKey key) => key is { Word: "water" };

    /// <inheritdoc/>
    public IEnumerable<NoteFinding> Find(Course course, PetRecord at)
    {
        CareLimit? oldest = CareLimits.One("water-weight", at);
        decimal apart = CareLimits.One("water-run", at)?.Value ?? 0;
        List<Day>? run = null;
        foreach (IGrouping<DateOnly, Noted> lines in course.Recent.ToArray().Where(line => line.Reading is { Value.Unit: "mL" }).GroupBy(line => line.Day))
        {
            Day? day = oldest is null ? null : Read(lines, at, (int)oldest.Value);
            if (run is not null && (day?.Crossed is null || day.Date.DayNumber - run[^1].Date.DayNumber > apart))
            {
                yield return Tell(run, at);
                run = null;
            }

            if (day?.Crossed is not null)
            {
                (run ??= []).Add(day);
            }
        }

        if (run is not null)
        {
            yield return Tell(run, at);
        }
    }

    private static Day? Read(IGrouping<DateOnly, Noted> lines, PetRecord at, int oldest)
    {
        NoteReading reading = lines.Last().Reading!;
        // "less than", and what was spilt, say nothing of too much; "more than" is at least that much
        decimal drunk = lines.Where(line => line.Reading!.Value.Bound != Bound.Below && !IsSpilt(line)).Sum(line => line.Reading!.Value.Number);
        if (at.WeightOn(lines.Key) is not { Value.Number: > 0 } weight || lines.Key.DayNumber - weight.Day!.Value.DayNumber > oldest || at.Facts.Pet.KeyOf(reading) is not { } key)
        {
            return null;
        }

        decimal each = drunk / weight.Value.Number;
        LevelLine? crossed = LevelLine.Of(key).Where(line => line.Above && (line.Inclusive ? each >= line.Value : each > line.Value)).MaxBy(line => line.Level);
        return new Day(lines.Key, [.. lines], drunk, each, weight, crossed);
    }

    private static bool IsSpilt(Noted line) => line.Item is CareEvent care && care.Words.Any(word => word.Word.Word == "spilt");

    private NoteFinding Tell(List<Day> run, PetRecord at)
    {
        // a line that takes days in a row holds one level lower until there are as many past it
        LevelLine line = run.Select(day => day.Crossed!).MaxBy(crossed => crossed.Level)!;
        int past = run.Count(day => day.Each > line.Value);
        FindingLevel level = past >= line.Repeat ? line.Level : line.Level - 1;
        Day last = run[^1];
        // the clinic knows a condition that makes thirsty: a rise has a rule of its own
        DatedFact<TextFact>? known = at.Facts.Conditions.Saying(KnownSigns.ConditionsOf(last.Lines[^1].Item!, "more")).FirstOrDefault(fact => !(fact.Day > last.Date));
        level = known is null ? level : level - 1;
        bool us = at.Facts.Pet.ShowUsUnits;
        string days = run.Count > 1 ? $" Measured {run.Count} times running, since {run[0].Date:yyyy-MM-dd}." : "";
        string wait = past < line.Repeat && level > FindingLevel.Info ? "Measure again tomorrow: twice running would be a reason to phone the clinic." : "";
        return this.At(level, last.Lines[^1].Line, last.Lines[^1].Reading!.Span,
            $"Water {Wording.Show(last.Drunk, "mL", us)} in a day is {Wording.Round(last.Each, Math.Round(last.Each) == line.Value ? 1 : 0)} mL for each kilogram (weight {Wording.Show(last.Weight.Value.Number, "kg", us)} of {last.Weight.Day:yyyy-MM-dd}): above {Wording.Round(line.Value, 0)}.{days}{(known is null ? "" : $" Known: {known.Fact.Text.Text} (line {known.Line + 1}).")}",
            line.Source, run.SelectMany(day => day.Lines).Select(noted => noted.Line).TakeLast(Runs.MostEvidence).Append(last.Weight.Line)).And(wait);
    }

    private sealed record Day(DateOnly Date, List<Noted> Lines, decimal Drunk, decimal Each, NoteReading Weight, LevelLine? Crossed);
}
