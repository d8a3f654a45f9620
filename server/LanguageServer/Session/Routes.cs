using System.Text.Json;
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

    public IEnumerable<Route> All =>
    [
        Request<InitializeParams, InitializeResult>("initialize", given => changes.Initialize(given, All)),
        Change<InitializedParams>("initialized", _ => events.Ready()),
        Request<object, object>("shutdown", changes.Shutdown),
        new("exit", IsRequest: false, (_, _) => { lifecycle.End(); return Route.Nothing; }),
        Change<SetTraceParams>("$/setTrace", events.SetTrace),
        Text<DidOpenTextDocumentParams>("textDocument/didOpen", changes.DidOpen),
        Text<DidChangeTextDocumentParams>("textDocument/didChange", changes.DidChange),
        Text<DidSaveTextDocumentParams>("textDocument/didSave", changes.DidSave),
        Text<DidCloseTextDocumentParams>("textDocument/didClose", changes.DidClose),
        Change<DidChangeConfigurationParams>("workspace/didChangeConfiguration", events.SettingsChanged),
        Change<DidChangeWatchedFilesParams>("workspace/didChangeWatchedFiles", events.FilesChanged),
        Change<DidChangeWorkspaceFoldersParams>("workspace/didChangeWorkspaceFolders", changes.DidChangeWorkspaceFolders).Can(can => can with { Workspace = can.Workspace with { WorkspaceFolders = new(Supported: true, ChangeNotifications: true) } }),
        Change<WorkDoneProgressCancelParams>("window/workDoneProgress/cancel", events.ProgressCancelled),
        Pull<DocumentDiagnosticParams, DocumentDiagnosticReport>("textDocument/diagnostic", DiagnosticHandler.Report).Can(can => can with { DiagnosticProvider = state.Current.Client.PullsDiagnostics ? DiagnosticHandler.Options : null }),
        Pull<WorkspaceDiagnosticParams, WorkspaceDiagnosticReport>("workspace/diagnostic", WorkspaceDiagnosticHandler.Report),
        Read<TextDocumentPositionParams, CompletionList>("textDocument/completion", CompletionHandler.At).Can(can => can with { CompletionProvider = CompletionHandler.Options }),
        Read<CompletionItem, CompletionItem>("completionItem/resolve", CompletionHandler.Resolve),
        Read<CodeActionParams, CodeAction[]>("textDocument/codeAction", CodeActionHandler.At).Can(can => can with { CodeActionProvider = CodeActionHandler.Options }),
        Read<CodeAction, CodeAction>("codeAction/resolve", CodeActionHandler.Resolve),
        Read<TextDocumentPositionParams, Hover>("textDocument/hover", HoverHandler.At).Can(can => can with { HoverProvider = true }),
        Read<SignatureHelpParams, SignatureHelp>("textDocument/signatureHelp", SignatureHandler.At).Can(can => can with { SignatureHelpProvider = new([" "]) }),
        Read<InlayHintParams, InlayHint[]>("textDocument/inlayHint", InlayHintHandler.In).Can(can => can with { InlayHintProvider = new(ResolveProvider: false) }),
        Read<TextDocumentParams, CodeLens[]>("textDocument/codeLens", CodeLensHandler.In).Can(can => can with { CodeLensProvider = new(ResolveProvider: false) }),
        Read<TextDocumentPositionParams, Location>("textDocument/definition", NavigationHandler.Definition).Can(can => can with { DefinitionProvider = true }),
        Read<ReferenceParams, Location[]>("textDocument/references", NavigationHandler.References).Can(can => can with { ReferencesProvider = true }),
        Read<TextDocumentPositionParams, DocumentHighlight[]>("textDocument/documentHighlight", NavigationHandler.Highlights).Can(can => can with { DocumentHighlightProvider = true }),
        Read<TextDocumentPositionParams, PrepareRenameResult>("textDocument/prepareRename", NavigationHandler.PrepareRename),
        Read<RenameParams, WorkspaceEdit>("textDocument/rename", NavigationHandler.Rename).Can(can => can with { RenameProvider = new(PrepareProvider: true) }),
        Read<TextDocumentParams, DocumentSymbol[]>("textDocument/documentSymbol", SymbolHandler.Outline).Can(can => can with { DocumentSymbolProvider = true }),
        Read<WorkspaceSymbolParams, SymbolInformation[]>("workspace/symbol", (now, wanted, stop) => SymbolHandler.Find(now, wanted, NoteFiles.NotOpen(now), stop)).Can(can => can with { WorkspaceSymbolProvider = true }),
        Read<TextDocumentParams, FoldingRange[]>("textDocument/foldingRange", SymbolHandler.Folding).Can(can => can with { FoldingRangeProvider = true }),
        Read<SelectionRangeParams, SelectionRange[]>("textDocument/selectionRange", SymbolHandler.Selections).Can(can => can with { SelectionRangeProvider = true }),
        Read<DocumentFormattingParams, TextEdit[]>("textDocument/formatting", FormattingHandler.Whole).Can(can => can with { DocumentFormattingProvider = true }),
        Read<DocumentRangeFormattingParams, TextEdit[]>("textDocument/rangeFormatting", FormattingHandler.InRange).Can(can => can with { DocumentRangeFormattingProvider = true }),
        Read<DocumentOnTypeFormattingParams, TextEdit[]>("textDocument/onTypeFormatting", FormattingHandler.OnType).Can(can => can with { DocumentOnTypeFormattingProvider = FormattingHandler.OnTypeOptions }),
        Read<TextDocumentParams, SemanticTokens>("textDocument/semanticTokens/full", tokens.Full).Can(can => can with { SemanticTokensProvider = TokenHandler.Options }),
        Read<SemanticTokensDeltaParams, SemanticTokens>("textDocument/semanticTokens/full/delta", tokens.Delta),
        Read<SemanticTokensRangeParams, SemanticTokens>("textDocument/semanticTokens/range", TokenHandler.InRange),
        Read<TextDocumentParams, DocumentLink[]>("textDocument/documentLink", DocumentLinkHandler.In).Can(can => can with { DocumentLinkProvider = new(ResolveProvider: false) }),
        Read<RenameFilesParams, WorkspaceEdit>("workspace/willRenameFiles", (now, wanted, stop) => FileRenameHandler.Follow(now, wanted, NoteFiles.NotOpen(now), stop)).Can(FileRenameHandler.Declare),
        Read<TextDocumentContentParams, TextDocumentContentResult>("workspace/textDocumentContent", TextContentHandler.Of).Can(TextContentHandler.Declare),
        Read<PageParams, PageResult>(PageHandler.Method, pages.Of),
        Read<DueParams, DueResult>(DueHandler.Method, DueHandler.Of),
        Read<TextDocumentParams, CheckStepsResult>(CheckHandler.Method, CheckHandler.StepsOf),
        ReadAsync<ExecuteCommandParams, string>("workspace/executeCommand", commands.RunAsync).Can(can => can with { ExecuteCommandProvider = new(CommandNames.All) }),
    ];

    /// <summary>A request that changes something, answered before the next message is looked at.</summary>
    private static Route Request<TParams, TResult>(string method, Func<TParams, TResult?> handler)
        where TParams : class
        where TResult : class => new(method, IsRequest: true, (parameters, _) => Task.FromResult(Route.Result(handler(Route.Read<TParams>(method, parameters)))));

    /// <summary>A read that also tells that the client asks for findings by itself.</summary>
    private Route Pull<TParams, TResult>(string method, Func<Workspace, TParams, CancellationToken, TResult?> handler)
        where TParams : class
        where TResult : class => Read<TParams, TResult>(method, (now, parameters, token) =>
        {
            publisher.Pulled();
            return handler(now, parameters, token);
        });

    private Route Read<TParams, TResult>(string method, Func<Workspace, TParams, CancellationToken, TResult?> handler)
        where TParams : class
        where TResult : class => ReadAsync<TParams, TResult>(method, (now, parameters, token) =>
        {
            TResult? result = handler(now, parameters, token);
            token.ThrowIfCancellationRequested();
            return Task.FromResult(result);
        });

    private Route ReadAsync<TParams, TResult>(string method, Func<Workspace, TParams, CancellationToken, Task<TResult?>> handler)
        where TParams : class
        where TResult : class => new(method, IsRequest: true, async (given, token) =>
        {
            lifecycle.RequireRunning();
            TParams parameters = Route.Read<TParams>(method, given);
            Workspace now = state.Current;
            return Route.Result(await Task.Run(() => handler(now, parameters, token), token).ConfigureAwait(false));
        });

    /// <summary>
    /// Outside of the session a change is dropped. One that fails ends the session: from then on the client's text and ours
    /// would differ, and findings about another text are worse than none. Editors start a server that ended again.
    /// </summary>
    private Route Change<T>(string method, Action<T> change, Action<JsonElement>? unread = null)
        where T : class => new(method, IsRequest: false, (parameters, _) =>
        {
            if (!lifecycle.IsRunning)
            {
                return Route.Nothing;
            }

            try
            {
                change(Route.Read<T>(method, parameters));
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
    private Route Text<T>(string method, Action<T> change)
        where T : class => Change(method, change, parameters => changes.LoseTrack(UriIn(parameters)));

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
