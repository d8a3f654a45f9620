using System.Collections.Immutable;
using HealthNotes.Features.Documents;
using HealthNotes.Files;
using HealthNotes.LanguageServer.Convert;
using HealthNotes.LanguageServer.Protocol;
using HealthNotes.LanguageServer.Rpc;
using HealthNotes.LanguageServer.State;

namespace HealthNotes.LanguageServer.Session;

/// <summary>What happens at each message that changes something.</summary>
internal sealed class Changes(WorkspaceState state, Lifecycle lifecycle, FindingsPublisher publisher, ServerEvents events, string version)
{
    public InitializeResult Initialize(InitializeParams parameters, IEnumerable<Route> routes)
    {
        lifecycle.Initialize();
        Workspace workspace = state.Swap(current => current with
        {
            Client = ClientProfile.Of(parameters.Capabilities),
            Settings = ClientSettings.Of(parameters.InitializationOptions, current.Settings),
            Folders = Folders.Of(parameters),
        });
        events.Initialized(parameters);
        var declared = new ServerCapabilities(
            PositionEncodings.NameOf(workspace.Client.Encoding), new TextDocumentSyncOptions(OpenClose: true, TextDocumentSyncKind.Incremental, new SaveOptions(IncludeText: false)));
        return new InitializeResult(routes.Aggregate(declared, (can, route) => route.Declare(can)), new ServerInfo("hnote", version));
    }

    public object? Shutdown(object ignored)
    {
        lifecycle.ShutDown();
        return null;
    }

    public void DidOpen(DidOpenTextDocumentParams opened)
    {
        TextDocumentItem item = opened.TextDocument;
        state.Swap(current => current with
        {
            Open = current.Open.SetItem(item.Uri, new OpenNote(Document.Open(item.Uri, item.Version, new RulesFiles().Read(Uris.PathOf(item.Uri), item.Text ?? ""), current.Today), null)),
        });
        publisher.Look(item.Uri);
    }

    public void DidChange(DidChangeTextDocumentParams changed)
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
    }

    public void DidSave(DidSaveTextDocumentParams saved)
    {
        string uri = saved.TextDocument.Uri;
        state.Swap(current => current.Open.TryGetValue(uri, out OpenNote? note)
            ? current with { Open = current.Open.SetItem(uri, note with { Caret = null }) }
            : current);
        var rules = new RulesFiles();
        if (RulesFiles.IsRules(uri))
        {
            // they lie over every note below them
            state.Swap(current => current with { Open = current.Open.ToImmutableDictionary(pair => pair.Key, pair => Under(rules, pair.Key, pair.Value)) });
            events.ReadAgain();
            return;
        }

        // an include line may have come or gone
        state.Swap(current => current.Open.TryGetValue(uri, out OpenNote? note) && note.Document.Note.Included.Any() ? current with { Open = current.Open.SetItem(uri, Under(rules, uri, note)) } : current);
        publisher.Look(uri);
    }

    private static OpenNote Under(RulesFiles rules, string uri, OpenNote note) => note with { Document = note.Document.Under(rules.Over(Uris.PathOf(uri), note.Document.Note)) };

    public void DidClose(DidCloseTextDocumentParams closed)
    {
        string uri = closed.TextDocument.Uri;
        state.Swap(current => current with { Open = current.Open.Remove(uri) });
        publisher.Look(uri);
    }

    public void DidChangeWorkspaceFolders(DidChangeWorkspaceFoldersParams parameters)
    {
        state.Swap(current => current with { Folders = Folders.After(current.Folders, parameters.Event) });
        events.FoldersChanged();
    }

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
}
