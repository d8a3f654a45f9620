using HealthNotes.Grammar.Notes;

namespace HealthNotes.Features.Documents;

/// <summary>
/// What is worked out from one version of a note: once, when first asked for, from the nearest earlier version that was.
/// Versions that nobody asks about cost nothing.
/// </summary>
internal sealed class Deferred<T>
    where T : class
{
    private readonly Lock working = new();
    private readonly Func<T?, EntryChange, CancellationToken, T> make;

    // Swapped as a whole, so that an edit can read it while it is being made.
    private volatile State state;

    private Deferred(Func<T?, EntryChange, CancellationToken, T> make, State state)
    {
        this.make = make;
        this.state = state;
    }

    /// <summary>Made anew, or from an earlier version and the change since then.</summary>
    public Deferred(Func<T?, EntryChange, CancellationToken, T> make)
        : this(make, new State(null, null, EntryChange.Everything(0)))
    {
    }

    /// <summary>The same for the next version, made by its own function.</summary>
    public Deferred<T> After(EntryChange change, Func<T?, EntryChange, CancellationToken, T> next)
    {
        State now = state;
        return new Deferred<T>(next, now.Made is { } made ? new State(null, made, change) : now with { Change = now.Change.Then(change) });
    }

    /// <summary>The result; others who ask meanwhile wait for the same one.</summary>
    /// <exception cref="OperationCanceledException">It was told to stop; the next who asks starts again.</exception>
    public T Get(CancellationToken stop)
    {
        if (state.Made is { } made)
        {
            return made;
        }

        lock (working)
        {
            State now = state;
            if (now.Made is null)
            {
                stop.ThrowIfCancellationRequested();
                made = make(now.From, now.Change, stop);
                state = new State(made, null, default);
                return made;
            }

            return now.Made;
        }
    }

    /// <param name="Made">The result, once it is made.</param>
    /// <param name="From">An earlier version's.</param>
    /// <param name="Change">What happened since that version.</param>
    private sealed record State(T? Made, T? From, EntryChange Change);
}
