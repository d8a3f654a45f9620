using System.Text.Json.Serialization;

namespace HealthNotes.LanguageServer.Protocol;

/// <summary>3.17, Document Synchronization, DidOpenTextDocument Notification.</summary>
internal sealed record DidOpenTextDocumentParams(TextDocumentItem TextDocument);

/// <summary>3.17, Document Synchronization, DidChangeTextDocument Notification.</summary>
internal sealed record DidChangeTextDocumentParams(VersionedTextDocumentIdentifier TextDocument, TextDocumentContentChangeEvent[] ContentChanges);

/// <summary>3.17, Document Synchronization, TextDocumentContentChangeEvent; without a range the text is the whole document.</summary>
internal sealed record TextDocumentContentChangeEvent(Range? Range = null, [property: JsonConverter(typeof(LooseText))] string Text = "");

/// <summary>3.17, Document Synchronization, DidSaveTextDocument Notification.</summary>
internal sealed record DidSaveTextDocumentParams(TextDocumentIdentifier TextDocument);

/// <summary>3.17, Document Synchronization, DidCloseTextDocument Notification.</summary>
internal sealed record DidCloseTextDocumentParams(TextDocumentIdentifier TextDocument);
