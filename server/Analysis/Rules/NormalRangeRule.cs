using HealthNotes.Analysis.Findings;
using HealthNotes.Analysis.Ranges;
using HealthNotes.Analysis.Trends;
using HealthNotes.Record;
using HealthNotes.Record.Courses;
using HealthNotes.Record.Pet;
using HealthNotes.Record.Ranges;
using HealthNotes.Record.Readings;

namespace HealthNotes.Analysis.Rules;

/// <summary>A vital compared with the published lines for this species, stage, size, state and place. One instance a vital.</summary>
public sealed class NormalRangeRule : IEntryRule
{
    private static readonly string[] Vitals = ["hr", "rr", "temp", "crt", "bcs", "mcs", "pain", "glucose"];

    private readonly string vital;

    private NormalRangeRule(string vital) => this.vital = vital;

    /// <inheritdoc/>
    public RuleKind Kind => new(vital + "-range", "reading", 5);

    /// <summary>The rule for each vital that the tables have lines for.</summary>
    public static IEnumerable<IRule> ForEachVital() => Vitals.Select(vital => new NormalRangeRule(vital));

    /// <inheritdoc/>
    public IEnumerable<NoteFinding> Find(PetRecord at, PetEntry entry)
    {
        foreach (NoteReading reading in entry.Readings)
        {
            if (reading.What == vital && at.Facts.Pet.KeyOf(reading) is { } key && Judge(at, entry, reading, key) is { } finding)
            {
                yield return finding;
            }
        }

        // panting, a run or fright explain a warm pet, but not one past the line of what cannot wait
        foreach (NoteReading reading in entry.Readings.Where(reading => reading.What == vital && vital == "temp" && reading.Comparable is null))
        {
            if (at.Facts.Pet.KeyOf(reading with { Comparable = "any" }) is { } key && Judge(at, entry, reading, key) is { Level: FindingLevel.Urgent } finding)
            {
                yield return finding;
            }
        }
    }

    private NoteFinding? Judge(PetRecord at, PetEntry entry, NoteReading reading, ReadingKey key)
    {
        PetFacts context = at.Facts;
        IEnumerable<LevelLine> lines = LevelLine.Of(key);
        NormalRange? normal = ClinicalTables.Default.NormalFor(key);
        bool usual = OwnLimits.UsualFor(context, reading) is { } own && OwnLimits.Holds(own.Fact, reading.Value);
        if (LineCrossing.Strongest(reading, lines, at) is { } crossing && !(usual && crossing.Level < FindingLevel.Urgent))
        {
            // what is measured at the clinic is known there; what this pet often has is a level less
            FindingLevel level = entry.Entry.Head.Kind == "visit" ? FindingLevel.Info
                : crossing.Level is FindingLevel.Watch or FindingLevel.Call && IsUsualForPet(reading, crossing, lines, at) ? crossing.Level - 1
                : crossing.Level;
            return Tell(reading, crossing with { Level = level }, OwnLimits.UsualFor(context, reading) is { From: not null } clinic
                ? $" The clinic's usual: {Wording.Show(OwnLimits.Canonical(clinic.Fact.Range.Low, clinic.Fact.Range.Unit), OwnLimits.Canonical(clinic.Fact.Range.High, clinic.Fact.Range.Unit), reading.Value.Unit, context.Pet.ShowUsUnits)} ({clinic.From})."
                : normal is null ? "" : $" Shown as normal: {Wording.Show(normal, context.Pet.ShowUsUnits)}.", context.Pet.ShowUsUnits);
        }

        return !usual && normal is not null && OutsideNormal(reading.Value.OnScaleOfNine(), normal) is { } side
            ? this.At(FindingLevel.Info, reading.Line, reading.Span,
                $"{Wording.Describe(reading, context.Pet.ShowUsUnits)}: {side} the range shown as normal, {Wording.Show(normal, context.Pet.ShowUsUnits)}, but past no line that raises a level.", normal.Source)
            : null;
    }

