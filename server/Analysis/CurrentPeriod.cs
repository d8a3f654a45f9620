using HealthNotes.Grammar.Notes;

namespace HealthNotes.Analysis;

/// <summary>Which entries are about now: what a reader is shown first.</summary>
public static class CurrentPeriod
{
    private const int DaysWithoutCheck = 30;

    /// <summary>
    /// The first day of the current period: the day of the last check, or 30 days before the last entry when there is no
    /// check. Null when no entry has a date. A date after <paramref name="today"/> is most likely a slip of the pen: it
    /// counts only when there is no other, so that it cannot hide what is really current.
    /// </summary>
    public static DateOnly? FirstDay(Note note, DateOnly today)
    {
        var checks = new LastDay(today);
        var all = new LastDay(today);
        foreach (Entry entry in note.Entries)
        {
            all = all.With(entry.Head.Date);
            checks = entry.Head.Kind == "check" ? checks.With(entry.Head.Date) : checks;
        }

        return checks.Day ?? (all.Day is { } last ? DateOnly.FromDayNumber(Math.Max(0, last.DayNumber - DaysWithoutCheck)) : null);
    }

    /// <summary>The last of several days, those up to today before any other.</summary>
    private readonly record struct LastDay(DateOnly Today, DateOnly? Past = null, DateOnly? Future = null)
    {
        public DateOnly? Day => Past ?? Future;

        public LastDay With(DateOnly? date) => date is not { } day ? this
            : day <= Today ? (Past >= day ? this : this with { Past = day })
            : Future >= day ? this : this with { Future = day };
    }
}
