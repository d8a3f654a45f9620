using HealthNotes.Analysis.Findings;
using HealthNotes.Analysis.HomeCare;
using HealthNotes.Grammar.Items;
using HealthNotes.Record;
using HealthNotes.Record.Courses;
using HealthNotes.Record.HomeCare;
using HealthNotes.Record.Readings;

namespace HealthNotes.Analysis.Rules;

/// <summary>The dose for each kilogram is no longer what it was when the plan began, since the weight has changed. A fact that is shown, never judged.</summary>
public sealed class DoseDriftRule : ICourseRule
{
    private const decimal Percent = 100;

    /// <inheritdoc/>
    public RuleKind Kind { get; } = new("dose-drift", "dose", 9);

    /// <inheritdoc/>
    public bool Wants(CourseKey key) => key == CourseKey.Weight;

    /// <inheritdoc/>
    public IEnumerable<NoteFinding> Find(Course course, PetRecord at)
    {
        if (CareLimits.One(Kind.Name, at) is not { } limit || course.Lines.LastOrDefault(IsPoint) is not { } last)
        {
            yield break;
        }

        foreach (string medicine in at.Facts.PlansByMedicine.Select(same => same.Key))
        {
            if (MedicineOrder.Of(medicine, at).LastOrDefault(order => order.Holds(last)) is not { } order || order.From == DateOnly.MinValue
                || at.WeightOn(order.From) is not { } before
                || DosePerWeight.MilligramsPerKilogram(order.Plan.Dose, before.Value.Number) is not { } then
                || DosePerWeight.MilligramsPerKilogram(order.Plan.Dose, last.Reading!.Value.Number) is not { } now || then == 0)
            {
                continue;
            }

            decimal change = (now - then) / then * Percent;
            if (Math.Abs(change) >= limit.Value)
            {
                yield return this.At(limit.Level, last.Line, last.Reading.Span,
                    $"{order.Plan.Medicine.Text}: {Wording.Round(now, 2)} mg for each kilogram at this weight; {Wording.Round(then, 2)} when the plan began ({before.Day:yyyy-MM-dd}). For the vet to know.",
                    "worked out from these notes", before.Line, order.Line);
            }
        }
    }

    private static bool IsPoint(Noted noted) => noted.Reading is { Value.Bound: Bound.Exact or Bound.About };
}
