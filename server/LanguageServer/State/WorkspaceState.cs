namespace HealthNotes.LanguageServer.State;

/// <summary>The one place where the current workspace is held and swapped for the next.</summary>
internal sealed class WorkspaceState(Workspace first)
{
    private readonly Lock gate = new();
    private volatile Workspace current = first;

    /// <summary>What holds now.</summary>
    public Workspace Current => current;

    /// <summary>Puts the next workspace in the place of the current one. Changes come one at a time; readers never wait.</summary>
    public Workspace Swap(Func<Workspace, Workspace> change)
    {
        lock (gate)
        {
            return current = change(current);
        }
    }
}
