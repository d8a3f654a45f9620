using HealthNotes.Features.Documents;
using HealthNotes.Features.Navigation;
using HealthNotes.LanguageServer.Convert;
using HealthNotes.LanguageServer.Protocol;
using HealthNotes.LanguageServer.State;

namespace HealthNotes.LanguageServer.Handlers;

/// <summary>3.17, Language Features, Goto Definition, Find References, Document Highlights and Rename Requests.</summary>
internal static class NavigationHandler
{
    /// <summary>Where the thing at the place is introduced.</summary>
    public static Location? Definition(Workspace workspace, TextDocumentPositionParams parameters, CancellationToken token) =>
        workspace.Find(parameters.TextDocument.Uri) is { } document && NavigationFeature.Definition(document, PlaceOf(workspace, document, parameters.Position)) is { } range
            ? LocationOf(workspace, document, range)
            : null;

    /// <summary>Where else it is named.</summary>
    public static Location[] References(Workspace workspace, ReferenceParams parameters, CancellationToken token) =>
        workspace.Find(parameters.TextDocument.Uri) is { } document
            ? [.. NavigationFeature.References(document, PlaceOf(workspace, document, parameters.Position), parameters.Context?.IncludeDeclaration ?? true)
                .Select(range => LocationOf(workspace, document, range))]
            : [];

    /// <summary>The same, to be marked in the text.</summary>
    public static DocumentHighlight[] Highlights(Workspace workspace, TextDocumentPositionParams parameters, CancellationToken token) =>
        workspace.Find(parameters.TextDocument.Uri) is { } document
            ? [.. NavigationFeature.Highlights(document, PlaceOf(workspace, document, parameters.Position)).Select(found => new DocumentHighlight(
                Positions.Of(document, found.Range, workspace.Client.Encoding), found.Introduces ? DocumentHighlightKind.Write : DocumentHighlightKind.Read))]
            : [];

    /// <summary>What a rename here would rename.</summary>
    public static PrepareRenameResult? PrepareRename(Workspace workspace, TextDocumentPositionParams parameters, CancellationToken token) =>
        workspace.Find(parameters.TextDocument.Uri) is { } document && NavigationFeature.PrepareRename(document, PlaceOf(workspace, document, parameters.Position)) is { } target
            ? new PrepareRenameResult(Positions.Of(document, target.Range, workspace.Client.Encoding), target.Name)
            : null;

    /// <summary>Renames it in all its lines, or says why not.</summary>
    public static WorkspaceEdit? Rename(Workspace workspace, RenameParams parameters, CancellationToken token)
    {
        if (workspace.Find(parameters.TextDocument.Uri) is not { } document)
        {
            return null;
        }

        RenameResult result = NavigationFeature.Rename(document, PlaceOf(workspace, document, parameters.Position), parameters.NewName);
        return result.Refusal is { } why ? throw new RefusedRequestException(ErrorCodes.RequestFailed, why) : Edits.InWorkspace(document, result.Edits, workspace.Client);
    }

    private static Place PlaceOf(Workspace workspace, Document document, Position position) => Places.Of(document, position, workspace.Client.Encoding);

    private static Location LocationOf(Workspace workspace, Document document, PlaceRange range) =>
        new(document.Uri, Positions.Of(document, range, workspace.Client.Encoding));
}
