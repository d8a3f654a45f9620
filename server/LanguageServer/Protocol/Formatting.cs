namespace HealthNotes.LanguageServer.Protocol;

/// <summary>3.17, Language Features, Document Formatting Request.</summary>
internal sealed record DocumentFormattingParams(TextDocumentIdentifier TextDocument, FormattingOptions? Options = null);

/// <summary>3.17, Language Features, Document Range Formatting Request.</summary>
internal sealed record DocumentRangeFormattingParams(TextDocumentIdentifier TextDocument, Range Range, FormattingOptions? Options = null);

/// <summary>3.17, Language Features, Document on Type Formatting Request.</summary>
internal sealed record DocumentOnTypeFormattingParams(TextDocumentIdentifier TextDocument, Position Position, string Ch = "", FormattingOptions? Options = null);

/// <summary>3.17, Language Features, Document Formatting Request, FormattingOptions; the notation has one form, so none is read.</summary>
internal sealed record FormattingOptions;
