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

    /// <summary>So many standard deviations on one side hold all but one of two hundred values (normal distribution).</summary>
    private const double OneInTwoHundred = 2.58;

    /// <summary>So many earlier readings tell what is usual within the floor of the row, which is wider than a rate scatters.</summary>
    private const int Twice = 2;

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
            // what is measured at the clinic is known there; one reading that this pet often has is no more than information
            crossing = entry.Entry.Head.Kind == "visit" || (crossing.Level == FindingLevel.Watch && IsUsualForPet(reading, at)) ? crossing with { Level = FindingLevel.Info } : crossing;
            return Tell(reading, crossing, normal, context.Pet.ShowUsUnits);
        }

        return !usual && normal is not null && OutsideNormal(reading.Value.OnScaleOfNine(), normal) is { } side
            ? this.At(FindingLevel.Info, reading.Line, reading.Span,
                $"{Wording.Describe(reading, context.Pet.ShowUsUnits)}: {side} the range shown as normal, {Wording.Show(normal, context.Pet.ShowUsUnits)}, but past no line that raises a level.", normal.Source)
            : null;
    }

    /// <summary>True for a rate that lies within the scatter of the pet's own earlier readings, as far out as it happens in one of two hundred.</summary>
    private static bool IsUsualForPet(NoteReading reading, PetRecord at)
    {
        if (reading is not { What: "hr" or "rr", Comparable: { } state, Day: { } day } || UsualRow.For(new CourseKey(reading.What, state)) is not { } row)
        {
            return false;
        }

        (decimal Value, double Weight)[] own = [.. LineCrossing.Before(reading, at, row.Last).Where(before => day.DayNumber - before.Day!.Value.DayNumber <= row.Days).Select(before => (before.Value.Number, 1.0))];
        if (own.Length < Twice)
        {
            return false;
        }

        decimal number = reading.Value.Number;
        decimal median = Robust.Median(own);
        return Math.Abs(number - median) <= row.Floor
            || (own.Length >= row.Least
                && Math.Abs(row.OnScale(number) - row.OnScale(median)) <= Scatter.Of(row, own, median, number - (reading.Value.Low ?? number)).Times(OneInTwoHundred));
    }

    private NoteFinding Tell(NoteReading reading, LineCrossing crossing, NormalRange? normal, bool us)
    {
        string side = (crossing.Line.Above, crossing.Line.Inclusive) switch
        {
            (true, true) => "at or above",
            (true, false) => "above",
            (false, true) => "at or below",
            _ => "below",
        };
        string again = crossing.Earlier.Count > 0 ? $", {crossing.Earlier.Count + 1} readings in a row" : "";
        string shown = normal is null ? "" : $" Shown as normal: {Wording.Show(normal, us)}.";
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
