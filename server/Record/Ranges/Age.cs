using HealthNotes.Grammar.Items;

namespace HealthNotes.Record.Ranges;

/// <summary>An age on a day.</summary>
/// <param name="Born">The day of birth, or the middle of the month or year that is written.</param>
/// <param name="Day">The day the age is for.</param>
/// <param name="About">True when the day of birth is not known.</param>
public sealed record Age(DateOnly Born, DateOnly Day, bool About)
{
    /// <summary>Days since birth; negative before it.</summary>
    public int Days => Day.DayNumber - Born.DayNumber;

    /// <summary>Whole years (birthdays had).</summary>
    public int Years
    {
        get
        {
            int years = Day.Year - Born.Year;
            return Day < Anniversary(Born, years) ? years - 1 : years;
        }
    }

    /// <summary>Whole months since the last birthday.</summary>
    public int MonthsPastYears
    {
        get
        {
            DateOnly birthday = Anniversary(Born, Years);
            int months = ((Day.Year - birthday.Year) * 12) + Day.Month - birthday.Month;
            return Math.Min(11, Day < birthday.PlusMonths(months) ? months - 1 : months);
        }
    }

    /// <summary>The age on <paramref name="day"/> of a pet born on <paramref name="born"/>.</summary>
    public static Age On(PartialDate born, DateOnly day) => new(Middle(born), day, born.About || born.Exact is null);

    /// <summary>In an owner's words: <c>9 years 7 months</c>, <c>14 weeks</c>, with about where the day of birth is not known.</summary>
    public override string ToString()
    {
        string about = About ? "about " : "";
        if (Days < 0)
        {
            return "not born yet";
        }

        return about + (Days < 7 * 16 ? Plural(Days / 7, "week") : Years == 0 ? Plural(MonthsPastYears, "month") : MonthsPastYears == 0 || Years >= 15 ? Plural(Years, "year") : $"{Plural(Years, "year")} {Plural(MonthsPastYears, "month")}");
    }

    private static string Plural(int count, string unit) => count == 1 ? $"1 {unit}" : $"{count} {unit}s";

    /// <summary>A birthday on 29 February is kept on 1 March in other years.</summary>
    private static DateOnly Anniversary(DateOnly born, int years)
    {
        int year = born.Year + years;
        return born is { Month: 2, Day: 29 } && !DateTime.IsLeapYear(year) ? new DateOnly(year, 3, 1) : new DateOnly(year, born.Month, born.Day);
    }

    private static DateOnly Middle(PartialDate born) => born.Exact
        ?? (born.Month is { } month ? new DateOnly(born.Year, month, 15) : new DateOnly(born.Year, 7, 1));
}
