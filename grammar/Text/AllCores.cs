using System.Collections.Concurrent;
using System.Runtime.ExceptionServices;

namespace HealthNotes.Grammar.Text;

/// <summary>Makes many things that do not depend on one another, on all cores where that is worth it.</summary>
public static class AllCores
{
    private const int Piece = 256;

    /// <summary>The things in their order. Each piece of the work gets a worker of its own, so a worker may keep state.</summary>
    /// <param name="count">How many.</param>
    /// <param name="startWorker">Makes a worker.</param>
    /// <param name="make">Makes one thing by its index; safe to run on several threads, each with its own worker.</param>
    /// <param name="stop">To give up.</param>
    /// <exception cref="OperationCanceledException">It was told to stop.</exception>
    public static T[] Make<TWorker, T>(int count, Func<TWorker> startWorker, Func<TWorker, int, T> make, CancellationToken stop = default)
    {
        var made = new T[count];
        if (count < 2 * Piece || OperatingSystem.IsBrowser())
        {
            Fill(0, count);
            return made;
        }

        try
        {
            Parallel.ForEach(Partitioner.Create(0, count, Piece), new ParallelOptions { CancellationToken = stop }, piece => Fill(piece.Item1, piece.Item2));
        }
        catch (AggregateException several)
        {
            ExceptionDispatchInfo.Throw(several.InnerExceptions[0]);
        }

        return made;

        void Fill(int from, int to)
        {
            TWorker worker = startWorker();
            for (int index = from; index < to; index++)
            {
                stop.ThrowIfCancellationRequested();
                made[index] = make(worker, index);
            }
        }
    }

    /// <summary>The same without a worker.</summary>
    public static T[] Make<T>(int count, Func<int, T> make, CancellationToken stop = default) => Make(count, () => make, (worker, index) => worker(index), stop);
}
