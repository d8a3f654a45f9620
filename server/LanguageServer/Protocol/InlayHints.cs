namespace HealthNotes.LanguageServer.Protocol;

/// <summary>3.17, Language Features, Inlay Hint Request.</summary>
internal sealed record InlayHintParams(TextDocumentIdentifier TextDocument, Range Range);

/// <summary>3.17, Language Features, Inlay Hint Request, InlayHint; its label is plain text.</summary>
internal sealed record InlayHint(Position Position, string Label)
{
    public InlayHintKind? Kind { get; init; }

    public MarkupContent? Tooltip { get; init; }

    public bool? PaddingLeft { get; init; }

    public bool? PaddingRight { get; init; }
}

/// <summary>3.17, Language Features, Inlay Hint Request, InlayHintKind.</summary>
internal enum InlayHintKind
{
    Type = 1,
    Parameter = 2,
}
