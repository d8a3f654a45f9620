namespace HealthNotes.LanguageServer.Protocol;

/// <summary>3.17, Language Features, Semantic Tokens, range request.</summary>
internal sealed record SemanticTokensRangeParams(TextDocumentIdentifier TextDocument, Range Range);

/// <summary>3.17, Language Features, Semantic Tokens, delta request.</summary>
internal sealed record SemanticTokensDeltaParams(TextDocumentIdentifier TextDocument, string? PreviousResultId = null);

/// <summary>
/// 3.17, Language Features, Semantic Tokens, SemanticTokens and SemanticTokensDelta in one: whichever of the two members is
/// there says which it is.
/// </summary>
internal sealed record SemanticTokens(string? ResultId, int[]? Data = null, SemanticTokensEdit[]? Edits = null);

/// <summary>3.17, Language Features, Semantic Tokens, SemanticTokensEdit.</summary>
internal sealed record SemanticTokensEdit(int Start, int DeleteCount, int[]? Data = null);
