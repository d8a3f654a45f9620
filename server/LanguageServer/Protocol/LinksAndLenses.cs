namespace HealthNotes.LanguageServer.Protocol;

/// <summary>3.17, Language Features, Document Link Request, DocumentLink.</summary>
internal sealed record DocumentLink(Range Range, string? Target = null, string? Tooltip = null);

/// <summary>3.17, Language Features, Code Lens Request, CodeLens.</summary>
internal sealed record CodeLens(Range Range, Command Command);
