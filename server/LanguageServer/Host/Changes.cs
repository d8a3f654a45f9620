using HealthNotes.Features.Documents;
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

    public void DidOpen(DidOpenTextDocumentParams parameters) => Change("textDocument/didOpen", () =>
    {
        TextDocumentItem item = parameters.TextDocument;
        state.Swap(current => current with
        {
            Open = current.Open.SetItem(item.Uri, new OpenNote(Document.Open(item.Uri, item.Version, item.Text ?? "", current.Today), null)),
        });
        publisher.Look(item.Uri);
    });

    public void DidChange(DidChangeTextDocumentParams parameters) => Change("textDocument/didChange", () =>
    {
        string uri = parameters.TextDocument.Uri;
        Workspace before = state.Current;
        if (!before.Open.TryGetValue(uri, out OpenNote? note))
        {
            events.Note($"{uri} was changed without being open");
            return;
        }

        int version = parameters.TextDocument.Version ?? note.Document.Version + 1;
        OpenNote edited = ContentChanges.Apply(note, parameters.ContentChanges ?? [], version, before.Client.Encoding);
        state.Swap(current => current with { Open = current.Open.SetItem(uri, edited with { Document = edited.Document.On(current.Today) }) });
        publisher.Look(uri);
    });

    public void DidSave(DidSaveTextDocumentParams parameters) => Change("textDocument/didSave", () =>
    {
        string uri = parameters.TextDocument.Uri;
        state.Swap(current => current.Open.TryGetValue(uri, out OpenNote? note)
            ? current with { Open = current.Open.SetItem(uri, note with { Caret = null }) }
            : current);
        publisher.Look(uri);
    });

    public void DidClose(DidCloseTextDocumentParams parameters) => Change("textDocument/didClose", () =>
    {
        string uri = parameters.TextDocument.Uri;
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
