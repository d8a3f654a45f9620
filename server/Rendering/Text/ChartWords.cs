using System.Globalization;
using HealthNotes.Analysis.Rules;
using HealthNotes.Grammar.Formatting;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Vocabulary;

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

    public static string PhoneAtCount(int count, bool above, decimal seconds) => $"phone at {count} or {(above ? "more" : "fewer")} in {seconds:0.#} s";

    public static string SoManyInARow(int counts) => $", {counts} in a row";

    public static string PhoneAt(string limit, bool above) => $"phone {(above ? "above" : "below")} {limit}";

    /// <summary>The amount of a dose and how often: <c>2 units twice a day</c>.</summary>
    public static string DoseInWords(MedicinePlan plan) =>
        string.Join(' ', new[] { AmountInWords(plan.Dose), plan.Manner.Any(manner => manner.Kind == StateKind.When) ? "when needed" : HowOften(plan.Schedule) }.Where(part => part.Length > 0));

    /// <summary>The amount of a dose: <c>2 units</c>; empty where none is written.</summary>
    public static string AmountInWords(NoteValue? dose) => dose is Measure measure ? Amounts(measure) : dose is { } other ? ValuePrinter.Print(other) : "";

    public const string EarlierCourses = "Medicines given earlier";

    /// <summary>The courses of a medicine by month: <c>Feb 2024, Jul to Aug 2025</c>.</summary>
    public static string Courses(string medicine, IEnumerable<(DateOnly From, DateOnly To)> courses) => $"{medicine} " + string.Join(", ", courses.Select(course =>
        (course.From.Year, course.From.Month) == (course.To.Year, course.To.Month) ? MonthAndYear(course.To) : $"{(course.From.Year == course.To.Year ? course.From.ToString("MMM", CultureInfo.InvariantCulture) : MonthAndYear(course.From))} to {MonthAndYear(course.To)}"));

    private static string MonthAndYear(DateOnly day) => day.ToString("MMM yyyy", CultureInfo.InvariantCulture);

    public static string ChartsLeftOut(int count) => count == 1 ? "One more chart could be drawn; its values are in the notes." : $"{count:N0} more charts could be drawn; their values are in the notes.";

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
}
