using HealthNotes.Features.Formatting;
using HealthNotes.LanguageServer.Convert;
using HealthNotes.LanguageServer.Protocol;
using HealthNotes.LanguageServer.State;

namespace HealthNotes.LanguageServer.Handlers;

/// <summary>3.17, Language Features, Document Formatting, Range Formatting and On Type Formatting Requests.</summary>
internal static class FormattingHandler
{
    /// <summary>Only an Enter changes anything.</summary>
    public static DocumentOnTypeFormattingOptions OnTypeOptions { get; } = new("\n");

    /// <summary>Puts the whole note in order.</summary>
    public static TextEdit[] Whole(Workspace workspace, DocumentFormattingParams parameters, CancellationToken token) =>
        workspace.Find(parameters.TextDocument.Uri) is { } document
            ? Edits.Of(document, FormattingFeature.Whole(document), workspace.Client.Encoding)
            : [];

    /// <summary>Puts some lines in order.</summary>
    public static TextEdit[] InRange(Workspace workspace, DocumentRangeFormattingParams parameters, CancellationToken token) =>
        workspace.Find(parameters.TextDocument.Uri) is { } document
            ? Edits.Of(document, FormattingFeature.InRange(document, Places.Of(document, parameters.Range, workspace.Client.Encoding)), workspace.Client.Encoding)
            : [];

    /// <summary>What follows from a typed character.</summary>
    public static TextEdit[] OnType(Workspace workspace, DocumentOnTypeFormattingParams parameters, CancellationToken token) =>
        workspace.Find(parameters.TextDocument.Uri) is { } document
            ? Edits.Of(document, FormattingFeature.OnType(document, Places.Of(document, parameters.Position, workspace.Client.Encoding), parameters.Ch), workspace.Client.Encoding)
            : [];
}
