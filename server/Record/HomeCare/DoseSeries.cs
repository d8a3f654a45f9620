using System.Collections.Immutable;
using HealthNotes.Grammar.Items;
using HealthNotes.Record.Courses;

namespace HealthNotes.Record.HomeCare;

/// <summary>Doses written so close together that they count as one: both halves of a tablet, or the same dose given twice.</summary>
/// <param name="Doses">The lines, in the order of time.</param>
/// <param name="Order">The plan that held.</param>
public sealed record DoseCluster(ImmutableArray<Noted> Doses, MedicineOrder Order)
{
    private const decimal Percent = 100;

    /// <summary>True when the amounts are written in the plan's unit and come to the plan's amount together.</summary>
    public bool MakesUpOne(decimal tolerancePercent, PetRecord at) =>
        Order.AmountOn(Doses[^1].Day, at) is { } planned && Doses.All(dose => AmountOf(dose)?.Unit == planned.Unit)
        && IsNear(Doses.Sum(dose => AmountOf(dose)!.Value.Amount), planned.Amount, tolerancePercent);

    /// <summary>The amount of one line; null when none is written.</summary>
    public static (decimal Amount, string Unit)? AmountOf(Noted dose) => MedicineOrder.AmountOf(((DoseEvent)dose.Item!).Dose);

    /// <summary>True when two amounts differ by no more than so many percent.</summary>
    public static bool IsNear(decimal given, decimal planned, decimal tolerancePercent) =>
        Math.Abs(given - planned) * Percent <= tolerancePercent * planned;
}

/// <summary>Puts the doses of one medicine together with its plan.</summary>
public static class DoseSeries
{
    /// <summary>The doses that a plan held for, those closer together than <paramref name="part"/> of its interval as one.</summary>
    public static List<DoseCluster> Clusters(Course given, ImmutableArray<MedicineOrder> orders, decimal part)
    {
        var clusters = new List<DoseCluster>();
        foreach (Noted dose in given.Recent)
        {
            if (orders.LastOrDefault(order => order.Holds(dose)) is not { } order)
            {
                continue;
            }

            if (clusters.Count > 0 && clusters[^1] is var last && last.Order == order && AreClose(last.Doses[0], dose, order, part))
            {
                clusters[^1] = last with { Doses = last.Doses.Add(dose) };
            }
            else
            {
                clusters.Add(new DoseCluster([dose], order));
            }
        }

        return clusters;
    }

    /// <summary>Hours between two lines; null where a time is missing.</summary>
    public static decimal? HoursBetween(Noted first, Noted second) =>
        first.Time is null || second.Time is null ? null : (decimal)(second.Moment - first.Moment).TotalHours;

    /// <summary>Without times only a medicine given once a day or less often can tell that two doses are close.</summary>
    private static bool AreClose(Noted first, Noted second, MedicineOrder order, decimal part)
    {
        if (order.Interval is not { } interval)
        {
            return false;
        }

        decimal? hours = HoursBetween(first, second) ?? (interval >= 24 ? (second.Day.DayNumber - first.Day.DayNumber) * 24 : null);
        return hours < interval * part;
    }
}
