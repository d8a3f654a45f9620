using HealthNotes.Features.Documents;
using HealthNotes.LanguageServer.Handlers;
using HealthNotes.LanguageServer.Protocol;
using HealthNotes.LanguageServer.State;

namespace HealthNotes.LanguageServer.Host;

/// <summary>Gives each question its snapshot and a thread.</summary>
internal sealed class Reads(WorkspaceState state, Lifecycle lifecycle, Commands commands) : IReads
{
    private readonly PageHandler pages = new();
    private readonly TokenHandler tokens = new(new TokenCache());

    public Task<DocumentDiagnosticReport> Diagnostic(DocumentDiagnosticParams parameters, CancellationToken token) => Answer(parameters, DiagnosticHandler.Report, token);

    public Task<WorkspaceDiagnosticReport> WorkspaceDiagnostic(WorkspaceDiagnosticParams parameters, CancellationToken token) => Answer(parameters, WorkspaceDiagnosticHandler.Report, token);

    public Task<CompletionList?> Completion(TextDocumentPositionParams parameters, CancellationToken token) => Answer(parameters, CompletionHandler.At, token);

    public Task<CompletionItem> CompletionItemResolve(CompletionItem parameters, CancellationToken token) => Answer(parameters, CompletionHandler.Resolve, token);

    public Task<CodeAction[]> CodeAction(CodeActionParams parameters, CancellationToken token) => Answer(parameters, CodeActionHandler.At, token);

    public Task<CodeAction> CodeActionResolve(CodeAction parameters, CancellationToken token) => Answer(parameters, CodeActionHandler.Resolve, token);

    public Task<Hover?> Hover(TextDocumentPositionParams parameters, CancellationToken token) => Answer(parameters, HoverHandler.At, token);

    public Task<InlayHint[]> InlayHint(InlayHintParams parameters, CancellationToken token) => Answer(parameters, InlayHintHandler.In, token);

    public Task<CodeLens[]> CodeLens(TextDocumentParams parameters, CancellationToken token) => Answer(parameters, CodeLensHandler.In, token);

    public Task<Location?> Definition(TextDocumentPositionParams parameters, CancellationToken token) => Answer(parameters, NavigationHandler.Definition, token);

    public Task<Location[]> References(ReferenceParams parameters, CancellationToken token) => Answer(parameters, NavigationHandler.References, token);

    public Task<DocumentHighlight[]> DocumentHighlight(TextDocumentPositionParams parameters, CancellationToken token) => Answer(parameters, NavigationHandler.Highlights, token);

    public Task<PrepareRenameResult?> PrepareRename(TextDocumentPositionParams parameters, CancellationToken token) => Answer(parameters, NavigationHandler.PrepareRename, token);

    public Task<WorkspaceEdit?> Rename(RenameParams parameters, CancellationToken token) => Answer(parameters, NavigationHandler.Rename, token);

    public Task<DocumentSymbol[]> DocumentSymbol(TextDocumentParams parameters, CancellationToken token) => Answer(parameters, SymbolHandler.Outline, token);

    public Task<SymbolInformation[]> WorkspaceSymbol(WorkspaceSymbolParams parameters, CancellationToken token) =>
        Answer(parameters, (snapshot, wanted, stop) => SymbolHandler.Find(snapshot, wanted, NotOpen(snapshot), stop), token);

    public Task<FoldingRange[]> FoldingRange(TextDocumentParams parameters, CancellationToken token) => Answer(parameters, SymbolHandler.Folding, token);

    public Task<SelectionRange[]> SelectionRange(SelectionRangeParams parameters, CancellationToken token) => Answer(parameters, SymbolHandler.Selections, token);

    public Task<TextEdit[]> Formatting(DocumentFormattingParams parameters, CancellationToken token) => Answer(parameters, FormattingHandler.Whole, token);

    public Task<TextEdit[]> RangeFormatting(DocumentRangeFormattingParams parameters, CancellationToken token) => Answer(parameters, FormattingHandler.InRange, token);

    public Task<TextEdit[]> OnTypeFormatting(DocumentOnTypeFormattingParams parameters, CancellationToken token) => Answer(parameters, FormattingHandler.OnType, token);

    public Task<SemanticTokens?> SemanticTokensFull(TextDocumentParams parameters, CancellationToken token) => Answer(parameters, tokens.Full, token);

    public Task<SemanticTokens?> SemanticTokensDelta(SemanticTokensDeltaParams parameters, CancellationToken token) => Answer(parameters, tokens.Delta, token);

    public Task<SemanticTokens?> SemanticTokensRange(SemanticTokensRangeParams parameters, CancellationToken token) => Answer(parameters, TokenHandler.InRange, token);

    public Task<DocumentLink[]> DocumentLink(TextDocumentParams parameters, CancellationToken token) => Answer(parameters, DocumentLinkHandler.In, token);

    public Task<PageResult?> Page(PageParams parameters, CancellationToken token) => Answer(parameters, pages.Of, token);

    public Task<string?> ExecuteCommand(ExecuteCommandParams parameters, CancellationToken token)
    {
        lifecycle.RequireRunning();
        Workspace snapshot = state.Current;
        return Task.Run(() => commands.RunAsync(snapshot, parameters), token);
    }

    /// <summary>The snapshot is taken here, in the order of the messages; what follows runs on the pool.</summary>
    private Task<TResult> Answer<TParams, TResult>(TParams parameters, Func<Workspace, TParams, CancellationToken, TResult> handler, CancellationToken token)
    {
        lifecycle.RequireRunning();
        Workspace snapshot = state.Current;
        return Task.Run(
            () =>
            {
                TResult result = handler(snapshot, parameters, token);
                token.ThrowIfCancellationRequested();
                return result;
            },
            token);
    }

    /// <summary>The notes of the folders that are not open, read now and let go of after.</summary>
    private static IEnumerable<Document> NotOpen(Workspace workspace) =>
        from uri in workspace.Notes.Keys
        where !workspace.Open.ContainsKey(uri)
        let text = NoteFiles.Read(uri)
        where text is not null
        select Document.Open(uri, 0, text, workspace.Today);
}
