using HealthNotes.Grammar.Notes;
using HealthNotes.Record.Courses;
using HealthNotes.Record.HomeCare;
using HealthNotes.Rendering.Model;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Drawing.Days;

/// <summary>Home care of the current period, a row a day.</summary>
internal static class DayGridBuilder
{
    private const int MostDays = 31;
    private const int LeastDays = 2;
    private static readonly string[] LinesWithWords = ["pee", "stool", "vomit"];
    private static readonly string[] DoseWords = ["gave", "missed"];

    /// <summary>The grid; null when fewer than two days tell of home care.</summary>
    public static DayGrid? Build(PageContext context)
    {
        CareDay[] all = [.. CareDay.Of(context.Analysis.Record).Where(day => !(day.Day < context.Period.From))];
        if (all.Length < LeastDays)
        {
            return null;
        }

        CareDay[] shown = all[Math.Max(0, all.Length - MostDays)..];
        MedicineOrder[] orders = [.. MedicineOrder.All(context.Analysis.Record)];
        ILookup<(string Word, DateOnly Day), Noted> lines = LinesWithWords.Concat(DoseWords).SelectMany(word => context.Analysis.Record.All(word)).SelectMany(course => course.Lines)
            .ToLookup(line => (line.Item!.Word.Word, line.Day));
        var rows = new List<DayRow>();
        DateOnly? before = null;
        foreach (CareDay day in shown)
        {
            if (before is { } last && day.Day.DayNumber - last.DayNumber > 1)
            {
                rows.Add(Gap(last.Plus(1), day.Day.Plus(-1)));
            }

            rows.Add(Row(context, day, orders, lines));
            before = day.Day;
        }

        return new DayGrid(rows, all.Length - shown.Length);
    }

    private static DayRow Gap(DateOnly from, DateOnly to) => new(PageWords.DaysWithoutNote(from, to), "", "", "", "", "", "", "", "");

    private static DayRow Row(PageContext context, CareDay day, MedicineOrder[] orders, ILookup<(string Word, DateOnly Day), Noted> lines) => new(
        PageWords.Iso(day.Day),
        PageWords.Doses(day.Given, day.Missed, NotNoted(day, orders, lines, context.Analysis.Today)),
        day.Eaten is { } eaten ? PageWords.MealsEaten(eaten) : "",
        day.WaterMl is { } water ? PageWords.WaterOfDay(context.Units.Show(water, "mL"), day.WaterPerKg) : "",
        Told(day.Pee, lines[("pee", day.Day)]),
        Told(day.Stools, lines[("stool", day.Day)]),
        Told(day.Vomit, lines[("vomit", day.Day)]),
        PageWords.OtherEvents(day.Cough, day.Sneeze, day.Seizures),
        day.GlucoseLow is { } low && day.GlucoseHigh is { } high ? (low == high ? context.Units.Show(low, "mmol/L") : context.Units.Show(low, high, "mmol/L")) : "");

    /// <summary>How often, and in which words: a day on which none came says so.</summary>
    private static string Told(int times, IEnumerable<Noted> lines) => PageWords.WithWords(
        times > 0 ? PageWords.TimesShort(times) : lines.Any(line => line.Item is NotSeen) ? PageWords.NoneSeen : "",
        lines.Select(line => line.Item).OfType<CareEvent>().SelectMany(care => care.Words).Select(word => word.Word.Word.Replace('-', ' ')).Distinct());

    /// <summary>
    /// Doses that the plans hold for and no line tells of, medicine by medicine. Today is not over, and a plan's first day tells
    /// nothing: it may have begun in the evening.
    /// </summary>
    private static int NotNoted(CareDay day, MedicineOrder[] orders, ILookup<(string Word, DateOnly Day), Noted> lines, DateOnly today) => day.Day >= today ? 0
        : orders.Where(order => order.From < day.Day && !(order.EndDay < day.Day) && order.FewestDosesADay is not null)
            .GroupBy(order => order.Medicine)
            .Sum(medicine => Math.Max(0, medicine.Max(order => order.FewestDosesADay!.Value) - DoseWords.Sum(word => lines[(word, day.Day)].Count(line => IsOf(line, medicine.Key)))));

    private static bool IsOf(Noted line, string medicine) => line.Item is DoseEvent dose && CourseKey.MedicineName(dose.Medicine.Text) == medicine;
}
