namespace HealthNotes.LanguageServer.Protocol;

/// <summary>3.17, Language Features, Code Action Request.</summary>
internal sealed record CodeActionParams(TextDocumentIdentifier TextDocument, Range Range, CodeActionContext? Context = null);

/// <summary>3.17, Language Features, Code Action Request, CodeActionContext. The diagnostics it carries are not read: ours are known.</summary>
internal sealed record CodeActionContext(string[]? Only = null, CodeActionTriggerKind? TriggerKind = null);

/// <summary>3.17, Language Features, Code Action Request, CodeActionTriggerKind.</summary>
internal enum CodeActionTriggerKind
{
    Invoked = 1,
    Automatic = 2,
}

/// <summary>3.17, Language Features, Code Action Request, CodeAction. It comes back as it was sent when the client wants it resolved.</summary>
internal sealed record CodeAction(string Title)
{
    public string? Kind { get; init; }

    public Diagnostic[]? Diagnostics { get; init; }

    public bool? IsPreferred { get; init; }

    public WorkspaceEdit? Edit { get; init; }

    public CodeActionData? Data { get; init; }
}

/// <summary>What names an action when its edit is to be worked out.</summary>
internal sealed record CodeActionData(string Uri, int Version, string Key);

/// <summary>3.17, Language Features, Code Action Request, CodeActionKind: those used.</summary>
internal static class CodeActionKind
{
    public const string QuickFix = "quickfix";
    public const string Rewrite = "refactor.rewrite";
    public const string FixAll = "source.fixAll";
    public const string FixAllHere = "source.fixAll.hnote";
}
