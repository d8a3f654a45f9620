using HealthNotes.Analysis.Findings;
using HealthNotes.Analysis.HomeCare;
using HealthNotes.Grammar.Formatting;
using HealthNotes.Grammar.Items;
using HealthNotes.Record;
using HealthNotes.Record.Courses;
using HealthNotes.Record.HomeCare;
using HealthNotes.Record.Pet;

namespace HealthNotes.Analysis.Rules;

/// <summary>An amount given that is not the plan's, where both are written in units of one kind: twice as much and more is graver than a little.</summary>
public sealed class DoseAmountRule : ICourseRule
{
    private const int DaysOfARun = 7;

    /// <inheritdoc/>
    public RuleKind Kind { get; } = new("dose-amount", "dose", 4);

    /// <inheritdoc/>
    public bool Wants(CourseKey key) => key.Word == "gave";

    /// <inheritdoc/>
    public IEnumerable<NoteFinding> Find(Course course, PetRecord at)
    {
        if (CareLimits.One(Kind.Name, at) is not { } limit || CareLimits.One("dose-doubled", at) is not { } close || CareLimits.One(Kind.Name + "-per-kg", at) is not { } rounding)
        {
            yield break;
        }

        CareLimit[] grave = [.. CareLimits.For("dose-more", at, at.Facts.Today), .. PetProfile.IsInsulin(course.Key.Detail) ? CareLimits.For("dose-more-insulin", at, at.Facts.Today) : []];
        var other = new List<Noted>();
        var of = new Dictionary<Noted, (MedicineOrder Order, CareLimit Limit)>(ReferenceEqualityComparer.Instance);
        foreach (DoseCluster cluster in DoseSeries.Clusters(course, MedicineOrder.Of(course.Key.Detail, at), close.Value))
        {
            decimal tolerance = cluster.Order.IsPerKilogram ? rounding.Value : limit.Value;
            if (cluster.Order.AmountOn(cluster.Doses[^1].Day, at) is not { Amount: > 0 } planned || cluster.MakesUpOne(tolerance, at))
            {
                continue;
            }

            foreach (Noted dose in cluster.Doses)
            {
                if (DoseCluster.AmountOf(dose) is { } given && given.Unit == planned.Unit && !DoseCluster.IsNear(given.Amount, planned.Amount, tolerance))
                {
                    other.Add(dose);
                    of.Add(dose, (cluster.Order, grave.Where(more => given.Amount * (100 + tolerance) >= planned.Amount * more.Value * 100).MaxBy(more => more.Level) ?? limit));
                }
            }
        }

        // each grave dose is reported by itself, the rest once for a run
        foreach (List<Noted> run in Runs.Of(other.Where(dose => of[dose].Limit == limit), DaysOfARun).Concat(other.Where(dose => of[dose].Limit != limit).Select(dose => new List<Noted> { dose })))
        {
            Noted last = run[^1];
            var dose = (DoseEvent)last.Item!;
            (MedicineOrder order, CareLimit crossed) = of[last];
            string again = run.Count > 1 ? $" ({run.Count} times since {run[0].Day:yyyy-MM-dd})" : "";
            string times = crossed == limit ? "" : $", {Wording.Round(DoseCluster.AmountOf(last)!.Value.Amount / order.AmountOn(last.Day, at)!.Value.Amount, 1)} times as much";
            string slip = crossed == limit ? " If the plan was changed, write the new `med` line." : " If the line or the plan has a slip, correct it.";
            yield return this.At(crossed.Level, last.Line, dose.Dose!.Span,
                $"{dose.Medicine.Text}: {ValuePrinter.Print(dose.Dose)} given{again}; the plan says {ValuePrinter.Print(order.Plan.Dose!)}{times}.{slip}",
                crossed.Source, Runs.Evidence(run).Append(order.Line));
        }
    }
}
