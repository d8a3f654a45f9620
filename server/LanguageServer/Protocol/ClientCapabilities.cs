namespace HealthNotes.LanguageServer.Protocol;

// 3.17, Lifecycle Messages, Initialize Request, ClientCapabilities: only what decides something here. Everything may be
// missing or null.

/// <summary>3.17, Initialize Request, ClientCapabilities.</summary>
internal sealed record ClientCapabilities(
    GeneralClientCapabilities? General = null,
    TextDocumentClientCapabilities? TextDocument = null,
    WorkspaceClientCapabilities? Workspace = null,
    WindowClientCapabilities? Window = null);

/// <summary>3.17, Initialize Request, ClientCapabilities.general.</summary>
internal sealed record GeneralClientCapabilities(string[]? PositionEncodings = null);

/// <summary>3.17, Initialize Request, TextDocumentClientCapabilities.</summary>
internal sealed record TextDocumentClientCapabilities(
    PublishDiagnosticsClientCapabilities? PublishDiagnostics = null,
    DynamicCapability? Diagnostic = null,
    CompletionClientCapabilities? Completion = null,
    HoverClientCapabilities? Hover = null,
    SignatureHelpClientCapabilities? SignatureHelp = null,
    DocumentSymbolClientCapabilities? DocumentSymbol = null,
    CodeActionClientCapabilities? CodeAction = null,
    RenameClientCapabilities? Rename = null,
    FoldingRangeClientCapabilities? FoldingRange = null,
    SemanticTokensClientCapabilities? SemanticTokens = null,
    InlayHintClientCapabilities? InlayHint = null,
    DocumentLinkClientCapabilities? DocumentLink = null);

/// <summary>3.17, PublishDiagnostics Notification, client capability.</summary>
internal sealed record PublishDiagnosticsClientCapabilities(
    bool? RelatedInformation = null, TagSupport? TagSupport = null, bool? VersionSupport = null, bool? CodeDescriptionSupport = null, bool? DataSupport = null);

/// <summary>3.17, PublishDiagnostics Notification, tagSupport; also of completion items.</summary>
internal sealed record TagSupport(int[]? ValueSet = null);

/// <summary>3.17, any capability of which only its being there, and dynamic registration, matters.</summary>
internal sealed record DynamicCapability(bool? DynamicRegistration = null, bool? RefreshSupport = null);

/// <summary>3.17, Completion Request, client capability.</summary>
internal sealed record CompletionClientCapabilities(CompletionItemClientCapabilities? CompletionItem = null, CompletionListClientCapabilities? CompletionList = null);

/// <summary>3.17, Completion Request, client capability, completionItem.</summary>
internal sealed record CompletionItemClientCapabilities(
    bool? SnippetSupport = null,
    string[]? DocumentationFormat = null,
    bool? DeprecatedSupport = null,
    TagSupport? TagSupport = null,
    bool? InsertReplaceSupport = null,
    ResolveSupport? ResolveSupport = null,
    bool? LabelDetailsSupport = null);

/// <summary>3.17, Completion Request, client capability, completionList.</summary>
internal sealed record CompletionListClientCapabilities(string[]? ItemDefaults = null);

/// <summary>3.17, resolveSupport of several requests: the properties that the client fetches later.</summary>
internal sealed record ResolveSupport(string[]? Properties = null);

/// <summary>3.17, Hover Request, client capability.</summary>
internal sealed record HoverClientCapabilities(string[]? ContentFormat = null);

/// <summary>3.17, Signature Help Request, client capability.</summary>
internal sealed record SignatureHelpClientCapabilities(SignatureInformationClientCapabilities? SignatureInformation = null);

/// <summary>3.17, Signature Help Request, client capability, signatureInformation.</summary>
internal sealed record SignatureInformationClientCapabilities(string[]? DocumentationFormat = null);

/// <summary>3.17, Document Symbols Request, client capability.</summary>
internal sealed record DocumentSymbolClientCapabilities(bool? HierarchicalDocumentSymbolSupport = null);

/// <summary>3.17, Code Action Request, client capability.</summary>
internal sealed record CodeActionClientCapabilities(
    CodeActionLiteralSupport? CodeActionLiteralSupport = null, bool? IsPreferredSupport = null, bool? DataSupport = null, ResolveSupport? ResolveSupport = null);

/// <summary>3.17, Code Action Request, client capability, codeActionLiteralSupport: only its being there matters.</summary>
internal sealed record CodeActionLiteralSupport;

/// <summary>3.17, Rename Request, client capability.</summary>
internal sealed record RenameClientCapabilities(bool? PrepareSupport = null);

/// <summary>3.17, Folding Range Request, client capability.</summary>
internal sealed record FoldingRangeClientCapabilities(int? RangeLimit = null);

/// <summary>3.17, Semantic Tokens, client capability.</summary>
internal sealed record SemanticTokensClientCapabilities(string[]? TokenTypes = null, string[]? TokenModifiers = null);

/// <summary>3.17, Inlay Hint Request, client capability.</summary>
internal sealed record InlayHintClientCapabilities(ResolveSupport? ResolveSupport = null);

/// <summary>3.17, Document Link Request, client capability.</summary>
internal sealed record DocumentLinkClientCapabilities(bool? TooltipSupport = null);

/// <summary>3.17, Initialize Request, ClientCapabilities.workspace.</summary>
internal sealed record WorkspaceClientCapabilities(
    bool? ApplyEdit = null,
    WorkspaceEditClientCapabilities? WorkspaceEdit = null,
    DynamicCapability? DidChangeConfiguration = null,
    DynamicCapability? DidChangeWatchedFiles = null,
    bool? WorkspaceFolders = null,
    bool? Configuration = null,
    DynamicCapability? SemanticTokens = null,
    DynamicCapability? CodeLens = null,
    DynamicCapability? InlayHint = null,
    DynamicCapability? Diagnostics = null,
    DynamicCapability? TextDocumentContent = null);

/// <summary>3.17, WorkspaceEdit, client capability.</summary>
internal sealed record WorkspaceEditClientCapabilities(bool? DocumentChanges = null);

/// <summary>3.17, Initialize Request, ClientCapabilities.window.</summary>
internal sealed record WindowClientCapabilities(bool? WorkDoneProgress = null, ShowDocumentClientCapabilities? ShowDocument = null);

/// <summary>3.17, Show Document Request, client capability.</summary>
internal sealed record ShowDocumentClientCapabilities(bool? Support = null);
