using HealthNotes.LanguageServer.Convert;
using HealthNotes.LanguageServer.Protocol;
using HealthNotes.LanguageServer.State;

namespace HealthNotes.LanguageServer.Handlers;

/// <summary>3.17, Language Features, Workspace Diagnostics.</summary>
internal static class WorkspaceDiagnosticHandler
{
    /// <summary>The diagnostics of every note in the client's folders and of those that are open.</summary>
    public static WorkspaceDiagnosticReport Report(Workspace workspace, WorkspaceDiagnosticParams parameters, CancellationToken token)
    {
        var had = new Dictionary<string, string>();
        foreach (PreviousResultId result in parameters.PreviousResultIds ?? [])
        {
            had[result.Uri] = result.Value;
        }

        var reports = new List<WorkspaceDocumentDiagnosticReport>();
        foreach ((string uri, OpenNote note) in workspace.Open)
        {
            token.ThrowIfCancellationRequested();
            reports.Add(Report(uri, note.Document.Version, Findings.Of(note, workspace, token), had));
        }

        foreach ((string uri, FolderNote note) in workspace.Notes.Where(note => !workspace.Open.ContainsKey(note.Key)))
        {
            reports.Add(Report(uri, null, note.Diagnostics, had));
        }

        // what is gone has nothing to be said about it any more
        reports.AddRange(had.Keys.Where(uri => !workspace.Open.ContainsKey(uri) && !workspace.Notes.ContainsKey(uri)).Select(uri => Report(uri, null, [], had)));
        return new WorkspaceDiagnosticReport([.. reports]);
    }

    private static WorkspaceDocumentDiagnosticReport Report(string uri, int? version, Diagnostic[] diagnostics, Dictionary<string, string> had)
    {
        string id = DiagnosticHandler.IdOf(diagnostics);
        return had.GetValueOrDefault(uri) == id
            ? new WorkspaceDocumentDiagnosticReport(DiagnosticReportKind.Unchanged, uri, version, id)
            : new WorkspaceDocumentDiagnosticReport(DiagnosticReportKind.Full, uri, version, id, diagnostics);
    }
}
