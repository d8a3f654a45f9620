using HealthNotes.LanguageServer.Protocol;

namespace HealthNotes.LanguageServer.State;

/// <summary>What the client said it can do, in the terms that decide something here. The client is asked for nothing else.</summary>
internal sealed record ClientProfile
{
    /// <summary>A client that said nothing.</summary>
    public static ClientProfile Plain { get; } = new();

    public PositionEncoding Encoding { get; init; } = PositionEncoding.Utf16;

    public bool PullsDiagnostics { get; init; }

    public bool RelatedInformation { get; init; }

    public bool DiagnosticTags { get; init; }

    public bool Snippets { get; init; }

    public bool MarkdownInCompletion { get; init; }

    public bool ResolvesDocumentation { get; init; }

    public bool MarkdownInHover { get; init; }

    public bool MarkdownInSignature { get; init; }

    public bool LinksRules { get; init; }

    public bool SymbolTree { get; init; }

    public bool CodeActionLiterals { get; init; }

    public bool CodeActionsResolveEdits { get; init; }

    public bool DocumentChanges { get; init; }

    public bool LinkTooltips { get; init; }

    public int FoldingLimit { get; init; } = int.MaxValue;

    public bool AppliesEdits { get; init; }

    public bool ShowsDocuments { get; init; }

    public bool HasConfiguration { get; init; }

    public bool RegistersWatchedFiles { get; init; }

    public bool RegistersConfiguration { get; init; }

    public bool ShowsProgress { get; init; }

    public bool RefreshesDiagnostics { get; init; }

    public bool RefreshesTokens { get; init; }

    public bool RefreshesHints { get; init; }

    public bool RefreshesLenses { get; init; }

    /// <summary>Reads the capabilities; whatever is missing is not there.</summary>
    public static ClientProfile Of(ClientCapabilities? capabilities)
    {
        TextDocumentClientCapabilities text = capabilities?.TextDocument ?? new TextDocumentClientCapabilities();
        WorkspaceClientCapabilities workspace = capabilities?.Workspace ?? new WorkspaceClientCapabilities();
        CompletionItemClientCapabilities item = text.Completion?.CompletionItem ?? new CompletionItemClientCapabilities();
        CodeActionClientCapabilities action = text.CodeAction ?? new CodeActionClientCapabilities();
        return new ClientProfile
        {
            Encoding = PositionEncodings.Negotiate(capabilities?.General?.PositionEncodings),
            PullsDiagnostics = text.Diagnostic is not null,
            RelatedInformation = text.PublishDiagnostics?.RelatedInformation == true,
            DiagnosticTags = text.PublishDiagnostics?.TagSupport is not null,
            Snippets = item.SnippetSupport == true,
            MarkdownInCompletion = item.DocumentationFormat?.Contains(MarkupKind.Markdown) == true,
            ResolvesDocumentation = item.ResolveSupport?.Properties?.Contains("documentation") == true,
            LinksRules = text.PublishDiagnostics?.CodeDescriptionSupport == true && workspace.TextDocumentContent is not null,
            MarkdownInSignature = text.SignatureHelp?.SignatureInformation?.DocumentationFormat?.Contains(MarkupKind.Markdown) == true,
            MarkdownInHover = text.Hover?.ContentFormat?.Contains(MarkupKind.Markdown) == true,
            SymbolTree = text.DocumentSymbol?.HierarchicalDocumentSymbolSupport == true,
            CodeActionLiterals = action.CodeActionLiteralSupport is not null,
            CodeActionsResolveEdits = action.DataSupport == true && action.ResolveSupport?.Properties?.Contains("edit") == true,
            DocumentChanges = workspace.WorkspaceEdit?.DocumentChanges == true,
            LinkTooltips = text.DocumentLink?.TooltipSupport == true,
            FoldingLimit = text.FoldingRange?.RangeLimit is > 0 and int limit ? limit : int.MaxValue,
            AppliesEdits = workspace.ApplyEdit == true,
            ShowsDocuments = capabilities?.Window?.ShowDocument?.Support == true,
            HasConfiguration = workspace.Configuration == true,
            RegistersWatchedFiles = workspace.DidChangeWatchedFiles?.DynamicRegistration == true,
            RegistersConfiguration = workspace.DidChangeConfiguration?.DynamicRegistration == true,
            ShowsProgress = capabilities?.Window?.WorkDoneProgress == true,
            RefreshesDiagnostics = workspace.Diagnostics?.RefreshSupport == true,
            RefreshesTokens = workspace.SemanticTokens?.RefreshSupport == true,
            RefreshesHints = workspace.InlayHint?.RefreshSupport == true,
            RefreshesLenses = workspace.CodeLens?.RefreshSupport == true,
        };
    }
}
