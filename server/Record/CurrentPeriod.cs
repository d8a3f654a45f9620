using System.Collections.Immutable;

namespace HealthNotes.Record;

/// <summary>Which entries are about now: what a reader is shown first.</summary>
internal static class CurrentPeriod
{
    private const int DaysWithoutCheck = 30;

    /// <summary>
    /// The first day of the current period: the day of the last check, or 30 days before the last entry when there is no
    /// check. Null when no entry has a date. A date after <paramref name="today"/> is most likely a slip of the pen: it
    /// counts only when there is no other, so that it cannot hide what is really current.
    /// </summary>
    public static DateOnly? FirstDay(ImmutableArray<PetEntry> entries, DateOnly today)
    {
        var checks = new LastDay(today);
        var all = new LastDay(today);
        foreach (PetEntry entry in entries)
        {
            if (all.IsBefore(entry.Day))
            {
                all = all.With(entry.Day);
            }

            if (checks.IsBefore(entry.Day) && entry.Entry.IsCheck)
            {
                checks = checks.With(entry.Day);
            }
        }

        return checks.Day ?? (all.Day is { } last ? DateOnly.FromDayNumber(Math.Max(0, last.DayNumber - DaysWithoutCheck)) : null);
    }

    /// <summary>The last of several days, those up to today before any other.</summary>
    private readonly record struct LastDay(DateOnly Today, DateOnly? Past = null, DateOnly? Future = null)
    {
        public DateOnly? Day => Past ?? Future;

        /// <summary>True when a date would change it.</summary>
        public bool IsBefore(DateOnly? date) => date is { } day && !((day <= Today ? Past : Future) >= day);

        public LastDay With(DateOnly? date) => date is not { } day ? this
            : day <= Today ? (Past >= day ? this : this with { Past = day })
            : Future >= day ? this : this with { Future = day };
    }
}
