using HealthNotes.Analysis;
using HealthNotes.Grammar.Notes;

namespace HealthNotes.Features.Documents;

/// <summary>
/// The analysis of one version of a note: worked out once, when first asked for, from the nearest earlier version that
/// was. Versions that nobody asks about cost nothing.
/// </summary>
internal sealed class DeferredAnalysis
{
    private readonly Lock working = new();
    private readonly Note note;
    private readonly DateOnly today;

    // Swapped as a whole, so that an edit can read it while the analysis is being made.
    private volatile State state;

    private DeferredAnalysis(Note note, DateOnly today, State state)
    {
        this.note = note;
        this.today = today;
        this.state = state;
    }

    /// <summary>The analysis of a note on its own.</summary>
    public static DeferredAnalysis Of(Note note, DateOnly today) => new(note, today, new State(null, null, EntryChange.Everything(0)));

    /// <summary>The analysis of the note that this one's became.</summary>
    public DeferredAnalysis After(Note edited, EntryChange change)
    {
        State now = state;
        return new DeferredAnalysis(edited, today, now.Made is { } made ? new State(null, made, change) : now with { Change = now.Change.Then(change) });
    }

    /// <summary>The analysis; others who ask meanwhile wait for the same one.</summary>
    /// <exception cref="OperationCanceledException">It was told to stop; the next who asks starts again.</exception>
    public NoteAnalysis Get(CancellationToken stop)
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
                made = now.From is { } from ? from.After(note, now.Change, stop) : NoteAnalysis.Of(note, today, stop);
                state = new State(made, null, default);
                return made;
            }

            return now.Made;
        }
    }

    /// <param name="Made">The analysis, once it is made.</param>
    /// <param name="From">An earlier version's.</param>
    /// <param name="Change">What happened since that version.</param>
    private sealed record State(NoteAnalysis? Made, NoteAnalysis? From, EntryChange Change);
}
