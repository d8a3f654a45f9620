using HealthNotes.Analysis.Findings;
using HealthNotes.Analysis.Trends;
using HealthNotes.Record;
using HealthNotes.Record.Courses;
using HealthNotes.Record.Pet;
using HealthNotes.Record.Readings;

namespace HealthNotes.Analysis.Rules;

/// <summary>A change in one direction over months, reported at the last reading; where that is out of range as well, the stronger of the two speaks. One instance a vital, and one for water.</summary>
public sealed class TrendRule : ICourseRule
{
    private readonly TrendRow row;

    private TrendRule(TrendRow row) => this.row = row;

    /// <inheritdoc/>
    public RuleKind Kind => new(row.What + "-trend", row.What == "weight" ? "weight" : "reading", 6);

    /// <summary>The rule for each row of the table.</summary>
    public static IEnumerable<IRule> ForEach() => TrendRow.All.Where(row => row.Conditions.IsEmpty).Select(row => new TrendRule(row));

    /// <inheritdoc/>
    public bool Wants(CourseKey key) => key.Word == row.What;

    /// <inheritdoc/>
    public IEnumerable<NoteFinding> Find(Course course, PetRecord at)
    {
        Course compared = SameVital.Of(course, at.All);
        if (course.Last is not { } last || !ReferenceEquals(compared.Last, last)
            || (ForConditions(compared, at).FirstOrDefault(trend => trend.IsClear) ?? TrendOf(compared, at)) is not { IsClear: true } trend)
        {
            yield break;
        }

        NoteReading reading = trend.Last;
        FindingLevel level = trend.Rises ? trend.Row.Up : trend.Row.Down;
        bool us = at.Facts.Pet.ShowUsUnits;
        yield return this.At(level, reading.Line, reading.Span,
            $"{TrendWording.Name(reading)} has been {(trend.Rises ? "rising" : "falling")} since {trend.Since:yyyy-MM-dd}: about {TrendWording.Rate(trend, us)}, {trend.Count} days with readings, {TrendWording.FromTo(trend, us)}.",
            trend.Row.Source, trend.Lines);
    }

    /// <summary>The trends by the rows for a condition that the note names.</summary>
    private IEnumerable<Trend> ForConditions(Course course, PetRecord at) =>
        from raised in TrendRow.All
        where raised.What == row.What && at.Facts.Conditions.Saying(raised.Conditions).Any()
        let trend = Trend.Of(raised, DayValue.Of(course, at.Facts.Today, raised.Days, raised.Last, raised.AtVisits), at.Facts.Pet.GrownOn(raised.GrownMonths))
        where trend is not null
        select trend;

    private Trend? TrendOf(Course course, PetRecord at) => row.What switch
    {
        "water" => Trend.Of(row, WaterPerDay.Of(course, at.Facts.Today, at.WeightOn, row), at.Facts.Pet.GrownOn(row.GrownMonths)),
        "weight" => Trend.Of(course, at.Facts.Today, WeightLimits.Default.GrownOn(at.Facts.Pet)),
        _ => Trend.Of(course, at.Facts.Today, at.Facts.Pet.GrownOn(row.GrownMonths)),
    };
}
