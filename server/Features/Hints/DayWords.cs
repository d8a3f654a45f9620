using System.Globalization;

namespace HealthNotes.Features.Hints;

/// <summary>Days in words.</summary>
internal static class DayWords
{
    /// <summary><c>2026-11-25</c>.</summary>
    public static string Iso(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    /// <summary><c>Wed 2026-11-25</c>.</summary>
    public static string Short(DateOnly day) => day.ToString("ddd yyyy-MM-dd", CultureInfo.InvariantCulture);

    /// <summary><c>Wednesday 25 November 2026</c>.</summary>
    public static string Long(DateOnly day) => day.ToString("dddd d MMMM yyyy", CultureInfo.InvariantCulture);

    /// <summary><c>in 3 days</c>, <c>today</c>, <c>2 days ago</c>.</summary>
    public static string From(DateOnly today, DateOnly day) => (day.DayNumber - today.DayNumber) switch
    {
        0 => "today",
        1 => "tomorrow",
        -1 => "yesterday",
        > 0 and var days => $"in {days} days",
        var days => $"{-days} days ago",
    };
}
