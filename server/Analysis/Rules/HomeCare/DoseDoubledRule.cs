using HealthNotes.Analysis.Findings;
using HealthNotes.Analysis.HomeCare;
using HealthNotes.Grammar.Items;
using HealthNotes.Record;
using HealthNotes.Record.Courses;
using HealthNotes.Record.HomeCare;

namespace HealthNotes.Analysis.Rules;

/// <summary>Two doses closer together than half of what the plan says, or more in a day than it says: often two people who each gave it.</summary>
public sealed class DoseDoubledRule : ICourseRule
{
    /// <inheritdoc/>
    public RuleKind Kind { get; } = new("dose-doubled", "dose", 2);

    /// <inheritdoc/>
    public bool Wants(CourseKey key) => key.Word == "gave";

    /// <inheritdoc/>
    public IEnumerable<NoteFinding> Find(Course course, PetRecord at)
    {
        if (CareLimits.One(Kind.Name, at) is not { } limit || CareLimits.One("dose-amount", at) is not { } amount)
        {
            yield break;
        }

        foreach (DoseCluster cluster in DoseSeries.Clusters(course, MedicineOrder.Of(course.Key.Detail, at), limit.Value))
        {
            if (cluster.Doses.Length > Together(cluster) && !cluster.MakesUpOne(amount.Value, at))
            {
                Noted last = cluster.Doses[^1];
                string times = cluster.Doses.All(dose => dose.Time is not null) ? ", at " + string.Join(" and ", cluster.Doses.Select(dose => $"{dose.Time:HH:mm}")) : "";
                string prescribed = cluster.Order.Interval is { } hours and not 24 ? $"every {Wording.Round(hours, 1)} h" : "once a day";
                yield return this.At(limit.Level, last.Line, ((DoseEvent)last.Item!).Medicine.Span,
                    $"{course.Key.Detail}: given {(cluster.Doses.Length == 2 ? "twice" : $"{cluster.Doses.Length} times")} on {Wording.Day(last.Day, at.Facts.Today)}{times}; prescribed {prescribed}. If it was written twice, remove one line.",
                    limit.Source, cluster.Doses.Select(dose => dose.Line).Append(cluster.Order.Line));
            }
        }

        foreach (NoteFinding finding in InADay(course, at, limit))
        {
            yield return finding;
        }
    }

    /// <summary>Eyes and ears come in pairs: a line for each is not a dose given twice.</summary>
    private static int Together(DoseCluster cluster) =>
        cluster.Doses.All(dose => ((DoseEvent)dose.Item!).Dose is Measure { Amounts: [{ Unit.Word: "drop" }] } || ((DoseEvent)dose.Item!).Manner.Any(manner => manner.IsPair))
        || cluster.Order.Plan.Manner.Any(manner => manner.IsPair)
            ? 2
            : 1;

    /// <summary>Where no times are written: more doses in a day than the plan has.</summary>
    private IEnumerable<NoteFinding> InADay(Course course, PetRecord at, CareLimit limit)
    {
        var orders = MedicineOrder.Of(course.Key.Detail, at);
        foreach (IGrouping<DateOnly, Noted> day in course.Recent.ToArray().Where(dose => dose.Time is null).GroupBy(dose => dose.Day))
        {
            Noted last = day.Last();
            if (orders.LastOrDefault(order => order.Holds(last)) is { DosesADay: > 1 and var planned } order && day.Count() > planned)
            {
                yield return this.At(limit.Level, last.Line, ((DoseEvent)last.Item!).Medicine.Span,
                    $"{course.Key.Detail}: given {day.Count()} times on {Wording.Day(last.Day, at.Facts.Today)}; prescribed {planned} times a day. If it was written twice, remove one line.",
                    limit.Source, day.Select(dose => dose.Line).Append(order.Line));
            }
        }
    }
}
