using System.Runtime.ExceptionServices;

namespace HealthNotes.Files;

/// <summary>Work on several notes: what goes wrong with one is reported, and does not keep the others.</summary>
/// <param name="report">Takes a message for the user.</param>
public sealed class EachNote(Action<string> report)
{
    /// <summary>So many notes are worked on before all of them are handed over: what is made of a folder never has to be kept whole.</summary>
    private const int Together = 256;

    /// <summary>True once a note could not be read or written.</summary>
    public bool Refused { get; private set; }

    /// <summary>True once something went wrong inside.</summary>
    public bool Failed { get; private set; }

    /// <summary>Works on several notes, on all cores, and hands over what became of each in the order of the notes.</summary>
    /// <param name="paths">The notes, as they were named.</param>
    /// <param name="work">What is done with one; it runs on several threads.</param>
    /// <param name="take">Takes the path, and what was made or why it could not be; it runs on this thread only.</param>
    public void Do<T>(IReadOnlyCollection<string> paths, Func<string, T> work, Action<string, T?, string?> take)
        where T : class
    {
        ArgumentNullException.ThrowIfNull(take);
        IEnumerable<Outcome<T>> all = paths.Count < 2 ? paths.Select(path => Try(path, work))
            : paths.Chunk(Together).SelectMany(some => some.AsParallel().AsOrdered().WithMergeOptions(ParallelMergeOptions.NotBuffered).Select(path => Try(path, work)));
        foreach (Outcome<T> outcome in all)
        {
            outcome.OfTheProcess?.Throw();
            Refused |= outcome.Why is not null && !outcome.IsFault;
            Failed |= outcome.IsFault;
            if (outcome.Why is not null)
            {
                report(outcome.Why);
            }

            take(outcome.Path, outcome.Made, outcome.Why);
        }
    }

    private static Outcome<T> Try<T>(string path, Func<string, T> work)
        where T : class
    {
        try
        {
            return new(path, work(path));
        }
        catch (RefusedException refused)
        {
            return new(path, null, refused.Message);
        }
        catch (Exception fault) when (IsOfTheProcess(fault))
        {
            return new(path, null, OfTheProcess: ExceptionDispatchInfo.Capture(fault));
        }
        catch (Exception fault)
        {
            return new(path, null, $"{path}: an internal error in hnote ({fault.GetType().Name}: {fault.Message}). The note is unchanged. Please report it with the lines that caused it.", IsFault: true);
        }
    }

    private sealed record Outcome<T>(string Path, T? Made, string? Why = null, bool IsFault = false, ExceptionDispatchInfo? OfTheProcess = null);

    /// <summary>What no note is the cause of: no memory, or a reader that has gone away.</summary>
    private static bool IsOfTheProcess(Exception fault) => fault is OutOfMemoryException or OperationCanceledException or IOException;
}
