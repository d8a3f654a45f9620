using System.Collections.Immutable;
using HealthNotes.Record;
using HealthNotes.Record.HomeCare;

namespace HealthNotes.Analysis.Changes;

/// <summary>A medicine's plan that began, was replaced by another, or ended after a day.</summary>
/// <param name="On">The day.</param>
/// <param name="Begun">The plan that began; null when one ended.</param>
/// <param name="Ended">The plan that ended; null when there was none before.</param>
public sealed record MedicineChange(DateOnly On, MedicineOrder? Begun, MedicineOrder? Ended)
{
    /// <summary>All since a day, up to today, by day.</summary>
    internal static ImmutableArray<MedicineChange> Since(PetRecord record, DateOnly day) =>
        [.. MedicineOrder.All(record).GroupBy(order => order.Medicine)
            .SelectMany(medicine => Of([.. medicine.OrderBy(order => order.From)], day, record.Today))
            .OrderBy(change => change.On).ThenBy(change => (change.Begun ?? change.Ended)!.Line)];

    private static IEnumerable<MedicineChange> Of(MedicineOrder[] orders, DateOnly day, DateOnly today)
    {
        for (int index = 0; index < orders.Length; index++)
        {
            MedicineOrder order = orders[index];
            MedicineOrder? before = index > 0 && IsJustBefore(orders[index - 1], order) ? orders[index - 1] : null;
            if (order.From > day && order.From <= today)
            {
                yield return new MedicineChange(order.From, order, before);
            }

            bool replaced = index + 1 < orders.Length && IsJustBefore(order, orders[index + 1]);
            if (!replaced && order.EndDay is { } end && end >= day && end < today && order.From <= end)
            {
                yield return new MedicineChange(end, null, order);
            }
        }
    }

    private static bool IsJustBefore(MedicineOrder order, MedicineOrder next) => order.EndDay is { } end && end.DayNumber + 1 >= next.From.DayNumber;
}