    /// <summary>
    /// True for rates that lie as near to the pet's own earlier readings as its own usual reaches (<see cref="OwnUsualRule"/>).
    /// A reason to phone must lie within their scatter alone, and is compared with the readings before the last ones past a line in a row, so that a change does not become usual;
    /// a range that the vet gave goes before it, and counts asleep have a row of their own for several together.
    /// </summary>
    private static bool IsUsualForPet(NoteReading reading, LineCrossing crossing, IEnumerable<LevelLine> lines, PetRecord at)
    {
        bool call = crossing.Level == FindingLevel.Call;
        if (reading is not { What: "hr" or "rr", Comparable: { } state, Day: { } day } || UsualRow.For(new CourseKey(reading.What, state)) is not { } row
            || (call && (row.Again is not null || OwnLimits.UsualFor(at.Facts, reading) is not null)))
        {
            return false;
        }

        NoteReading[] before = [.. LineCrossing.Before(reading, at, row.Last).Where(earlier => day.DayNumber - earlier.Day!.Value.DayNumber <= row.Days)];
        NoteReading[] since = [.. before.TakeWhile(earlier => lines.Any(line => line.Above == crossing.Line.Above && LineCrossing.Crosses(earlier.Value, line)))];
        (decimal Value, double Weight)[] own = [.. before.Skip(call ? since.Length : 0).Select(earlier => (earlier.Value.Number, 1.0))];
        decimal number = reading.Value.Number;
        if (own.Length < row.Least)
        {
            // few readings tell what is usual within the floor of the row or the scatter of an ordinary pet; one does when it is in range
            return !call && before.Length > (since.Length > 0 ? 1 : 0) && Robust.Median(own) is var few
                && Math.Abs(number - few) <= Math.Max(row.Floor, row.Times * row.Ordinary / 100 * few);
        }

        decimal median = Robust.Median(own);
        var scatter = Scatter.Of(row, own, median, number - (reading.Value.Low ?? number));
        decimal mean = crossing.Earlier.Append(reading).Average(one => one.Value.Number);
        return call
            ? Distance(number) <= scatter.Least((double)row.Times) && Distance(mean) <= scatter.Least((double)row.Times, crossing.Earlier.Count + 1)
            : Math.Abs(number - median) <= Math.Max(row.Floor, row.Percent * median / 100) || Distance(number) <= scatter.Times((double)row.Times);

        decimal Distance(decimal value) => Math.Abs(row.OnScale(value) - row.OnScale(median));
    }

    private NoteFinding Tell(NoteReading reading, LineCrossing crossing, string shown, bool us)
    {
        string side = (crossing.Line.Above, crossing.Line.Inclusive) switch
        {
            (true, true) => "at or above",
            (true, false) => "above",
            (false, true) => "at or below",
            _ => "below",
        };
        string again = crossing.Earlier.Count > 0 ? $", {crossing.Earlier.Count + 1} readings in a row" : "";
        string repeat = crossing.Waiting && crossing.Level >= FindingLevel.Watch
            ? $" Take it again when the pet is calm: {crossing.Line.Repeat} in a row would be {(crossing.Line.Level == FindingLevel.Urgent ? "urgent" : "a reason to phone the clinic")}."
            : "";
        string seconds = reading is { What: "hr" or "rr", Value.Low: null } && !crossing.Line.Above
            ? $" If it was counted in 15 seconds, write {reading.Written}/15s."
            : "";
        return this.At(crossing.Level, reading.Line, reading.Span,
            $"{Wording.Describe(reading, us)}: {side} {Wording.Show(crossing.Line.Value, crossing.Line.Unit, us)}{again}.", crossing.Line.Source, crossing.Earlier.Select(r => r.Line)).And($"{repeat}{seconds}{shown}");
    }

    private static string? OutsideNormal(ReadValue value, NormalRange normal)
    {
        if (value.Unit != normal.Unit)
        {
            return null;
        }

        return normal.High is { } high && LineCrossing.Crosses(value, above: true, high, inclusive: false) ? "above"
            : normal.Low is { } low && LineCrossing.Crosses(value, above: false, low, inclusive: false) ? "below"
            : null;
    }
}
