using HealthNotes.LanguageServer.Handlers;
using HealthNotes.LanguageServer.Protocol;
using HealthNotes.LanguageServer.State;

namespace HealthNotes.LanguageServer.Host;

/// <summary>Gives each question its snapshot and a thread.</summary>
internal sealed class Reads(WorkspaceState state, Lifecycle lifecycle) : IReads
{
    public Task<DocumentDiagnosticReport> Diagnostic(DocumentDiagnosticParams parameters, CancellationToken token) =>
        Answer(parameters, DiagnosticHandler.Report, token);

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
