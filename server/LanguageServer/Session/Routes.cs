using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using HealthNotes.LanguageServer.Handlers;
using HealthNotes.LanguageServer.Protocol;
using HealthNotes.LanguageServer.Rpc;
using HealthNotes.LanguageServer.State;

namespace HealthNotes.LanguageServer.Session;

/// <summary>
/// Every message that the server knows, one line each: its name, the types of what it carries, its handler, and what it lets the client
/// know that the server can do. A change runs alone, in the
/// order of the messages, and waits for nothing. A read takes the workspace as it is when its turn comes, then runs free of the others.
/// </summary>
internal sealed class Routes(WorkspaceState state, Lifecycle lifecycle, Changes changes, FindingsPublisher publisher, Commands commands, ServerEvents events)
{
    private readonly PageHandler pages = new();
    private readonly TokenHandler tokens = new(new TokenCache());

    private static ProtocolJson Json => ProtocolJson.Default;

    public IEnumerable<Route> All =>
    [
        Request("initialize", Json.InitializeParams, Json.InitializeResult, given => changes.Initialize(given, All)),
        Change("initialized", Json.InitializedParams, _ => events.Ready()),
        Request("shutdown", Json.Object, Json.Object, changes.Shutdown),
        new("exit", IsRequest: false, (_, _) => { lifecycle.End(); return Route.Nothing; }),
        Change("$/setTrace", Json.SetTraceParams, events.SetTrace),
        Text("textDocument/didOpen", Json.DidOpenTextDocumentParams, changes.DidOpen),
        Text("textDocument/didChange", Json.DidChangeTextDocumentParams, changes.DidChange),
        Text("textDocument/didSave", Json.DidSaveTextDocumentParams, changes.DidSave),
        Text("textDocument/didClose", Json.DidCloseTextDocumentParams, changes.DidClose),
        Change("workspace/didChangeConfiguration", Json.DidChangeConfigurationParams, events.SettingsChanged),
        Change("workspace/didChangeWatchedFiles", Json.DidChangeWatchedFilesParams, events.FilesChanged),
        Change("workspace/didChangeWorkspaceFolders", Json.DidChangeWorkspaceFoldersParams, changes.DidChangeWorkspaceFolders).Can(can => can with { Workspace = can.Workspace with { WorkspaceFolders = new(Supported: true, ChangeNotifications: true) } }),
        Change("window/workDoneProgress/cancel", Json.WorkDoneProgressCancelParams, events.ProgressCancelled),
        Pull("textDocument/diagnostic", Json.DocumentDiagnosticParams, Json.DocumentDiagnosticReport, DiagnosticHandler.Report).Can(can => can with { DiagnosticProvider = state.Current.Client.PullsDiagnostics ? DiagnosticHandler.Options : null }),
        Pull("workspace/diagnostic", Json.WorkspaceDiagnosticParams, Json.WorkspaceDiagnosticReport, WorkspaceDiagnosticHandler.Report),
        Read("textDocument/completion", Json.TextDocumentPositionParams, Json.CompletionList, CompletionHandler.At).Can(can => can with { CompletionProvider = CompletionHandler.Options }),
        Read("completionItem/resolve", Json.CompletionItem, Json.CompletionItem, CompletionHandler.Resolve),
        Read("textDocument/codeAction", Json.CodeActionParams, Json.CodeActionArray, CodeActionHandler.At).Can(can => can with { CodeActionProvider = CodeActionHandler.Options }),
        Read("codeAction/resolve", Json.CodeAction, Json.CodeAction, CodeActionHandler.Resolve),
        Read("textDocument/hover", Json.TextDocumentPositionParams, Json.Hover, HoverHandler.At).Can(can => can with { HoverProvider = true }),
        Read("textDocument/signatureHelp", Json.SignatureHelpParams, Json.SignatureHelp, SignatureHandler.At).Can(can => can with { SignatureHelpProvider = new([" "]) }),
        Read("textDocument/inlayHint", Json.InlayHintParams, Json.InlayHintArray, InlayHintHandler.In).Can(can => can with { InlayHintProvider = new(ResolveProvider: false) }),
        Read("textDocument/codeLens", Json.TextDocumentParams, Json.CodeLensArray, CodeLensHandler.In).Can(can => can with { CodeLensProvider = new(ResolveProvider: false) }),
        Read("textDocument/definition", Json.TextDocumentPositionParams, Json.Location, NavigationHandler.Definition).Can(can => can with { DefinitionProvider = true }),
        Read("textDocument/references", Json.ReferenceParams, Json.LocationArray, NavigationHandler.References).Can(can => can with { ReferencesProvider = true }),
        Read("textDocument/documentHighlight", Json.TextDocumentPositionParams, Json.DocumentHighlightArray, NavigationHandler.Highlights).Can(can => can with { DocumentHighlightProvider = true }),
        Read("textDocument/prepareRename", Json.TextDocumentPositionParams, Json.PrepareRenameResult, NavigationHandler.PrepareRename),
        Read("textDocument/rename", Json.RenameParams, Json.WorkspaceEdit, NavigationHandler.Rename).Can(can => can with { RenameProvider = new(PrepareProvider: true) }),
        Read("textDocument/documentSymbol", Json.TextDocumentParams, Json.DocumentSymbolArray, SymbolHandler.Outline).Can(can => can with { DocumentSymbolProvider = true }),
        Read("workspace/symbol", Json.WorkspaceSymbolParams, Json.SymbolInformationArray, (now, wanted, stop) => SymbolHandler.Find(now, wanted, NoteFiles.NotOpen(now), stop)).Can(can => can with { WorkspaceSymbolProvider = true }),
        Read("textDocument/foldingRange", Json.TextDocumentParams, Json.FoldingRangeArray, SymbolHandler.Folding).Can(can => can with { FoldingRangeProvider = true }),
        Read("textDocument/selectionRange", Json.SelectionRangeParams, Json.SelectionRangeArray, SymbolHandler.Selections).Can(can => can with { SelectionRangeProvider = true }),
        Read("textDocument/formatting", Json.DocumentFormattingParams, Json.TextEditArray, FormattingHandler.Whole).Can(can => can with { DocumentFormattingProvider = true }),
        Read("textDocument/rangeFormatting", Json.DocumentRangeFormattingParams, Json.TextEditArray, FormattingHandler.InRange).Can(can => can with { DocumentRangeFormattingProvider = true }),
        Read("textDocument/onTypeFormatting", Json.DocumentOnTypeFormattingParams, Json.TextEditArray, FormattingHandler.OnType).Can(can => can with { DocumentOnTypeFormattingProvider = FormattingHandler.OnTypeOptions }),
        Read("textDocument/semanticTokens/full", Json.TextDocumentParams, Json.SemanticTokens, tokens.Full).Can(can => can with { SemanticTokensProvider = TokenHandler.Options }),
        Read("textDocument/semanticTokens/full/delta", Json.SemanticTokensDeltaParams, Json.SemanticTokens, tokens.Delta),
        Read("textDocument/semanticTokens/range", Json.SemanticTokensRangeParams, Json.SemanticTokens, TokenHandler.InRange),
        Read("textDocument/documentLink", Json.TextDocumentParams, Json.DocumentLinkArray, DocumentLinkHandler.In).Can(can => can with { DocumentLinkProvider = new(ResolveProvider: false) }),
        Read("workspace/willRenameFiles", Json.RenameFilesParams, Json.WorkspaceEdit, (now, wanted, stop) => FileRenameHandler.Follow(now, wanted, NoteFiles.NotOpen(now), stop)).Can(FileRenameHandler.Declare),
        Read("workspace/textDocumentContent", Json.TextDocumentContentParams, Json.TextDocumentContentResult, TextContentHandler.Of).Can(TextContentHandler.Declare),
        Read(PageHandler.Method, Json.PageParams, Json.PageResult, pages.Of),
        Read(DueHandler.Method, Json.DueParams, Json.DueResult, DueHandler.Of),
        Read(CheckHandler.Method, Json.TextDocumentParams, Json.CheckStepsResult, CheckHandler.StepsOf),
        ReadAsync("workspace/executeCommand", Json.ExecuteCommandParams, Json.String, commands.RunAsync).Can(can => can with { ExecuteCommandProvider = new(CommandNames.All) }),
    ];

