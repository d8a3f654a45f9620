using System.Collections.Immutable;
using HealthNotes.Grammar.Notes;

namespace HealthNotes.Record;

/// <summary>How the start of the current period was chosen.</summary>
public enum PeriodStart
{
    /// <summary>The last visit to the clinic before today.</summary>
    Visit,

    /// <summary>A day that was asked for.</summary>
    Asked,

    /// <summary>A year before the last entry: the notes hold no visit.</summary>
    LastYear,
}

/// <summary>What is about now: everything since the clinic last saw the pet.</summary>
/// <param name="From">Its first day; null when no entry has a date.</param>
/// <param name="Start">How that day was chosen.</param>
/// <param name="Visit">The last visit before today, whatever day was asked for; null when the notes hold none.</param>
public sealed record CurrentPeriod(DateOnly? From, PeriodStart Start, Entry? Visit)
{
    /// <summary>True for an entry that belongs to it, and for one without a day. The visit it starts with, and what was written of that day before it, do not.</summary>
    public bool Holds(Entry entry) => entry.Head.Date is not { } day || day > From
        || (day == From && (Start != PeriodStart.Visit || IsAfterVisit(entry)));

    /// <summary>
    /// The period of some entries. A visit that was only begun takes nothing out of sight. A day after <paramref name="today"/> is
    /// most likely a slip of the pen: it counts only when there is no other.
    /// </summary>
    internal static CurrentPeriod Of(ImmutableArray<PetEntry> entries, DateOnly today, DateOnly? asked)
    {
        Entry? visit = null;
        DateOnly? past = null;
        DateOnly? future = null;
        foreach (PetEntry entry in entries)
        {
            if (entry.Day is not { } day)
            {
                continue;
            }

            if (day > today)
            {
                future = future > day ? future : day;
                continue;
            }

            past = past > day ? past : day;
            if (day < today && !(visit?.Head.Date > day) && entry.Entry.Head.Kind == "visit" && !(entry.Entry.Items.IsEmpty && entry.Entry.Texts.IsEmpty))
            {
                visit = entry.Entry;
            }
        }

        DateOnly? last = past ?? future;
        return asked is not null ? new CurrentPeriod(asked, PeriodStart.Asked, visit)
            : visit is not null ? new CurrentPeriod(visit.Head.Date, PeriodStart.Visit, visit)
            : new CurrentPeriod(last is { Year: > 1 } newest ? newest.AddYears(-1) : last, PeriodStart.LastYear, null);
    }

    private bool IsAfterVisit(Entry entry) => (entry.Head.Time, Visit!.Head.Time) is ({ } time, { } visit) && time != visit ? time > visit : entry.Line > Visit.Line;
}
