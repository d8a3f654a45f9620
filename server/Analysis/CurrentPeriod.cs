using HealthNotes.Grammar.Notes;

namespace HealthNotes.Analysis;

/// <summary>Which entries are about now: what a reader is shown first.</summary>
public static class CurrentPeriod
{
    private const int DaysWithoutCheck = 30;

    /// <summary>
    /// The first day of the current period: the day of the last check, or 30 days before the last entry when there is no
    /// check. Null when no entry has a date.
    /// </summary>
    public static DateOnly? FirstDay(Note note)
    {
        DateOnly? lastCheck = note.Entries.Where(entry => entry.Head.Kind == "check").Max(entry => entry.Head.Date);
        return lastCheck ?? note.Entries.Max(entry => entry.Head.Date)?.AddDays(-DaysWithoutCheck);
    }
}
