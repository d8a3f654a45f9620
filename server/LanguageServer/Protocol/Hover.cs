namespace HealthNotes.LanguageServer.Protocol;

/// <summary>3.17, Language Features, Hover Request, Hover.</summary>
internal sealed record Hover(MarkupContent Contents, Range? Range = null);
