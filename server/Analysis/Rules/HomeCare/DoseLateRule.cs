using System.Collections.Immutable;
using HealthNotes.Analysis.Findings;
using HealthNotes.Analysis.HomeCare;
using HealthNotes.Grammar.Items;
using HealthNotes.Record;
using HealthNotes.Record.Courses;
using HealthNotes.Record.HomeCare;

namespace HealthNotes.Analysis.Rules;

/// <summary>A dose that was given late by the times that are written: something to know, said once a week at most.</summary>
public sealed class DoseLateRule : ICourseRule
{
    private const int DaysOfARun = 7;
    private const decimal AlmostTwo = 1.9m;

    /// <inheritdoc/>
    public RuleKind Kind { get; } = new("dose-late", "dose", 8);

    /// <inheritdoc/>
    public bool Wants(CourseKey key) => key.Word == "gave";

    /// <inheritdoc/>
    public IEnumerable<NoteFinding> Find(Course course, PetRecord at)
    {
        if (CareLimits.One(Kind.Name, at) is not { } limit)
        {
            yield break;
        }

        ImmutableArray<MedicineOrder> orders = MedicineOrder.Of(course.Key.Detail, at);
        var late = new List<Noted>();
        decimal hours = 0;
        for (int index = Math.Max(1, course.Lines.Length - course.Recent.Length); index < course.Lines.Length; index++)
        {
            Noted dose = course.Lines[index];
            if (orders.LastOrDefault(order => order.Holds(dose)) is { LongestInterval: { } interval, FewestDosesADay: not null } order && order.Holds(course.Lines[index - 1])
                && DoseSeries.HoursBetween(course.Lines[index - 1], dose) is { } between && between > interval * limit.Value && between < interval * AlmostTwo)
            {
                late.Add(dose);
                hours = between;
            }
        }

        foreach (List<Noted> run in Runs.Of(late, DaysOfARun))
        {
            Noted last = run[^1];
            string again = run.Count > 1 ? $" {run.Count} times since {run[0].Day:yyyy-MM-dd}" : "";
            string length = run.Count == 1 && last == late[^1] ? $", {Wording.Round(hours, 1)} hours after the one before" : "";
            yield return this.At(limit.Level, last.Line, ((DoseEvent)last.Item!).Medicine.Span,
                $"{course.Key.Detail}: given late{again}{length}, by the times that are written.", limit.Source, Runs.Evidence(run));
        }
    }
}
