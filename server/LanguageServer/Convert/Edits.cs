using System.Collections.Immutable;
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
    public static WorkspaceEdit InWorkspace(Document document, ImmutableArray<DocumentEdit> edits, ClientProfile client) =>
        InWorkspace([new NoteEdits(document, document.Version, edits)], client);

    /// <summary>The same for several documents.</summary>
    public static WorkspaceEdit InWorkspace(IEnumerable<NoteEdits> notes, ClientProfile client) => client.DocumentChanges
        ? new WorkspaceEdit(DocumentChanges: [.. notes.Select(note => new TextDocumentEdit(new VersionedDocument(note.Document.Uri, note.Version), Of(note.Document, note.Edits, client.Encoding)))])
        : new WorkspaceEdit(Changes: notes.ToDictionary(note => note.Document.Uri, note => Of(note.Document, note.Edits, client.Encoding)));
}

/// <summary>Edits of one document; without a version where it is not open.</summary>
internal sealed record NoteEdits(Document Document, int? Version, ImmutableArray<DocumentEdit> Edits);
