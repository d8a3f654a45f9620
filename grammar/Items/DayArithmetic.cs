namespace HealthNotes.Grammar.Items;

/// <summary>Days before and after a day. A note may name the first and the last day there is: time ends there, and nothing fails.</summary>
public static class DayArithmetic
{
    /// <summary>The day so many days later, or earlier for less than none; the first or the last day there is where it would lie beyond.</summary>
    public static DateOnly Plus(this DateOnly day, int days) =>
        DateOnly.FromDayNumber((int)Math.Clamp((long)day.DayNumber + days, DateOnly.MinValue.DayNumber, DateOnly.MaxValue.DayNumber));

    /// <summary>The same day so many months later, or the last of a shorter month; the last day there is where it would lie beyond.</summary>
    public static DateOnly PlusMonths(this DateOnly day, int months) =>
        ((DateOnly.MaxValue.Year - day.Year) * 12) + DateOnly.MaxValue.Month - day.Month < months ? DateOnly.MaxValue : day.AddMonths(months);
}
