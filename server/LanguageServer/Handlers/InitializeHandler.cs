using HealthNotes.Features.Tokens;
using HealthNotes.LanguageServer.Convert;
using HealthNotes.LanguageServer.Protocol;
using HealthNotes.LanguageServer.State;

namespace HealthNotes.LanguageServer.Handlers;

/// <summary>3.17, Lifecycle Messages, Initialize Request.</summary>
internal static class InitializeHandler
{
    /// <summary>The workspace as the client describes it; whatever it leaves out is not there.</summary>
    public static Workspace Apply(Workspace workspace, InitializeParams parameters) => workspace with
    {
        Client = ClientProfile.Of(parameters.Capabilities),
        Settings = ClientSettings.Of(parameters.InitializationOptions, workspace.Settings),
        Folders = Convert.Folders.Of(parameters),
    };

    /// <summary>What the server can do for this client.</summary>
    public static InitializeResult Answer(ClientProfile client, string version) => new(
        new ServerCapabilities(PositionEncodings.NameOf(client.Encoding), new TextDocumentSyncOptions(OpenClose: true, TextDocumentSyncKind.Incremental, new SaveOptions(IncludeText: false)))
        {
            DiagnosticProvider = client.PullsDiagnostics ? new DiagnosticOptions(Findings.Source, InterFileDependencies: false, WorkspaceDiagnostics: true) : null,
            CompletionProvider = new CompletionOptions(CompletionHandler.TriggerCharacters, ResolveProvider: true),
            HoverProvider = true,
            InlayHintProvider = new InlayHintOptions(ResolveProvider: false),
            DefinitionProvider = true,
            ReferencesProvider = true,
            DocumentHighlightProvider = true,
            RenameProvider = new RenameOptions(PrepareProvider: true),
            DocumentSymbolProvider = true,
            WorkspaceSymbolProvider = true,
            FoldingRangeProvider = true,
            SelectionRangeProvider = true,
            DocumentFormattingProvider = true,
            DocumentRangeFormattingProvider = true,
            DocumentOnTypeFormattingProvider = new DocumentOnTypeFormattingOptions(FormattingHandler.TriggerCharacter),
            SemanticTokensProvider = new SemanticTokensOptions(
                new SemanticTokensLegend([.. TokenLegend.Types], [.. TokenLegend.Modifiers]), Range: true, new SemanticTokensFullOptions(Delta: true)),
            DocumentLinkProvider = new DocumentLinkOptions(ResolveProvider: false),
            CodeLensProvider = new CodeLensOptions(ResolveProvider: false),
            CodeActionProvider = new CodeActionOptions([CodeActionKind.QuickFix, CodeActionKind.Rewrite, CodeActionKind.FixAllHere], ResolveProvider: true),
            ExecuteCommandProvider = new ExecuteCommandOptions(CommandNames.All),
            Workspace = new WorkspaceServerCapabilities(new WorkspaceFoldersServerCapabilities(Supported: true, ChangeNotifications: true)),
        },
        new ServerInfo("hnote", version));
}
