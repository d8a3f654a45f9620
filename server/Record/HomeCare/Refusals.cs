using HealthNotes.Grammar.Items;
using HealthNotes.Record.Courses;

namespace HealthNotes.Record.HomeCare;

/// <summary>Meals or water left untouched one after another.</summary>
/// <param name="Lines">The lines that say so.</param>
/// <param name="Since">When it last took something, or the first refusal where that is not known.</param>
/// <param name="SinceLine">The line of it.</param>
/// <param name="Hours">Hours from then to the last refusal; whole days where times are missing.</param>
/// <param name="Over">True when it has taken something since.</param>
public sealed record Refusal(IReadOnlyList<Noted> Lines, Noted Since, int SinceLine, decimal Hours, bool Over)
{
    private const int HoursADay = 24;

    /// <summary>Every run of refusals.</summary>
    /// <param name="lines">The lines, by time.</param>
    /// <param name="longestGap">How many hours before the first refusal the last meal may have been to count.</param>
    /// <param name="refused">True for a refusal, false for what was taken, null for a line that tells neither.</param>
    public static List<Refusal> In(ReadOnlySpan<Noted> lines, decimal longestGap, Func<CareEvent, bool?> refused)
    {
        var refusals = new List<Refusal>();
        Noted? taken = null;
        List<Noted>? run = null;
        foreach (Noted line in lines)
        {
            bool? left = line.Item is CareEvent care ? refused(care) : null;
            if (left == true)
            {
                (run ??= []).Add(line);
            }
            else if (left == false)
            {
                if (run is not null)
                {
                    refusals.Add(Of(run, taken, longestGap, over: true));
                    run = null;
                }

                taken = line;
            }
        }

        if (run is not null)
        {
            refusals.Add(Of(run, taken, longestGap, over: false));
        }

        return refusals;
    }

    private static Refusal Of(List<Noted> run, Noted? taken, decimal longestGap, bool over)
    {
        Noted since = taken is not null && Between(taken, run[0]) <= longestGap ? taken : run[0];
        return new Refusal(run, since, since.Line, Between(since, run[^1]), over);
    }

    private static decimal Between(Noted first, Noted second) =>
        DoseSeries.HoursBetween(first, second) ?? (second.Day.DayNumber - first.Day.DayNumber) * HoursADay;
}
