using HealthNotes.LanguageServer.Handlers;
using HealthNotes.LanguageServer.Protocol;
using HealthNotes.LanguageServer.State;

namespace HealthNotes.LanguageServer.Host;

/// <summary>Gives each question its snapshot and a thread.</summary>
internal sealed class Reads(WorkspaceState state, Lifecycle lifecycle, Commands commands) : IReads
{
    public Task<DocumentDiagnosticReport> Diagnostic(DocumentDiagnosticParams parameters, CancellationToken token) => Answer(parameters, DiagnosticHandler.Report, token);

    public Task<WorkspaceDiagnosticReport> WorkspaceDiagnostic(WorkspaceDiagnosticParams parameters, CancellationToken token) => Answer(parameters, WorkspaceDiagnosticHandler.Report, token);

    public Task<CompletionList?> Completion(TextDocumentPositionParams parameters, CancellationToken token) => Answer(parameters, CompletionHandler.At, token);

    public Task<CompletionItem> CompletionItemResolve(CompletionItem parameters, CancellationToken token) => Answer(parameters, CompletionHandler.Resolve, token);

    public Task<CodeAction[]> CodeAction(CodeActionParams parameters, CancellationToken token) => Answer(parameters, CodeActionHandler.At, token);

    public Task<CodeAction> CodeActionResolve(CodeAction parameters, CancellationToken token) => Answer(parameters, CodeActionHandler.Resolve, token);

    public Task<Hover?> Hover(TextDocumentPositionParams parameters, CancellationToken token) => Answer(parameters, HoverHandler.At, token);

    public Task<InlayHint[]> InlayHint(InlayHintParams parameters, CancellationToken token) => Answer(parameters, InlayHintHandler.In, token);

    public Task<CodeLens[]> CodeLens(TextDocumentParams parameters, CancellationToken token) => Answer(parameters, CodeLensHandler.In, token);

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
}
