using HealthNotes.Features.Documents;
using HealthNotes.LanguageServer.Convert;
using HealthNotes.LanguageServer.Protocol;
using HealthNotes.LanguageServer.Rpc;
using HealthNotes.LanguageServer.State;

namespace HealthNotes.LanguageServer.Session;

/// <summary>What changes set going: nothing here makes a change wait.</summary>
internal sealed class ServerEvents(WorkspaceState state, Connection connection, Client client, FolderScan scan, FindingsPublisher publisher, ServerLog log, Action<int> watchProcess)
{
    /// <summary>The client has said what it can do. The tables are read while it is still busy with the answer.</summary>
    public void Initialized(InitializeParams parameters)
    {
        if (parameters.ProcessId is { } process)
        {
            watchProcess(process);
        }

        connection.SetTrace(parameters.Trace);
        if (!OperatingSystem.IsBrowser())
        {
            // a browser has one thread, on which the note itself would wait
            _ = Task.Run(WarmUp.Run);
        }
    }

    /// <summary>3.17, Initialized Notification: from now on the client may be asked.</summary>
    public void Ready() => Run("initialized", async () =>
    {
        await client.RegisterAsync().ConfigureAwait(false);
        await PullSettingsAsync().ConfigureAwait(false);
        if (!state.Current.Folders.IsEmpty)
        {
            scan.Start();
        }
    });

    /// <summary>3.17, DidChangeConfiguration Notification: the client gives the settings, or is asked for them.</summary>
    public void SettingsChanged(DidChangeConfigurationParams given) => Run("workspace/didChangeConfiguration", async () =>
    {
        if (state.Current.Client.HasConfiguration)
        {
            await PullSettingsAsync().ConfigureAwait(false);
        }
        else
        {
            Apply(before => ClientSettings.Of(given.Settings, before));
        }
    });

    /// <summary>The settings as they are to be from now on.</summary>
    public FeatureSettings Apply(Func<FeatureSettings, FeatureSettings> change)
    {
        FeatureSettings before = state.Current.Settings;
        FeatureSettings after = state.Swap(current => current with { Settings = change(current.Settings) }).Settings;
        if (after == before)
        {
            return after;
        }

        publisher.LookAtAll();
        Run("refreshing", client.RefreshAsync);
        if (after.PastFindings != before.PastFindings)
        {
            scan.Start();
        }

        return after;
    }

    /// <summary>The folders, or the day, have changed.</summary>
    public void FoldersChanged() => scan.Start();

    /// <summary>It is another day, or the rules over the notes are others.</summary>
    public void ReadAgain()
    {
        publisher.LookAtAll();
        Run("refreshing", client.RefreshAsync);
        scan.Start();
    }

    /// <summary>3.17, DidChangeWatchedFiles Notification.</summary>
    public void FilesChanged(DidChangeWatchedFilesParams parameters) => scan.Look([.. parameters.Changes.Select(change => change.Uri).OfType<string>().Distinct()]);

    /// <summary>3.17, SetTrace Notification.</summary>
    public void SetTrace(SetTraceParams parameters) => connection.SetTrace(parameters.Value);

    /// <summary>3.17, Window Features, Cancel a Work Done Progress.</summary>
    public void ProgressCancelled(WorkDoneProgressCancelParams parameters) => scan.Stop();

    /// <summary>Something to know when there is trouble.</summary>
    public void Note(string line) => log.Note(line);

    /// <summary>A change could not be read: until the note is opened again, what its editor shows is not what is checked here.</summary>
    /// <param name="uri">The note; null for any.</param>
    public void Lost(string? uri) => Run("telling of a lost change", async () =>
    {
        string note = uri is null ? "a note" : Path.GetFileName(Uri.UnescapeDataString(uri));
        client.Say(MessageType.Warning, $"hnote could not read a change of {note}, so it is not checked now. Close it and open it again.");
        await client.RefreshAsync().ConfigureAwait(false);
    });

    /// <summary>A change that failed.</summary>
    public void Failed(string method, Exception fault) => log.Fault($"internal error in {method}, the session ends: {fault}");

    private async Task PullSettingsAsync()
    {
        if (await client.ConfigurationAsync().ConfigureAwait(false) is { } section)
        {
            Apply(before => ClientSettings.Of(section, before));
        }
    }

    private void Run(string what, Func<Task> work) => _ = Task.Run(async () =>
    {
        try
        {
            await work().ConfigureAwait(false);
        }
        catch (Exception fault) when (fault is not OutOfMemoryException)
        {
            connection.Report(what, fault);
        }
    });
}
