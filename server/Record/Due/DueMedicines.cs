using HealthNotes.Grammar.Items;
using HealthNotes.Record.Courses;
using HealthNotes.Record.HomeCare;

namespace HealthNotes.Record.Due;

/// <summary>What the plans of medicines say of days to come: the next dose of what is given less often than daily, and last days.</summary>
public static class DueMedicines
{
    private const string Source = "the notes themselves";
    private const decimal HoursADay = 24;

    /// <summary>Of every plan that holds today. Doses given daily or more often are no appointments, and are left out.</summary>
    public static IEnumerable<DueItem> In(PetRecord at)
    {
        DateOnly today = at.Facts.Today;
        foreach (MedicineOrder order in MedicineOrder.All(at).Where(order => order.From <= today && !(order.EndDay < today)))
        {
            string name = order.Plan.Medicine.Text;
            if (order is { Interval: > HoursADay, Plan.Schedule.Every: { } every } && order.From > DateOnly.MinValue)
            {
                Noted? given = at.Of(CourseKey.Doses("gave", name)).LastUpTo(today);
                DateOnly? next = given?.Day >= order.From ? Schedule.Add(given.Day, every) : order.From;
                if (!(next > order.EndDay))
                {
                    yield return new DueItem(DueKind.Medicine, name, next, order.Line, order.Plan.Head.Span, null, Source);
                }
            }

            if (order.EndDay is { } end)
            {
                yield return new DueItem(DueKind.CourseEnd, name, end, order.Line, order.Plan.Head.Span, null, Source);
            }
        }
    }
}
