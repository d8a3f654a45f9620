using System.Globalization;
using HealthNotes.Analysis.Rules;
using HealthNotes.Grammar.Formatting;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Rendering.Drawing.Charts;

namespace HealthNotes.Rendering.Text;

/// <content>The words of the charts.</content>
internal static partial class PageWords
{
    public const string OverTime = "Over time";
    public const string WaterChart = "Water drunk in a day";
    public const string LumpsTogether = "No clear change";
    public const string UsualByVet = "vet's range";
    public const string KeyHome = "at home";
    public const string KeyClinic = "at the clinic";
    public const string KeyCounting = "counting error";
    public const string KeyMeasuring = "measuring error";
    public const string KeyAbout = "about";
    public const string KeyBound = "only known to be below (arrow down) or above (arrow up)";
    public const string KeyNormal = "reference range";
    public const string KeyLimit = "clinic's limit";
    public const string EventVisit = "visit";
    public const string EventSurgery = "surgery";
    public const string EventVaccine = "vaccine";

    /// <summary>Percentages below this are noise beside what a pen and a scale do (common practice, no source).</summary>
    private const double LeastChange = 1;

    public static string UsualByReadings(int count) => $"usual ({count} readings)";

    public static string ChartTitle(string title, string unit) => $"{title}, {unit}";

    public static string LumpChart(int number, string kind, string place) => $"{kind} {number}{(place.Length == 0 ? "" : $", {place}")}";

    public static string LumpOfSeveral(int number, string kind, string place) => $"{number} {kind.ToLowerInvariant()}{(place.Length == 0 ? "" : $", {place}")}";

    /// <summary>What a chart of a vital is called.</summary>
    public static string ChartOf(string word, string detail) => (word, detail.Split(' ')) switch
    {
        ("rr", ["asleep", ..]) => "Breathing asleep",
        ("rr", _) => "Breathing awake, at rest",
        ("hr", _) => "Pulse",
        ("temp", [_, var place]) => $"Temperature, {place}",
        ("glucose", ["before-food", ..]) => "Glucose before food",
        ("glucose", ["after-food", ..]) => "Glucose after food",
        _ => Wording.NameOf(word),
    };

    public static string PhoneAtCount(int count, bool above, decimal seconds) => $"{count} or {(above ? "more" : "fewer")} in {seconds:0.#} s: phone";

    public static string PhoneAt(string limit, bool above) => $"{(above ? "above" : "below")} {limit}: phone";

    /// <summary>The amount of a dose and how often: <c>2 units twice a day</c>.</summary>
    public static string DoseInWords(MedicinePlan plan) =>
        string.Join(' ', new[] { AmountInWords(plan.Dose), plan.Manner.Any(manner => manner.Kind == StateKind.When) ? "when needed" : HowOften(plan.Schedule) }.Where(part => part.Length > 0));

    /// <summary>The amount of a dose: <c>2 units</c>; empty where none is written.</summary>
    public static string AmountInWords(NoteValue? dose) => dose is Measure measure ? Amounts(measure) : dose is { } other ? ValuePrinter.Print(other) : "";

    /// <summary>A medicine with every dose and its days.</summary>
    public static string MedicineInWords(MedicineBar medicine) =>
        $"{medicine.Name}: {string.Join("; ", medicine.Doses.Select(dose => $"{(dose.Words.Length == 0 ? "" : dose.Words + ", ")}{DayAndYear(dose.Began)} {(dose.To is { } to ? $"to {DayAndYear(to)}" : "on")}"))}";

    /// <summary>The last value; how it changed since the first and since the visit, where that is more than the error of measuring.</summary>
    /// <param name="marks">All values, in the order of time.</param>
    /// <param name="visit">The day of the last visit.</param>
    /// <param name="inPercent">False where percent of a value mean nothing: a temperature, a sugar.</param>
    /// <param name="today">The day it is read.</param>
    public static string ChartCaption(IReadOnlyList<Mark> marks, DateOnly? visit, bool inPercent, DateOnly today)
    {
        // the scales of home and clinic are never compared with each other
        Mark[] same = [.. marks.Where(mark => mark.IsValue && mark.AtClinic == marks[^1].AtClinic)];
        string last = $"{Short(marks[^1])} ({Wording.Day(marks[^1].Day, today)})";
        if (!inPercent || same.Length < 2 || same[^1] != marks[^1])
        {
            return last;
        }

        Mark? seen = visit is { } day && day < same[^1].Day ? same.LastOrDefault(mark => mark.Day <= day) : null;
        string[] changes =
        [
            Changed(same[0], same[^1]) is { } sinceFirst ? $"{sinceFirst} since {Wording.Day(same[0].Day, today)}" : "",
            seen is not null && seen != same[0] && Changed(seen, same[^1]) is { } sinceVisit ? seen.Day == visit ? $"{sinceVisit} since the visit ({Wording.Day(visit.Value, today)})" : $"{sinceVisit} since {Wording.Day(seen.Day, today)}, before the visit" : "",
        ];
        return $"{last}{(changes.All(change => change.Length == 0) ? "" : ": ")}{string.Join(", ", changes.Where(change => change.Length > 0))}";
    }

