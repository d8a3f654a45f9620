using System.Text.Json;
using HealthNotes.LanguageServer.Convert;
using HealthNotes.LanguageServer.Protocol;
using HealthNotes.LanguageServer.Rpc;
using HealthNotes.LanguageServer.State;

namespace HealthNotes.LanguageServer.Session;

/// <summary>Notifications and requests to the client. Only what it declared in its capabilities is requested.</summary>
internal sealed class Client(Connection connection, WorkspaceState state)
{
    private ClientProfile Profile => state.Current.Client;

    /// <summary>3.17, Workspace Features, Configuration Request: the section, or null when the client has none to give.</summary>
    public async Task<JsonElement?> ConfigurationAsync()
    {
        if (!Profile.HasConfiguration)
        {
            return null;
        }

        JsonElement[]? sections = await connection.AskAsync<ConfigurationParams, JsonElement[]>(
            "workspace/configuration", new ConfigurationParams([new ConfigurationItem(ClientSettings.Section)])).ConfigureAwait(false);
        return sections is { Length: > 0 } ? sections[0] : null;
    }

    /// <summary>3.17, Lifecycle Messages, Register Capability: the files to watch, and the settings.</summary>
    public async Task RegisterAsync()
    {
        var wanted = new List<Registration>();
        if (Profile.RegistersWatchedFiles)
        {
            wanted.Add(new Registration("hnote-files", "workspace/didChangeWatchedFiles", new DidChangeWatchedFilesRegistrationOptions([new Protocol.FileSystemWatcher("**/*.hnote")])));
        }

        if (Profile.RegistersConfiguration)
        {
            wanted.Add(new Registration("hnote-settings", "workspace/didChangeConfiguration"));
        }

        if (wanted.Count > 0)
        {
            await connection.AskAsync<RegistrationParams, object>("client/registerCapability", new RegistrationParams([.. wanted])).ConfigureAwait(false);
        }
    }

    /// <summary>Asks the client to ask again for whatever depends on settings, the day, or files that are not open.</summary>
    public async Task RefreshAsync()
    {
        (bool Can, string Method)[] all =
        [
            (Profile.RefreshesDiagnostics && Profile.PullsDiagnostics, "workspace/diagnostic/refresh"),
            (Profile.RefreshesHints, "workspace/inlayHint/refresh"),
            (Profile.RefreshesLenses, "workspace/codeLens/refresh"),
        ];
        foreach ((_, string method) in all.Where(refresh => refresh.Can))
        {
            await connection.AskAsync<object, object>(method, null).ConfigureAwait(false);
        }
    }

    /// <summary>3.17, Workspace Features, Applies a WorkspaceEdit; false when it was not applied.</summary>
    public async Task<bool> ApplyAsync(string label, WorkspaceEdit edit) => Profile.AppliesEdits
        && await connection.AskAsync<ApplyWorkspaceEditParams, ApplyWorkspaceEditResult>("workspace/applyEdit", new ApplyWorkspaceEditParams(label, edit)).ConfigureAwait(false) is { Applied: true };

    /// <summary>3.17, Window Features, Show Document Request; false when it was not shown.</summary>
    public async Task<bool> ShowAsync(ShowDocumentParams document) => Profile.ShowsDocuments
        && await connection.AskAsync<ShowDocumentParams, ShowDocumentResult>("window/showDocument", document).ConfigureAwait(false) is { Success: true };

    /// <summary>3.17, Window Features, ShowMessage Notification.</summary>
    public void Say(MessageType type, string message) => connection.Tell("window/showMessage", new MessageParams(type, message));

    /// <summary>3.17, Window Features, Create Work Done Progress; false where the client shows none.</summary>
    public async Task<bool> BeginProgressAsync(string token, string title)
    {
        if (!Profile.ShowsProgress || !await connection.AskedAsync("window/workDoneProgress/create", new WorkDoneProgressCreateParams(token)).ConfigureAwait(false))
        {
            return false;
        }

        Progress(token, new WorkDoneProgress("begin", title, Percentage: 0, Cancellable: true));
        return true;
    }

    /// <summary>3.17, Base Protocol, Progress Support.</summary>
    public void Progress(string token, WorkDoneProgress value) => connection.Tell("$/progress", new ProgressParams(token, value));
}
