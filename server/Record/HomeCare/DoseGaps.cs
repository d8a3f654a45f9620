using System.Collections.Immutable;
using HealthNotes.Grammar.Items;
using HealthNotes.Record.Courses;

namespace HealthNotes.Record.HomeCare;

/// <summary>A day of a plan on which doses were not given, or are not written.</summary>
/// <param name="Day">The day.</param>
/// <param name="Missed">The lines that say a dose was missed.</param>
/// <param name="Given">How many were written as given.</param>
/// <param name="Planned">How many the plan has.</param>
/// <param name="Entry">An entry of that day that tells something, though not all doses; null where none does.</param>
/// <param name="Order">The plan.</param>
public sealed record DoseGap(DateOnly Day, ImmutableArray<Noted> Missed, int Given, int Planned, Noted? Entry, MedicineOrder Order)
{
    /// <summary>Doses that are not logged, on a day on which something is.</summary>
    public int NotWritten => Entry is null ? 0 : Math.Max(0, Planned - Given - Missed.Length);
}

/// <summary>Finds doses that were not given or not written. Owners who do not write every dose down are left alone.</summary>
public static class DoseGaps
{
    private const int DaysBefore = 7;

    /// <summary>The days with gaps, in order.</summary>
    /// <param name="given">The doses given.</param>
    /// <param name="missed">The lines that say one was missed.</param>
    /// <param name="entries">Heads of all entries, by time.</param>
    /// <param name="orders">The plans.</param>
    /// <param name="loggedDays">On how many of the seven days before doses must be written for a dose that is not to say something.</param>
    public static IEnumerable<DoseGap> In(Course given, Course missed, ImmutableArray<Noted> entries, ImmutableArray<MedicineOrder> orders, int loggedDays)
    {
        if (orders.Length == 0)
        {
            yield break;
        }

        Dictionary<DateOnly, int> givenOn = given.Recent.ToArray().GroupBy(dose => dose.Day).ToDictionary(day => day.Key, day => day.Count());
        ILookup<DateOnly, Noted> missedOn = missed.Recent.ToArray().ToLookup(dose => dose.Day);
        ILookup<DateOnly, Noted> entriesOn = entries.ToLookup(entry => entry.Day);
        DateOnly? last = given.Last?.Day;
        IEnumerable<DateOnly> days = entriesOn.Select(day => day.Key).Concat(missedOn.Select(day => day.Key)).Distinct().Order();
        foreach (DateOnly day in days)
        {
            if (orders.LastOrDefault(order => order.From <= day && !(day > order.LastDay) && !(day > DateOf(order.Ended))) is not { IsAsWritten: false } order)
            {
                continue;
            }

            ImmutableArray<Noted> said = [.. missedOn[day]];
            // on the first day it begins at some hour, and the last day written may not be over
            bool told = order.DosesADay is not null && day > order.From && day < last && day != DateOf(order.Ended) && IsLogged(givenOn, day, loggedDays);
            var gap = new DoseGap(day, said, givenOn.GetValueOrDefault(day), order.FewestDosesADay ?? 1, told ? entriesOn[day].FirstOrDefault() : null, order);
            if (said.Length > 0 || gap.NotWritten > 0)
            {
                yield return gap;
            }
        }
    }

    private static DateOnly? DateOf(DateTime? moment) => moment is { } when ? DateOnly.FromDateTime(when) : null;

    private static bool IsLogged(Dictionary<DateOnly, int> givenOn, DateOnly day, int loggedDays)
    {
        int logged = 0;
        for (int before = 1; before <= DaysBefore && day.DayNumber > before; before++)
        {
            logged += givenOn.ContainsKey(day.Plus(-before)) ? 1 : 0;
        }

        return logged >= loggedDays;
    }
}
