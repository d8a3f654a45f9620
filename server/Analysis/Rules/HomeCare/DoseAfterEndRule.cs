using System.Collections.Immutable;
using HealthNotes.Analysis.Findings;
using HealthNotes.Analysis.HomeCare;
using HealthNotes.Grammar.Items;
using HealthNotes.Record;
using HealthNotes.Record.Courses;
using HealthNotes.Record.HomeCare;

namespace HealthNotes.Analysis.Rules;

/// <summary>A medicine given after the last day of its plan, or after it was stopped.</summary>
public sealed class DoseAfterEndRule : ICourseRule
{
    private const int DaysOfARun = 7;

    /// <inheritdoc/>
    public RuleKind Kind { get; } = new("dose-after-end", "dose", 3);

    /// <inheritdoc/>
    public bool Wants(CourseKey key) => key.Word == "gave";

    /// <inheritdoc/>
    public IEnumerable<NoteFinding> Find(Course course, PetRecord at)
    {
        ImmutableArray<MedicineOrder> orders = MedicineOrder.Of(course.Key.Detail, at);
        if (orders.Length == 0)
        {
            yield break;
        }

        foreach (List<Noted> run in Runs.Of(course.Recent.ToArray().Where(dose => IsOver(dose, orders)), DaysOfARun))
        {
            Noted last = run[^1];
            MedicineOrder order = orders.Last(one => one.From <= last.Day);
            string end = order.Ended is { } stopped && !(DateOnly.FromDateTime(stopped) > order.LastDay)
                ? $"was stopped on {stopped:yyyy-MM-dd}"
                : $"ended on {order.LastDay:yyyy-MM-dd}";
            string again = run.Count > 1 ? $", {run.Count} times since {run[0].Day:yyyy-MM-dd}" : "";
            yield return this.At(FindingLevel.Watch, last.Line, ((DoseEvent)last.Item!).Medicine.Span,
                $"{course.Key.Detail}: given{again} after its plan {end}. If it goes on, write the new `med` line.",
                "the plan in these notes", Runs.Evidence(run).Append(order.Line));
        }
    }

    private static bool IsOver(Noted dose, ImmutableArray<MedicineOrder> orders) =>
        !orders.Any(order => order.Holds(dose)) && orders.Any(order => order.From <= dose.Day);
}
