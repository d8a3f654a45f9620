using System.Text.Json.Serialization;

namespace HealthNotes.LanguageServer.Protocol;

/// <summary>3.17, Basic JSON Structures, Diagnostic.</summary>
internal sealed record Diagnostic(Range Range, DiagnosticSeverity Severity, string Code, string Source, string Message)
{
    public CodeDescription? CodeDescription { get; init; }

    public DiagnosticTag[]? Tags { get; init; }

    public DiagnosticRelatedInformation[]? RelatedInformation { get; init; }

    public DiagnosticData? Data { get; init; }
}

/// <summary>3.17, Basic JSON Structures, CodeDescription: where the rule is described.</summary>
internal sealed record CodeDescription(string Href);

/// <summary>What a finding says beyond the fields of the protocol: its level by our own name, and the word that was most likely meant.</summary>
internal sealed record DiagnosticData(string Level, string? Nearest = null);

/// <summary>3.17, Basic JSON Structures, DiagnosticSeverity.</summary>
internal enum DiagnosticSeverity
{
    Error = 1,
    Warning = 2,
    Information = 3,
    Hint = 4,
}

/// <summary>3.17, Basic JSON Structures, DiagnosticTag.</summary>
internal enum DiagnosticTag
{
    Unnecessary = 1,
    Deprecated = 2,
}

/// <summary>3.17, Basic JSON Structures, DiagnosticRelatedInformation.</summary>
internal sealed record DiagnosticRelatedInformation(Location Location, string Message);

/// <summary>3.17, Language Features, PublishDiagnostics Notification.</summary>
internal sealed record PublishDiagnosticsParams(string Uri, int? Version, Diagnostic[] Diagnostics);

/// <summary>3.17, Language Features, Document Diagnostics.</summary>
internal sealed record DocumentDiagnosticParams(TextDocumentIdentifier TextDocument, string? Identifier = null, string? PreviousResultId = null);

/// <summary>3.17, Language Features, Document Diagnostics, full and unchanged report in one: unchanged has no items.</summary>
internal sealed record DocumentDiagnosticReport(string Kind, string ResultId, Diagnostic[]? Items = null);

/// <summary>3.17, Language Features, Document Diagnostics, DocumentDiagnosticReportKind.</summary>
internal static class DiagnosticReportKind
{
    public const string Full = "full";
    public const string Unchanged = "unchanged";
}

/// <summary>3.17, Language Features, Workspace Diagnostics.</summary>
internal sealed record WorkspaceDiagnosticParams(PreviousResultId[]? PreviousResultIds = null, string? Identifier = null);

/// <summary>3.17, Language Features, Workspace Diagnostics, PreviousResultId.</summary>
internal sealed record PreviousResultId(string Uri, string Value);

/// <summary>3.17, Language Features, Workspace Diagnostics, WorkspaceDiagnosticReport.</summary>
internal sealed record WorkspaceDiagnosticReport(WorkspaceDocumentDiagnosticReport[] Items);

/// <summary>3.17, Language Features, Workspace Diagnostics, WorkspaceDocumentDiagnosticReport; the version is written even when it is null.</summary>
internal sealed record WorkspaceDocumentDiagnosticReport(
    string Kind,
    string Uri,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.Never)] int? Version,
    string ResultId,
    Diagnostic[]? Items = null);
