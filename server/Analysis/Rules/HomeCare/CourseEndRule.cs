using HealthNotes.Analysis.Findings;
using HealthNotes.Analysis.HomeCare;
using HealthNotes.Record;
using HealthNotes.Record.Courses;
using HealthNotes.Record.HomeCare;

namespace HealthNotes.Analysis.Rules;

/// <summary>A course of a medicine that ends in a few days, or ended with doses left: how many are left, when those given are written down.</summary>
public sealed class CourseEndRule : ICourseRule
{
    private const int DaysAfter = 7;

    /// <inheritdoc/>
    public RuleKind Kind { get; } = new("course-end", "course", 1);

    /// <inheritdoc/>
    public bool Wants(CourseKey key) => key == CourseKey.Note;

    /// <inheritdoc/>
    public IEnumerable<NoteFinding> Find(Course course, PetRecord at)
    {
        if (CareLimits.One(Kind.Name, at) is not { } limit)
        {
            yield break;
        }

        foreach (string medicine in at.Facts.PlansByMedicine.Select(same => same.Key))
        {
            foreach (MedicineOrder order in MedicineOrder.Of(medicine, at))
            {
                if (order is not { LastDay: { } end, FewestDosesADay: { } daily, Ended: null } || order.From == DateOnly.MinValue)
                {
                    continue;
                }

                int left = end.DayNumber - at.Facts.Today.DayNumber;
                int planned = (end.DayNumber - order.From.DayNumber + 1) * daily;
                int given = at.Of(new CourseKey("gave", medicine)).Lines.Count(order.Holds);
                bool ends = left >= 0 && left <= limit.Value;
                bool over = left < 0 && left >= -DaysAfter && given > 0 && given < planned;
                if (ends || over)
                {
                    string doses = given == 0 ? "" : given >= planned ? " All its doses are written as given." : $" {planned - given} of {planned} doses are not written as given yet.";
                    yield return this.At(limit.Level, order.Line, order.Plan.Medicine.Span,
                        $"The course of {order.Plan.Medicine.Text} {(over ? "ended" : "ends")} on {end:yyyy-MM-dd}.{doses}", "the plan in these notes");
                }
            }
        }
    }
}
