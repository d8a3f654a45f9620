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
    public static DateOnly? FirstDay(Note note, DateOnly today) =>
        Last(note.Entries.Where(entry => entry.Head.Kind == "check"), today) ?? DaysBack(Last(note.Entries, today));

    private static DateOnly? Last(IEnumerable<Entry> entries, DateOnly today)
    {
        List<DateOnly> days = [.. entries.Select(entry => entry.Head.Date).OfType<DateOnly>()];
        List<DateOnly> past = [.. days.Where(day => day <= today)];
        return past.Count > 0 ? past.Max() : days.Count > 0 ? days.Max() : null;
    }

    private static DateOnly? DaysBack(DateOnly? day) =>
        day is { } last ? DateOnly.FromDayNumber(Math.Max(0, last.DayNumber - DaysWithoutCheck)) : null;
}
