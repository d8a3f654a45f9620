using System.Globalization;
using HealthNotes.LanguageServer.Convert;
using HealthNotes.LanguageServer.Protocol;
using HealthNotes.LanguageServer.State;

namespace HealthNotes.LanguageServer.Handlers;

/// <summary>3.17, Language Features, Pull Diagnostics.</summary>
internal static class DiagnosticHandler
{
    /// <summary>What a client needs to know that asks for findings.</summary>
    public static DiagnosticOptions Options { get; } = new(Findings.Source, InterFileDependencies: false, WorkspaceDiagnostics: true);

    /// <summary>The diagnostics of one document, unless the client has them already.</summary>
    public static DocumentDiagnosticReport Report(Workspace workspace, DocumentDiagnosticParams parameters, CancellationToken token)
    {
        Diagnostic[] diagnostics = workspace.Open.TryGetValue(parameters.TextDocument.Uri, out OpenNote? note) ? Findings.Of(note, workspace, token) : [];
        string id = IdOf(diagnostics);
        return id == parameters.PreviousResultId
            ? new DocumentDiagnosticReport(DiagnosticReportKind.Unchanged, id)
            : new DocumentDiagnosticReport(DiagnosticReportKind.Full, id, diagnostics);
    }

    /// <summary>The name of a result: what it says, so that nothing has to be remembered.</summary>
    public static string IdOf(Diagnostic[] diagnostics) => Fingerprint.Of(diagnostics).ToString("x16", CultureInfo.InvariantCulture);
}
