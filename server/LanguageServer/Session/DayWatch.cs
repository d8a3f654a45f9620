using HealthNotes.LanguageServer.State;

namespace HealthNotes.LanguageServer.Session;

/// <summary>At midnight every note is read on the new day.</summary>
internal sealed class DayWatch(WorkspaceState state, Action changed)
{
    private static readonly TimeSpan Interval = TimeSpan.FromMinutes(1);

    /// <summary>Looks once a minute from now on, as long as the session lasts.</summary>
    public async Task WatchAsync(Task ended)
    {
        using var timer = new PeriodicTimer(Interval);
        while (!ended.IsCompleted && await timer.WaitForNextTickAsync().ConfigureAwait(false))
        {
            if (state.Current.Today != Clock.Today)
            {
                state.Swap(current => current.On(Clock.Today));
                changed();
            }
        }
    }
}
