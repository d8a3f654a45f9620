namespace HealthNotes.LanguageServer.Protocol;

/// <summary>3.17, Language Features, Find References Request.</summary>
internal sealed record ReferenceParams(TextDocumentIdentifier TextDocument, Position Position, ReferenceContext? Context = null);

/// <summary>3.17, Language Features, Find References Request, ReferenceContext.</summary>
internal sealed record ReferenceContext(bool IncludeDeclaration = true);

/// <summary>3.17, Language Features, Document Highlights Request, DocumentHighlight.</summary>
internal sealed record DocumentHighlight(Range Range, DocumentHighlightKind Kind);

/// <summary>3.17, Language Features, Document Highlights Request, DocumentHighlightKind.</summary>
internal enum DocumentHighlightKind
{
    Text = 1,
    Read = 2,
    Write = 3,
}

/// <summary>3.17, Language Features, Prepare Rename Request, its result.</summary>
internal sealed record PrepareRenameResult(Range Range, string Placeholder);

/// <summary>3.17, Language Features, Rename Request.</summary>
internal sealed record RenameParams(TextDocumentIdentifier TextDocument, Position Position, string NewName);

/// <summary>3.17, Language Features, Selection Range Request.</summary>
internal sealed record SelectionRangeParams(TextDocumentIdentifier TextDocument, Position[] Positions);

/// <summary>3.17, Language Features, Selection Range Request, SelectionRange.</summary>
internal sealed record SelectionRange(Range Range, SelectionRange? Parent = null);
