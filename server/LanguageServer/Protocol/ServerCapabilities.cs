namespace HealthNotes.LanguageServer.Protocol;

/// <summary>3.17, Lifecycle Messages, Initialize Request, ServerCapabilities.</summary>
internal sealed record ServerCapabilities(string PositionEncoding, TextDocumentSyncOptions TextDocumentSync)
{
    public DiagnosticOptions? DiagnosticProvider { get; init; }

    public CompletionOptions? CompletionProvider { get; init; }

    public bool? HoverProvider { get; init; }

    public SignatureHelpOptions? SignatureHelpProvider { get; init; }

    public bool? DefinitionProvider { get; init; }

    public bool? ReferencesProvider { get; init; }

    public bool? DocumentHighlightProvider { get; init; }

    public bool? DocumentSymbolProvider { get; init; }

    public CodeActionOptions? CodeActionProvider { get; init; }

    public CodeLensOptions? CodeLensProvider { get; init; }

    public DocumentLinkOptions? DocumentLinkProvider { get; init; }

    public bool? DocumentFormattingProvider { get; init; }

    public bool? DocumentRangeFormattingProvider { get; init; }

    public DocumentOnTypeFormattingOptions? DocumentOnTypeFormattingProvider { get; init; }

    public RenameOptions? RenameProvider { get; init; }

    public bool? FoldingRangeProvider { get; init; }

    public bool? SelectionRangeProvider { get; init; }

    public SemanticTokensOptions? SemanticTokensProvider { get; init; }

    public InlayHintOptions? InlayHintProvider { get; init; }

    public bool? WorkspaceSymbolProvider { get; init; }

    public ExecuteCommandOptions? ExecuteCommandProvider { get; init; }

    public WorkspaceServerCapabilities Workspace { get; init; } = new();
}

/// <summary>3.17, Document Synchronization, TextDocumentSyncOptions.</summary>
internal sealed record TextDocumentSyncOptions(bool OpenClose, TextDocumentSyncKind Change, SaveOptions Save);

/// <summary>3.17, Document Synchronization, TextDocumentSyncKind.</summary>
internal enum TextDocumentSyncKind
{
    None = 0,
    Full = 1,
    Incremental = 2,
}

/// <summary>3.17, Document Synchronization, DidSaveTextDocument Notification, SaveOptions.</summary>
internal sealed record SaveOptions(bool IncludeText);

/// <summary>3.17, Language Features, Pull Diagnostics, DiagnosticOptions.</summary>
internal sealed record DiagnosticOptions(string Identifier, bool InterFileDependencies, bool WorkspaceDiagnostics);

/// <summary>3.17, Language Features, Completion Request, CompletionOptions.</summary>
internal sealed record CompletionOptions(string[] TriggerCharacters, bool ResolveProvider);

/// <summary>3.17, Language Features, Code Action Request, CodeActionOptions.</summary>
internal sealed record CodeActionOptions(string[] CodeActionKinds, bool ResolveProvider);

/// <summary>3.17, Language Features, Code Lens Request, CodeLensOptions.</summary>
internal sealed record CodeLensOptions(bool ResolveProvider);

/// <summary>3.17, Language Features, Document Link Request, DocumentLinkOptions.</summary>
internal sealed record DocumentLinkOptions(bool ResolveProvider);

/// <summary>3.17, Language Features, Document on Type Formatting Request, DocumentOnTypeFormattingOptions.</summary>
internal sealed record DocumentOnTypeFormattingOptions(string FirstTriggerCharacter, string[]? MoreTriggerCharacter = null);

/// <summary>3.17, Language Features, Rename Request, RenameOptions.</summary>
internal sealed record RenameOptions(bool PrepareProvider);

/// <summary>3.17, Language Features, Semantic Tokens, SemanticTokensOptions.</summary>
internal sealed record SemanticTokensOptions(SemanticTokensLegend Legend, bool Range, SemanticTokensFullOptions Full);

/// <summary>3.17, Language Features, Semantic Tokens, SemanticTokensLegend.</summary>
internal sealed record SemanticTokensLegend(string[] TokenTypes, string[] TokenModifiers);

/// <summary>3.17, Language Features, Semantic Tokens, SemanticTokensOptions.full.</summary>
internal sealed record SemanticTokensFullOptions(bool Delta);

/// <summary>3.17, Language Features, Inlay Hint Request, InlayHintOptions.</summary>
internal sealed record InlayHintOptions(bool ResolveProvider);

/// <summary>3.17, Workspace Features, Execute a command, ExecuteCommandOptions.</summary>
internal sealed record ExecuteCommandOptions(string[] Commands);

/// <summary>3.17, Initialize Request, ServerCapabilities.workspace.</summary>
internal sealed record WorkspaceServerCapabilities(
    WorkspaceFoldersServerCapabilities? WorkspaceFolders = null, FileOperationOptions? FileOperations = null, TextDocumentContentOptions? TextDocumentContent = null);

/// <summary>3.17, Workspace Features, Workspace folders request, server capability.</summary>
internal sealed record WorkspaceFoldersServerCapabilities(bool Supported, bool ChangeNotifications);
