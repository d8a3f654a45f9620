using HealthNotes.LanguageServer.State;

namespace HealthNotes.LanguageServer.Session;

/// <summary>The one that looks at the clock: at midnight every note is read on the new day.</summary>
internal sealed class DayWatch(WorkspaceState state, Action changed)
{
    private static readonly TimeSpan Interval = TimeSpan.FromMinutes(1);

    /// <summary>The day by the clock.</summary>
    public static DateOnly Today => DateOnly.FromDateTime(DateTime.Now);

    /// <summary>Looks once a minute from now on, as long as the session lasts.</summary>
    public async Task WatchAsync(Task ended)
    {
        using var timer = new PeriodicTimer(Interval);
        while (!ended.IsCompleted && await timer.WaitForNextTickAsync().ConfigureAwait(false))
        {
            if (state.Current.Today != Today)
            {
                state.Swap(current => current.On(Today));
                changed();
            }
        }
    }
}