    /// <summary>A request that changes something, answered before the next message is looked at.</summary>
    private static Route Request<TParams, TResult>(string method, JsonTypeInfo<TParams> from, JsonTypeInfo<TResult> to, Func<TParams, TResult?> handler)
        where TParams : class
        where TResult : class => new(method, IsRequest: true, (parameters, _) => Task.FromResult(Route.Result(handler(Route.Read(method, parameters, from)), to)));

    /// <summary>A read that also tells that the client asks for findings by itself.</summary>
    private Route Pull<TParams, TResult>(string method, JsonTypeInfo<TParams> from, JsonTypeInfo<TResult> to, Func<Workspace, TParams, CancellationToken, TResult?> handler)
        where TParams : class
        where TResult : class => Read(method, from, to, (now, parameters, token) =>
        {
            publisher.Pulled();
            return handler(now, parameters, token);
        });

    private Route Read<TParams, TResult>(string method, JsonTypeInfo<TParams> from, JsonTypeInfo<TResult> to, Func<Workspace, TParams, CancellationToken, TResult?> handler)
        where TParams : class
        where TResult : class => ReadAsync(method, from, to, (now, parameters, token) =>
        {
            TResult? result = handler(now, parameters, token);
            token.ThrowIfCancellationRequested();
            return Task.FromResult(result);
        });

    private Route ReadAsync<TParams, TResult>(string method, JsonTypeInfo<TParams> from, JsonTypeInfo<TResult> to, Func<Workspace, TParams, CancellationToken, Task<TResult?>> handler)
        where TParams : class
        where TResult : class => new(method, IsRequest: true, async (given, token) =>
        {
            lifecycle.RequireRunning();
            TParams parameters = Route.Read(method, given, from);
            Workspace now = state.Current;
            return Route.Result(await Task.Run(() => handler(now, parameters, token), token).ConfigureAwait(false), to);
        });

    /// <summary>
    /// Outside of the session a change is dropped. One that fails ends the session: from then on the client's text and ours
    /// would differ, and findings about another text are worse than none. Editors start a server that ended again.
    /// </summary>
    private Route Change<T>(string method, JsonTypeInfo<T> type, Action<T> change, Action<JsonElement>? unread = null)
        where T : class => new(method, IsRequest: false, (parameters, _) =>
        {
            if (!lifecycle.IsRunning)
            {
                return Route.Nothing;
            }

            try
            {
                change(Route.Read(method, parameters, type));
            }
            catch (RefusedRequestException) when (unread is not null)
            {
                events.Note($"{method} can't be read");
                unread(parameters);
            }
            catch (Exception fault) when (fault is not (OutOfMemoryException or RefusedRequestException))
            {
                events.Failed(method, fault);
                lifecycle.Fail();
            }

            return Route.Nothing;
        });

    /// <summary>
    /// A change of a text. When it can't be read, the client's text is no longer known: the note it names (any note, when it
    /// names none) counts as not checked, and the client is notified.
    /// </summary>
    private Route Text<T>(string method, JsonTypeInfo<T> type, Action<T> change)
        where T : class => Change(method, type, change, parameters => changes.LoseTrack(UriIn(parameters)));

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
}
