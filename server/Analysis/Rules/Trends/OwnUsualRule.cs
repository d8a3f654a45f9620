using HealthNotes.Analysis.Courses;
using HealthNotes.Analysis.Findings;
using HealthNotes.Analysis.Readings;
using HealthNotes.Analysis.Trends;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Analysis.Rules;

/// <summary>A reading far from what is usual for this pet by its own earlier readings. A <c>usual</c> line that the vet gave goes before it.</summary>
public sealed class OwnUsualRule : ICourseRule
{
    /// <inheritdoc/>
    public string Name => "own-usual";

    /// <inheritdoc/>
    public string Topic => "reading";

    /// <inheritdoc/>
    public bool Wants(CourseKey key) => UsualRow.For(key) is not null;

    /// <inheritdoc/>
    public IEnumerable<NoteFinding> Find(Course course, CourseContext at)
    {
        UsualRow row = UsualRow.For(course.Key)!;
        Course compared = SameVital.Of(course, at.All);
        DateOnly? grown = at.Note.Pet.GrownOn(row.GrownMonths);
        var far = new bool[course.Lines.Length];
        UsualBasis? basis = null;
        OwnUsual? usual = null;
        DateOnly? basisOf = null;
        // of several within apart-days the newest speaks, unless one before was stronger
        (NoteFinding Finding, DateOnly Day)? run = null;
        for (int index = far.Length - course.Recent.Length; index < far.Length; index++)
        {
            Noted line = course.Lines[index];
            if (line.Reading is not { } reading || line.Day < grown || (line.AtVisit && !row.AtVisits) || OwnLimits.UsualFor(at.Note, reading) is not null)
            {
                continue;
            }

            if (basisOf != line.Day)
            {
                basis = UsualBasis.Of(compared, row, line.Day, grown);
                usual = null;
                basisOf = line.Day;
            }

            if (basis is not null && basis.CouldBeFar(reading.Value.Number) && SideOf(reading.Value, usual ??= basis.ToUsual(), row) is { } above)
            {
                far[index] = true;
                int? again = row.Again is null ? null : BeforeAsFar(course, far, index, row);
                NoteFinding finding = Speak(at, reading, usual, row, above, again is { } other ? course.Lines[other] : null);
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

    /// <summary>The reading before that is as far out and long enough before; null when one in between, or the one before, was not.</summary>
    private static int? BeforeAsFar(Course course, bool[] far, int index, UsualRow row)
    {
        DateTime moment = course.Lines[index].Moment;
        for (int before = index - 1; before >= 0; before--)
        {
            Noted line = course.Lines[before];
            if (line.Reading is null || (line.AtVisit && !row.AtVisits))
            {
                continue;
            }

            // without a time, two counts of one day may be minutes apart
            bool apart = line.Day != course.Lines[index].Day || (line.Time is not null && course.Lines[index].Time is not null);
            if (!far[before] || (moment - line.Moment).TotalDays > row.ApartDays)
            {
                return null;
            }

            if (apart && (moment - line.Moment).TotalHours >= row.ApartHours)
            {
                return before;
            }
        }

        return null;
    }

    /// <summary>The range shown as normal. Weights are not looked at, so that it is left out where it hangs on the size of a dog.</summary>
    private static string Normal(RuleContext note, NoteReading reading)
    {
        bool hangsOnSize = reading.What == "hr" && note.Pet is { Species: not Species.Cat, AdultWeightKg: null };
        return !hangsOnSize && RuleContext.KeyOf(reading, note.Pet.WithWeighings([]), note.Tables) is { } key && note.Tables.NormalFor(key) is { } normal
            ? $" Shown as normal: {Wording.Show(normal, note.Pet.ShowUsUnits)}." : "";
    }

    private NoteFinding Speak(CourseContext at, NoteReading reading, OwnUsual usual, UsualRow row, bool above, Noted? again)
    {
        bool us = at.Note.Pet.ShowUsUnits;
        decimal distance = Math.Abs(reading.Value.Number - usual.Median);
        decimal line = above ? usual.High - usual.Median : usual.Median - usual.Low;
        FindingLevel level = again is not null ? row.Again!.Value : distance >= line * row.ClearAt ? row.Clear : row.Mild;
        string percent = reading.What != "temp" && usual.Median > 0 ? $"{Wording.Round(distance * 100 / usual.Median, 0)}% " : "";
        string repeated = again is null ? "" : $" The reading of {again.Day:yyyy-MM-dd} was as far out.";
        string recount = again is null && row.Again is not null
            ? " Count again in 4 to 6 hours, in deep sleep: two high counts are a reason to phone the clinic."
            : again is null && level >= FindingLevel.Watch ? " Take it again when the pet is calm." : "";
        string advice = Wording.Advice(level) is { Length: > 0 } words ? " " + words : "";
        return RuleContext.At(Name, level, reading.Line, reading.Span,
            $"{Wording.Describe(reading, us)}: {percent}{(above ? "above" : "below")} this pet's own usual of {Wording.Show(usual.Median, usual.Unit, us)} ({usual.Count} readings since {usual.Since:yyyy-MM-dd}).{repeated}{advice}{recount}{Normal(at.Note, reading)}",
            row.Source, again is null ? usual.Lines : usual.Lines.Append(again.Line));
    }
}
