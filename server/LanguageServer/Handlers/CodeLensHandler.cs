using HealthNotes.Features.Lenses;
using HealthNotes.LanguageServer.Convert;
using HealthNotes.LanguageServer.Protocol;
using HealthNotes.LanguageServer.State;

namespace HealthNotes.LanguageServer.Handlers;

/// <summary>3.17, Language Features, Code Lens Request.</summary>
internal static class CodeLensHandler
{
    /// <summary>The lenses of a note.</summary>
    public static CodeLens[] In(Workspace workspace, TextDocumentParams parameters, CancellationToken token) =>
        workspace.Find(parameters.TextDocument.Uri) is { } document
            ? [.. LensFeature.In(document, workspace.Settings).Select(lens => CodeLenses.Of(document, lens, workspace.Client.Encoding))]
            : [];
}
