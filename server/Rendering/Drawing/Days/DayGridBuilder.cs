using HealthNotes.Analysis.Courses;
using HealthNotes.Analysis.HomeCare;
using HealthNotes.Grammar.Notes;
using HealthNotes.Rendering.Model;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Drawing.Days;

/// <summary>Home care of the current period, a row a day.</summary>
internal static class DayGridBuilder
{
    private const int MostDays = 31;
    private const int LeastDays = 2;

    /// <summary>The grid; null when fewer than two days tell of home care.</summary>
    public static DayGrid? Build(PageContext context)
    {
        CareDay[] all = [.. CareDay.Of(context.Analysis).Where(day => !(day.Day < context.Period.From))];
        if (all.Length < LeastDays)
        {
            return null;
        }

        CareDay[] shown = all[Math.Max(0, all.Length - MostDays)..];
        MedicineOrder[] orders = [.. context.Analysis.Orders];
        ILookup<DateOnly, Noted> stools = context.Analysis.CoursesOf("stool").SelectMany(course => course.Lines).ToLookup(line => line.Day);
        var rows = new List<DayRow>();
        DateOnly? before = null;
        foreach (CareDay day in shown)
        {
            if (before is { } last && day.Day.DayNumber - last.DayNumber > 1)
            {
                rows.Add(Gap(last.AddDays(1), day.Day.AddDays(-1)));
            }

            rows.Add(Row(context, day, orders, stools[day.Day]));
            before = day.Day;
        }

        return new DayGrid(rows, all.Length - shown.Length);
    }

    private static DayRow Gap(DateOnly from, DateOnly to) => new(PageWords.DaysWithoutNote(from, to), "", "", "", "", "", "", "", "");

    private static DayRow Row(PageContext context, CareDay day, MedicineOrder[] orders, IEnumerable<Noted> stools) => new(
        PageWords.Iso(day.Day),
        PageWords.Doses(day.Given, day.Missed, NotNoted(day, orders, context.Analysis.Today)),
        day.Eaten is { } eaten ? PageWords.MealsEaten(eaten) : "",
        day.WaterMl is { } water ? PageWords.WaterOfDay(context.Units.Show(water, "mL"), day.WaterPerKg) : "",
        Count(day.Pee),
        day.Stools == 0 ? "" : PageWords.WithWords(Count(day.Stools), stools.Select(line => line.Item).OfType<CareEvent>().SelectMany(care => care.Words).Select(word => word.Word.Word.Replace('-', ' ')).Distinct()),
        Count(day.Vomit),
        PageWords.OtherEvents(day.Cough, day.Sneeze, day.Seizures),
        day.GlucoseLow is { } low && day.GlucoseHigh is { } high ? (low == high ? context.Units.Show(low, "mmol/L") : context.Units.Show(low, high, "mmol/L")) : "");

    /// <summary>Doses that the plans hold for and no line tells of; today is not over, and a day before the plan's first tells nothing.</summary>
    private static int NotNoted(CareDay day, MedicineOrder[] orders, DateOnly today)
    {
        int planned = orders.Where(order => order.From < day.Day && !(order.EndDay <= day.Day)).Sum(order => order.DosesADay ?? 0);
        return day.Day >= today || day.Given + day.Missed == 0 ? 0 : Math.Max(0, planned - day.Given - day.Missed);
    }

    private static string Count(int times) => times == 0 ? "" : PageWords.TimesShort(times);
}
