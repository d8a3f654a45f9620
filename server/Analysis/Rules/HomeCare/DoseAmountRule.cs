using HealthNotes.Analysis.Courses;
using HealthNotes.Analysis.Findings;
using HealthNotes.Analysis.HomeCare;
using HealthNotes.Grammar.Formatting;
using HealthNotes.Grammar.Notes;

namespace HealthNotes.Analysis.Rules;

/// <summary>An amount given that is not the plan's, where both are written in units of one kind.</summary>
public sealed class DoseAmountRule : ICourseRule
{
    private const int DaysOfARun = 7;

    /// <inheritdoc/>
    public string Name => "dose-amount";

    /// <inheritdoc/>
    public string Topic => "dose";

    /// <inheritdoc/>
    public bool Wants(CourseKey key) => key.Word == "gave";

    /// <inheritdoc/>
    public IEnumerable<NoteFinding> Find(Course course, CourseContext at)
    {
        if (CareLimits.One(Name, at) is not { } limit || CareLimits.One("dose-doubled", at) is not { } close)
        {
            yield break;
        }

        var other = new List<Noted>();
        var orders = new Dictionary<Noted, MedicineOrder>(ReferenceEqualityComparer.Instance);
        foreach (DoseCluster cluster in DoseSeries.Clusters(course, MedicineOrder.Of(course.Key.Detail, at), close.Value))
        {
            if (MedicineOrder.AmountOf(cluster.Order.Plan.Dose) is not { } planned || cluster.MakesUpOne(limit.Value))
            {
                continue;
            }

            foreach (Noted dose in cluster.Doses)
            {
                if (DoseCluster.AmountOf(dose) is { } given && given.Unit == planned.Unit && !DoseCluster.IsNear(given.Amount, planned.Amount, limit.Value))
                {
                    other.Add(dose);
                    orders.Add(dose, cluster.Order);
                }
            }
        }

        foreach (List<Noted> run in Runs.Of(other, DaysOfARun))
        {
            Noted last = run[^1];
            var dose = (DoseEvent)last.Item!;
            string again = run.Count > 1 ? $" ({run.Count} times since {run[0].Day:yyyy-MM-dd})" : "";
            yield return RuleContext.At(Name, limit.Level, last.Line, dose.Dose!.Span,
                $"{dose.Medicine.Text}: {ValuePrinter.Print(dose.Dose)} given{again}; the plan says {ValuePrinter.Print(orders[last].Plan.Dose!)}. If the plan was changed, write the new `med` line. {Wording.Advice(limit.Level)}",
                limit.Source, Runs.Evidence(run).Append(orders[last].Line));
        }
    }
}
