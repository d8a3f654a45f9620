using System.Collections.Immutable;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using HealthNotes.Features.Documents;
using HealthNotes.Files;
using HealthNotes.LanguageServer.Convert;
using HealthNotes.LanguageServer.Handlers;
using HealthNotes.LanguageServer.Protocol;
using HealthNotes.LanguageServer.State;

namespace HealthNotes.LanguageServer.Host;

/// <summary>What happens at each message that changes something.</summary>
internal sealed class Changes(WorkspaceState state, Lifecycle lifecycle, FindingsPublisher publisher, ServerEvents events, string version) : IChanges
{
    public Task<InitializeResult> Initialize(InitializeParams parameters)
    {
        lifecycle.Initialize();
        Workspace workspace = state.Swap(current => InitializeHandler.Apply(current, parameters));
        events.Initialized(parameters);
        return Task.FromResult(InitializeHandler.Answer(workspace.Client, version));
    }

    public void Initialized(InitializedParams? parameters = null) => Change("initialized", events.Ready);

    public Task Shutdown()
    {
        lifecycle.ShutDown();
        return Task.CompletedTask;
    }

    public void Exit() => lifecycle.End();

    public void SetTrace(SetTraceParams parameters) => Change("$/setTrace", () => events.SetTrace(parameters.Value));

    public void DidOpen(JsonElement parameters) => Change("textDocument/didOpen", parameters, ProtocolJson.Default.DidOpenTextDocumentParams, opened =>
    {
        TextDocumentItem item = opened.TextDocument;
        state.Swap(current => current with
        {
            Open = current.Open.SetItem(item.Uri, new OpenNote(Document.Open(item.Uri, item.Version, new RulesFiles().Read(Uris.PathOf(item.Uri), item.Text ?? ""), current.Today), null)),
        });
        publisher.Look(item.Uri);
    });

    public void DidChange(JsonElement parameters) => Change("textDocument/didChange", parameters, ProtocolJson.Default.DidChangeTextDocumentParams, changed =>
    {
        string uri = changed.TextDocument.Uri;
        Workspace before = state.Current;
        if (!before.Open.TryGetValue(uri, out OpenNote? note))
        {
            events.Note($"{uri} was changed without being open");
            return;
        }

        int version = changed.TextDocument.Version ?? note.Document.Version + 1;
        OpenNote edited = ContentChanges.Apply(note, changed.ContentChanges ?? [], version, before.Client.Encoding);
        state.Swap(current => current with { Open = current.Open.SetItem(uri, edited with { Document = edited.Document.On(current.Today) }) });
        publisher.Look(uri);
    });

    public void DidSave(JsonElement parameters) => Change("textDocument/didSave", parameters, ProtocolJson.Default.DidSaveTextDocumentParams, saved =>
    {
        string uri = saved.TextDocument.Uri;
        state.Swap(current => current.Open.TryGetValue(uri, out OpenNote? note)
            ? current with { Open = current.Open.SetItem(uri, note with { Caret = null }) }
            : current);
        if (RulesFiles.IsRules(uri))
        {
            // they lie over every note below them
            var rules = new RulesFiles();
            state.Swap(current => current with
            {
                Open = current.Open.ToImmutableDictionary(pair => pair.Key, pair => pair.Value with { Document = pair.Value.Document.Under(Uris.PathOf(pair.Key) is { } path ? rules.Over(path) : []) }),
            });
            publisher.LookAtAll();
            return;
        }

        publisher.Look(uri);
    });

    public void DidClose(JsonElement parameters) => Change("textDocument/didClose", parameters, ProtocolJson.Default.DidCloseTextDocumentParams, closed =>
    {
        string uri = closed.TextDocument.Uri;
        state.Swap(current => current with { Open = current.Open.Remove(uri) });
        publisher.Look(uri);
    });

    public void DidChangeConfiguration(DidChangeConfigurationParams? parameters = null) =>
        Change("workspace/didChangeConfiguration", () => events.SettingsChanged(parameters?.Settings));

    public void DidChangeWatchedFiles(DidChangeWatchedFilesParams parameters) =>
        Change("workspace/didChangeWatchedFiles", () => events.FilesChanged(parameters.Changes ?? []));

    public void DidChangeWorkspaceFolders(DidChangeWorkspaceFoldersParams parameters) => Change("workspace/didChangeWorkspaceFolders", () =>
    {
        state.Swap(current => current with { Folders = Folders.After(current.Folders, parameters.Event) });
        events.FoldersChanged();
    });

    public void CancelWorkDoneProgress(WorkDoneProgressCancelParams parameters) => Change("window/workDoneProgress/cancel", events.ProgressCancelled);

    /// <summary>
    /// A message about a text. When it can't be read, the client's text is no longer known: the note it names (any note, when it
    /// names none) counts as not checked, and the client is notified.
    /// </summary>
    private void Change<T>(string method, JsonElement parameters, JsonTypeInfo<T> type, Action<T> change)
        where T : class => Change(method, () =>
    {
        T? read = null;
        try
        {
            read = parameters.Deserialize(type);
        }
        catch (Exception problem) when (problem is JsonException or InvalidOperationException or FormatException or NotSupportedException)
        {
            events.Note($"{method} can't be read: {problem.Message}");
        }

        if (read is not null)
        {
            change(read);
            return;
        }

        LoseTrack(UriIn(parameters));
    });

    /// <summary>The client's text is no longer known: the note counts as not checked, and the client is notified.</summary>
    /// <param name="uri">The note; null for every one that is open.</param>
    public void LoseTrack(string? uri)
    {
        if (!lifecycle.IsRunning || (uri is null && state.Current.Open.IsEmpty))
        {
            return;
        }

        state.Swap(current => current with
        {
            Open = uri is not null
                ? current.Open.SetItem(uri, (current.Open.GetValueOrDefault(uri) ?? new OpenNote(Document.Open(uri, 0, "", current.Today), null)) with { IsLost = true })
                : current.Open.ToImmutableDictionary(pair => pair.Key, pair => pair.Value with { IsLost = true }),
        });
        events.Lost(uri);
        publisher.LookAtAll();
    }

    private static string? UriIn(JsonElement parameters)
    {
        try
        {
            return parameters.ValueKind == JsonValueKind.Object && parameters.TryGetProperty("textDocument", out JsonElement document)
                && document.ValueKind == JsonValueKind.Object && document.TryGetProperty("uri", out JsonElement uri) && uri.ValueKind == JsonValueKind.String ? uri.GetString() : null;
        }
        catch (InvalidOperationException)
        {
            return null; // half of a surrogate pair
        }
    }

    /// <summary>
    /// Outside of the session a change is dropped. One that fails ends the session: from then on the client's text and ours
    /// would differ, and findings about another text are worse than none. Editors start a server that ended again.
    /// </summary>
    private void Change(string method, Action change)
    {
        if (!lifecycle.IsRunning)
        {
            return;
        }

        try
        {
            change();
        }
        catch (Exception fault) when (fault is not OutOfMemoryException)
        {
            events.Failed(method, fault);
            lifecycle.Fail();
        }
    }
}
