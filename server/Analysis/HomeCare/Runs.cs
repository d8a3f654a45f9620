using HealthNotes.Record.Courses;

namespace HealthNotes.Analysis.HomeCare;

/// <summary>Puts lines that belong together in time together, so that what goes on is reported once.</summary>
internal static class Runs
{
    /// <summary>At most so many lines are named as evidence.</summary>
    public const int MostEvidence = 10;

    /// <summary>Runs of lines with no more than <paramref name="days"/> days from one to the next.</summary>
    public static IEnumerable<List<Noted>> Of(IEnumerable<Noted> lines, int days)
    {
        List<Noted>? run = null;
        foreach (Noted line in lines)
        {
            if (run is not null && line.Day.DayNumber - run[^1].Day.DayNumber > days)
            {
                yield return run;
                run = null;
            }

            (run ??= []).Add(line);
        }

        if (run is not null)
        {
            yield return run;
        }
    }

    /// <summary>The last lines of a run, as evidence.</summary>
    public static IEnumerable<int> Evidence(IEnumerable<Noted> run) => run.Select(line => line.Line).TakeLast(MostEvidence);
}
