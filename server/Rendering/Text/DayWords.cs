using System.Globalization;
using HealthNotes.Grammar.Formatting;
using HealthNotes.Grammar.Items;

namespace HealthNotes.Rendering.Text;

/// <content>The words of the days of home care.</content>
internal static partial class PageWords
{
    public const string DaysOfCare = "Home care, day by day";
    public const string DaysCaption = "As logged each day; other lines of these days are in the appendix.";
    public const string NotLoggedMeans = " Not logged: a planned dose without an entry; it may have been given.";
    public const string NotLogged = "not logged";
    public const string NoneWritten = "\u2013";
    public const string NotPlanned = "not planned";
    public const string WrittenColumn = "Logged";
    public const string ProblemColumn = "Problem or check";
    public const string CheckDay = "check";
    public const string CoughColumn = "Cough";
    public const string SneezeColumn = "Sneeze";
    public const string SeizureColumn = "Seizure";
    public const string MealsColumn = "Meals";
    public const string WaterColumn = "Water";
    public const string UrineColumn = "Urine";
    public const string StoolColumn = "Stool";
    public const string VomitColumn = "Vomit";
    public const string GlucoseColumn = "Glucose";
    public const string CurvesCaption = "Days with three glucose values or more";
    public const string InsulinColumn = "Insulin";

    /// <summary>Planned medicines without a dose in the days of the table, each with the last day that has one, or since when it is planned.</summary>
    public static string NeverLogged(IEnumerable<(string Medicine, DateOnly? Last, DateOnly From)> medicines, DateOnly today) => string.Join(" ", medicines.Select(one =>
        $"{Capital(one.Medicine)}: {(one.Last is null && one.From > DateOnly.MinValue ? $"planned since {On(one.From, today)}, " : "")}no dose logged{(one.Last is { } day ? $" since {On(day, today)}" : "")}; it may have been given."));

    /// <summary>The days in between without home care; of many how many, and the longest stretch.</summary>
    public static string WithoutNote(IReadOnlyList<(DateOnly From, DateOnly To)> days, DateOnly today) => days.Count <= 6
        ? $"No food, water, dose, urine or stool logged {string.Join("; ", days.Select(gap => Days(gap.From, gap.To, today)))}."
        : $"No food, water, dose, urine or stool logged on {days.Sum(gap => gap.To.DayNumber - gap.From.DayNumber + 1):N0} days in between, {(days.MaxBy(gap => gap.To.DayNumber - gap.From.DayNumber) is var most && most.From == most.To ? "never two in a row" : $"the longest stretch {Days(most.From, most.To, today)}")}.";

    /// <summary>One day, or several: <c>5 Nov</c>, <c>5 to 9 Nov</c>, <c>30 Oct to 2 Nov</c>.</summary>
    public static string Days(DateOnly from, DateOnly to, DateOnly today)
    {
        string last = ShortDay(to, today);
        return from == to ? last : $"{(from.Year == to.Year && from.Month == to.Month ? $"{from.Day}" : ShortDay(from, from.Year == to.Year ? to : today))} to {last}";
    }

    /// <summary>What is known of one medicine's doses of a day.</summary>
    /// <param name="given">Doses given.</param>
    /// <param name="times">The times of all of them, where there are more than planned; else none.</param>
    /// <param name="planned">Doses a day by the plan; null where it has none.</param>
    /// <param name="missed">Doses written as missed.</param>
    /// <param name="withheld">Doses left out on purpose.</param>
    /// <param name="notLogged">Planned doses that no line tells of.</param>
    public static string DosesOfDay(int given, IReadOnlyList<TimeOnly?> times, int? planned, int missed, int withheld, int notLogged)
    {
        string often = given == 2 ? "given twice" : $"given {given} times";
        string at = times.All(time => time is not null) ? string.Join(", ", times.Select(time => $"{time:HH\\:mm}")) : "";
        string[] parts =
        [
            given == 0 ? "" : times.Count > 0 ? often + (at.Length == 0 ? "" : $": {at}") : planned > 1 ? (given == planned ? (given == 2 ? "both given" : $"all {given} given") : $"{given} of {planned} given") : given == 1 ? "given" : often,
            missed == 0 ? "" : Counted(missed, planned, "missed"), withheld == 0 ? "" : Counted(withheld, planned, "withheld"), notLogged == 0 ? "" : notLogged == planned ? NotLogged : Counted(notLogged, planned, NotLogged),
        ];
        return string.Join(", ", parts.Where(part => part.Length > 0));
    }

    public static string DoseAt(string amount, TimeOnly? time) => $"{amount}{(time is null ? "" : $" at {time:HH\\:mm}")}".Trim();

    /// <summary>A value of a day: <c>07:00 11.8 mmol/L before food</c>.</summary>
    public static string ValueAt(TimeOnly time, string value, string state) => $"{time:HH\\:mm} {value} {state}".TrimEnd();

    private static string ShortDay(DateOnly day, DateOnly today) => day.ToString(day.Year == today.Year ? "d MMM" : "d MMM yyyy", CultureInfo.InvariantCulture);

    private static string Counted(int doses, int? planned, string what) => planned > 1 || doses > 1 ? $"{doses} {what}" : what;

    /// <summary>How much of a meal: <c>all</c>, <c>none</c>, or the part as it was written.</summary>
    public static string PartEaten(Portion meal) => meal.Part == meal.Whole ? "all" : meal.Part == 0 ? NoneSeen : ValuePrinter.Print(meal);

    /// <summary>The meals of a day, each by itself: <c>2 meals: 3/4, 1/2 slow</c>; those that went alike together: <c>2 meals: 1/2 each</c>.</summary>
    public static string Meals(IReadOnlyList<string> meals) =>
        $"{Count(meals.Count, "meal")}: {(meals.Distinct().Count() > 1 ? string.Join(", ", meals) : meals[0] + (meals.Count > 1 && char.IsAsciiDigit(meals[0][0]) ? " each" : ""))}";

    public static string Eating(string how) => $"eating {how}";

    public static string TimesShort(int times) => $"{times}\u00D7";

    public static string WithWords(string count, IEnumerable<string> words)
    {
        string list = string.Join(", ", words);
        return list.Length == 0 ? count : $"{count} {list}".TrimStart();
    }
}
