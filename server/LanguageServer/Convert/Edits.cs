using HealthNotes.Features.Documents;
using HealthNotes.LanguageServer.Protocol;
using HealthNotes.LanguageServer.State;

namespace HealthNotes.LanguageServer.Convert;

/// <summary>From our edits to the client's.</summary>
internal static class Edits
{
    /// <summary>One edit.</summary>
    public static TextEdit Of(Document document, DocumentEdit edit, PositionEncoding encoding) =>
        new(Positions.Of(document, edit.Range, encoding), edit.NewText);

    /// <summary>Several edits.</summary>
    public static TextEdit[] Of(Document document, IEnumerable<DocumentEdit> edits, PositionEncoding encoding) =>
        [.. edits.Select(edit => Of(document, edit, encoding))];

    /// <summary>Edits of one document as a change to the workspace, with the version they are meant for where the client reads it.</summary>
    public static WorkspaceEdit InWorkspace(Document document, IEnumerable<DocumentEdit> edits, ClientProfile client)
    {
        TextEdit[] texts = Of(document, edits, client.Encoding);
        return client.DocumentChanges
            ? new WorkspaceEdit(DocumentChanges: [new TextDocumentEdit(new VersionedDocument(document.Uri, document.Version), texts)])
            : new WorkspaceEdit(Changes: new Dictionary<string, TextEdit[]> { [document.Uri] = texts });
    }
}