    /// <summary>What a chart adds to the values that are told elsewhere, for those who do not see it: how many readings, since when, and between which values.</summary>
    public static string ChartInWords(IReadOnlyList<Mark> marks, string unit)
    {
        Mark[] values = [.. marks.Where(mark => mark.IsValue).OrderBy(mark => mark.Value)];
        string between = values.Length == 0 ? "" : Short(values[0]) == Short(values[^1]) ? $", all {Short(values[0])} {unit}" : $", {Short(values[0])} to {Short(values[^1])} {unit}";
        int bounds = marks.Count - values.Length;
        string open = bounds == 0 ? "" : bounds == 1 ? ", one of them only below or above a value" : $", {bounds:N0} of them only below or above a value";
        return $"{Count(marks.Count, "reading")} since {DayAndYear(marks[0].Day)}{between}{open}.";
    }

    public static string ChartSpan(ChartSet set) =>
        $"All charts share one time axis, {DayAndYear(DateOnly.FromDateTime(set.From))} to {DayAndYear(DateOnly.FromDateTime(set.To.AddDays(set.To.TimeOfDay == TimeSpan.Zero ? -1 : 0)))}{(set.Earlier ? "; earlier readings are in the notes" : "")}. Values far apart in time are not joined.{(set.Charts.Any(chart => chart.Thinned) ? " Of long series each stretch shows its lowest, highest and last value." : "")}";

    public static string AlsoGiven(IEnumerable<string> medicines) => $"Earlier plans: {string.Join("; ", medicines)}.";

    public static string ChartsLeftOut(int count) => count == 1 ? "One more chart could be drawn; its values are in the notes." : $"{count:N0} more charts could be drawn; their values are in the notes.";

    private static string? Changed(Mark before, Mark after)
    {
        double percent = before.Value == 0 ? 0 : (after.Value - before.Value) * 100 / before.Value;
        return Math.Abs(percent) < LeastChange || after.MayEqual(before) ? null : $"{(percent < 0 ? '\u2212' : '+')}{Math.Abs(percent).ToString("0", CultureInfo.InvariantCulture)}\u00A0%";
    }

    private static string Amounts(Measure measure) => string.Join(' ', measure.Amounts.Select(amount =>
        $"{amount.Number:0.####}{(amount.Over == 1 ? "" : $"/{amount.Over:0.####}")} {amount.Unit.Word}{(amount.Unit.Quantity == Quantity.Dose && amount.Value > 1 && !amount.Unit.Word.EndsWith('s') ? "s" : "")}"));

    private static string HowOften(Schedule schedule)
    {
        if (schedule.Every is not { } every)
        {
            return "";
        }

        decimal hours = every.Value * every.Unit.Factor / 3_600m;
        return schedule.EveryTo is { } most ? $"every {every.Value:0.##} to {most.Value:0.##} {most.Unit.Word}"
            : hours switch { 24 => "once a day", 12 => "twice a day", 8 => "3 times a day", 6 => "4 times a day", < 24 => $"every {hours:0.##} h", _ when hours % 24 == 0 => $"every {hours / 24:0.##} days", _ => $"every {every.Value:0.##} {every.Unit.Word}" };
    }

    private static string Short(Mark mark)
    {
        string number = Math.Round(mark.Value, mark.Value >= 20 ? 1 : 2).ToString("0.##", CultureInfo.InvariantCulture);
        return mark.Kind switch { MarkKind.About => $"about {number}", MarkKind.Below => $"below {number}", MarkKind.Above => $"above {number}", _ => number };
    }
}
