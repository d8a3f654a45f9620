using HealthNotes.Analysis.Findings;
using HealthNotes.Analysis.Trends;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Record;
using HealthNotes.Record.Courses;
using HealthNotes.Record.Pet;
using HealthNotes.Record.Ranges;
using HealthNotes.Record.Readings;

namespace HealthNotes.Analysis.Rules;

/// <summary>A reading far from what is usual for this pet by its own earlier readings. A <c>usual</c> line that the vet gave goes before it.</summary>
public sealed class OwnUsualRule : ICourseRule
{
    private const int MostTogether = 7;

    /// <inheritdoc/>
    public RuleKind Kind { get; } = new("own-usual", "reading", 4);

    /// <inheritdoc/>
    public bool Wants(CourseKey key) => UsualRow.For(key) is not null;

    /// <inheritdoc/>
    public IEnumerable<NoteFinding> Find(Course course, PetRecord at)
    {
        UsualRow row = UsualRow.For(course.Key)!;
        Course compared = SameVital.Of(course, at.All);
        DateOnly? grown = at.Facts.Pet.GrownOn(row.GrownMonths);
        UsualBasis? basis = null;
        OwnUsual? usual = null;
        DateOnly? basisOf = null;
        // of several within apart-days the newest speaks, unless one before was stronger
        (NoteFinding Finding, DateOnly Day)? run = null;
        for (int index = course.Lines.Length - course.Recent.Length; index < course.Lines.Length; index++)
        {
            Noted line = course.Lines[index];
            if (line.Reading is not { } reading || line.Day < grown || (line.AtVisit && !row.AtVisits) || OwnLimits.UsualFor(at.Facts, reading) is not null)
            {
                continue;
            }

            if (basisOf != line.Day)
            {
                basis = UsualBasis.Of(compared, row, line.Day, grown);
                usual = null;
                basisOf = line.Day;
            }

            if (basis is null || !basis.CouldBeFar(reading.Value.Number))
            {
                continue;
            }

            usual ??= basis.ToUsual();
            bool? side = SideOf(reading.Value, usual, row);
            int together = row.Again is null ? 1 : Together(course, index, usual, row);
            if (side is not null || together > 1)
            {
                NoteFinding finding = Speak(at, reading, usual, row, side ?? true, together);
                if (run is { } before && (finding.Level < before.Finding.Level || line.Day.DayNumber - before.Day.DayNumber > row.ApartDays))
                {
                    yield return before.Finding;
                }

                run = (finding, line.Day);
            }
        }

        if (run is { } last)
        {
            yield return last.Finding;
        }
    }

    /// <summary>
    /// True above, false below, null where it is as usual or not sure: one count less here and one more each time before
    /// must not be enough to make it usual.
    /// </summary>
    private static bool? SideOf(ReadValue value, OwnUsual usual, UsualRow row) =>
        LineCrossing.Crosses(value, above: true, usual.High, inclusive: true) && !(value.Low <= usual.Median + usual.Step) ? true
        : row.BothSides && LineCrossing.Crosses(value, above: false, usual.Low, inclusive: true) && !(value.High >= usual.Median - usual.Step) ? false
        : null;

    /// <summary>How many readings in a row are far above the usual together: 2, 3 or 7 that all lie above it; 1 when none are. One alone may be chance where several are not.</summary>
    private static int Together(Course course, int index, OwnUsual usual, UsualRow row)
    {
        Noted next = course.Lines[index];
        decimal sum = next.Reading!.Value.Number;
        int count = 1;
        for (int before = index - 1; before >= 0 && count < MostTogether; before--)
        {
            Noted line = course.Lines[before];
            if (line.Reading is not { } reading || (line.AtVisit && !row.AtVisits))
            {
                continue;
            }

            if (reading.Value.Number <= usual.Median || (course.Lines[index].Moment - line.Moment).TotalDays > row.ApartDays)
            {
                break;
            }

            // without a time, two counts of one day may be minutes apart
            bool apart = line.Day != next.Day || (line.Time is not null && next.Time is not null && (next.Moment - line.Moment).TotalHours >= row.ApartHours);
            if (!apart)
            {
                continue;
            }

            next = line;
            sum += reading.Value.Number;
            count++;
            decimal mean = sum / count;
            decimal error = usual.Scatter.Times((double)row.AgainTimes, count);
            if (count is 2 or 3 or MostTogether && mean >= row.From && mean - usual.Median >= row.Percent * usual.Median / 100
                && row.OnScale(mean) - row.OnScale(usual.Median) >= error)
            {
                return count;
            }
        }

        return 1;
    }

    /// <summary>The range shown as normal. Weights are not looked at, so that it is left out where it hangs on the size of a dog.</summary>
    private static string Normal(PetFacts note, NoteReading reading)
    {
        bool hangsOnSize = reading.What == "hr" && note.Pet is { Species: not Species.Cat, AdultWeightKg: null };
        return !hangsOnSize && note.Pet.WithWeighings([]).KeyOf(reading) is { } key && ClinicalTables.Default.NormalFor(key) is { } normal
            ? $" Shown as normal: {Wording.Show(normal, note.Pet.ShowUsUnits)}." : "";
    }

    private NoteFinding Speak(PetRecord at, NoteReading reading, OwnUsual usual, UsualRow row, bool above, int together)
    {
        bool us = at.Facts.Pet.ShowUsUnits;
        decimal distance = Math.Abs(reading.Value.Number - usual.Median);
        decimal line = above ? usual.High - usual.Median : usual.Median - usual.Low;
        FindingLevel level = together > 1 ? row.Again!.Value : distance >= line * row.ClearAt ? row.Clear : row.Mild;
        string percent = reading.What != "temp" && usual.Median > 0 ? $"{Wording.Round(distance * 100 / usual.Median, 0)}% " : "";
        string repeated = together > 1 ? $" The last {together} readings together are as far out." : "";
        string recount = together == 1 && row.Again is not null
            ? " Count again in 4 to 6 hours, in deep sleep: two high counts are a reason to phone the clinic."
            : together == 1 && level >= FindingLevel.Watch ? " Take it again when the pet is calm." : "";
        return this.At(level, reading.Line, reading.Span,
            $"{Wording.Describe(reading, us)}: {percent}{(above ? "above" : "below")} this pet's own usual of {Wording.Show(usual.Median, usual.Unit, us)} ({usual.Count} readings since {usual.Since:yyyy-MM-dd}).{repeated}",
            row.Source, usual.Lines).And($"{recount}{Normal(at.Facts, reading)}");
    }
}
