namespace HealthNotes.LanguageServer.Protocol;

// Records of the Language Server Protocol 3.17, those that this server uses and no others. Each names its section of the
// specification. What may be missing is nullable; null is not written.

/// <summary>3.17, Basic JSON Structures, Position: a place in units of the negotiated encoding.</summary>
internal readonly record struct Position(int Line, int Character);

/// <summary>3.17, Basic JSON Structures, Range: from <paramref name="Start"/> up to, not including, <paramref name="End"/>.</summary>
internal readonly record struct Range(Position Start, Position End);

/// <summary>3.17, Basic JSON Structures, Location.</summary>
internal sealed record Location(string Uri, Range Range);

/// <summary>3.17, Basic JSON Structures, TextDocumentItem.</summary>
internal sealed record TextDocumentItem(string Uri, string? LanguageId = null, int Version = 0, [property: System.Text.Json.Serialization.JsonConverter(typeof(LooseText))] string Text = "");

/// <summary>3.17, Basic JSON Structures, TextDocumentIdentifier.</summary>
internal sealed record TextDocumentIdentifier(string Uri);

/// <summary>3.17, Basic JSON Structures, VersionedTextDocumentIdentifier; the version is null where it is the file on disk.</summary>
internal sealed record VersionedTextDocumentIdentifier(string Uri, int? Version = null);

/// <summary>3.17, Basic JSON Structures, TextDocumentPositionParams; base of every request about a place.</summary>
internal sealed record TextDocumentPositionParams(TextDocumentIdentifier TextDocument, Position Position);

/// <summary>3.17, Basic JSON Structures, TextDocumentIdentifier as the only parameter of a request.</summary>
internal sealed record TextDocumentParams(TextDocumentIdentifier TextDocument);

/// <summary>3.17, Basic JSON Structures, TextEdit.</summary>
internal sealed record TextEdit(Range Range, string NewText);

/// <summary>3.17, Basic JSON Structures, TextDocumentEdit.</summary>
internal sealed record TextDocumentEdit(VersionedDocument TextDocument, TextEdit[] Edits);

/// <summary>3.17, Basic JSON Structures, OptionalVersionedTextDocumentIdentifier: its version is written even when it is null.</summary>
internal sealed record VersionedDocument(
    string Uri,
    [property: System.Text.Json.Serialization.JsonIgnore(Condition = System.Text.Json.Serialization.JsonIgnoreCondition.Never)] int? Version);

/// <summary>3.17, Basic JSON Structures, WorkspaceEdit: one of the two members, by what the client can do.</summary>
internal sealed record WorkspaceEdit(Dictionary<string, TextEdit[]>? Changes = null, TextDocumentEdit[]? DocumentChanges = null);

/// <summary>3.17, Basic JSON Structures, MarkupContent.</summary>
internal sealed record MarkupContent(string Kind, string Value);

/// <summary>3.17, Basic JSON Structures, MarkupKind.</summary>
internal static class MarkupKind
{
    public const string PlainText = "plaintext";
    public const string Markdown = "markdown";
}

/// <summary>3.17, Basic JSON Structures, Command.</summary>
internal sealed record Command(string Title, [property: System.Text.Json.Serialization.JsonPropertyName("command")] string Name, string[]? Arguments = null);
