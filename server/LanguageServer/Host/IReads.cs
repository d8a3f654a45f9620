using HealthNotes.LanguageServer.Handlers;
using HealthNotes.LanguageServer.Protocol;
using PolyType;
using StreamJsonRpc;

namespace HealthNotes.LanguageServer.Host;

/// <summary>
/// The messages that ask something. Each takes the workspace as it is when its turn comes, then runs free of the others, and
/// can be cancelled.
/// </summary>
[JsonRpcContract]
[GenerateShape(IncludeMethods = MethodShapeFlags.PublicInstance)]
internal partial interface IReads
{
    [JsonRpcMethod("textDocument/diagnostic", UseSingleObjectParameterDeserialization = true)]
    Task<DocumentDiagnosticReport> Diagnostic(DocumentDiagnosticParams parameters, CancellationToken token);

    [JsonRpcMethod("workspace/diagnostic", UseSingleObjectParameterDeserialization = true)]
    Task<WorkspaceDiagnosticReport> WorkspaceDiagnostic(WorkspaceDiagnosticParams parameters, CancellationToken token);

    [JsonRpcMethod("textDocument/completion", UseSingleObjectParameterDeserialization = true)]
    Task<CompletionList?> Completion(TextDocumentPositionParams parameters, CancellationToken token);

    [JsonRpcMethod("completionItem/resolve", UseSingleObjectParameterDeserialization = true)]
    Task<CompletionItem> CompletionItemResolve(CompletionItem parameters, CancellationToken token);

    [JsonRpcMethod("textDocument/codeAction", UseSingleObjectParameterDeserialization = true)]
    Task<CodeAction[]> CodeAction(CodeActionParams parameters, CancellationToken token);

    [JsonRpcMethod("codeAction/resolve", UseSingleObjectParameterDeserialization = true)]
    Task<CodeAction> CodeActionResolve(CodeAction parameters, CancellationToken token);

    [JsonRpcMethod("workspace/executeCommand", UseSingleObjectParameterDeserialization = true)]
    Task<string?> ExecuteCommand(ExecuteCommandParams parameters, CancellationToken token);

    [JsonRpcMethod("textDocument/hover", UseSingleObjectParameterDeserialization = true)]
    Task<Hover?> Hover(TextDocumentPositionParams parameters, CancellationToken token);

    [JsonRpcMethod("textDocument/inlayHint", UseSingleObjectParameterDeserialization = true)]
    Task<InlayHint[]> InlayHint(InlayHintParams parameters, CancellationToken token);

    [JsonRpcMethod("textDocument/codeLens", UseSingleObjectParameterDeserialization = true)]
    Task<CodeLens[]> CodeLens(TextDocumentParams parameters, CancellationToken token);

    [JsonRpcMethod("textDocument/definition", UseSingleObjectParameterDeserialization = true)]
    Task<Location?> Definition(TextDocumentPositionParams parameters, CancellationToken token);

    [JsonRpcMethod("textDocument/references", UseSingleObjectParameterDeserialization = true)]
    Task<Location[]> References(ReferenceParams parameters, CancellationToken token);

    [JsonRpcMethod("textDocument/documentHighlight", UseSingleObjectParameterDeserialization = true)]
    Task<DocumentHighlight[]> DocumentHighlight(TextDocumentPositionParams parameters, CancellationToken token);

    [JsonRpcMethod("textDocument/prepareRename", UseSingleObjectParameterDeserialization = true)]
    Task<PrepareRenameResult?> PrepareRename(TextDocumentPositionParams parameters, CancellationToken token);

    [JsonRpcMethod("textDocument/rename", UseSingleObjectParameterDeserialization = true)]
    Task<WorkspaceEdit?> Rename(RenameParams parameters, CancellationToken token);

    [JsonRpcMethod("textDocument/documentSymbol", UseSingleObjectParameterDeserialization = true)]
    Task<DocumentSymbol[]> DocumentSymbol(TextDocumentParams parameters, CancellationToken token);

    [JsonRpcMethod("workspace/symbol", UseSingleObjectParameterDeserialization = true)]
    Task<SymbolInformation[]> WorkspaceSymbol(WorkspaceSymbolParams parameters, CancellationToken token);

    [JsonRpcMethod("textDocument/foldingRange", UseSingleObjectParameterDeserialization = true)]
    Task<FoldingRange[]> FoldingRange(TextDocumentParams parameters, CancellationToken token);

    [JsonRpcMethod("textDocument/selectionRange", UseSingleObjectParameterDeserialization = true)]
    Task<SelectionRange[]> SelectionRange(SelectionRangeParams parameters, CancellationToken token);

    [JsonRpcMethod("textDocument/formatting", UseSingleObjectParameterDeserialization = true)]
    Task<TextEdit[]> Formatting(DocumentFormattingParams parameters, CancellationToken token);

    [JsonRpcMethod("textDocument/rangeFormatting", UseSingleObjectParameterDeserialization = true)]
    Task<TextEdit[]> RangeFormatting(DocumentRangeFormattingParams parameters, CancellationToken token);

    [JsonRpcMethod("textDocument/onTypeFormatting", UseSingleObjectParameterDeserialization = true)]
    Task<TextEdit[]> OnTypeFormatting(DocumentOnTypeFormattingParams parameters, CancellationToken token);

    [JsonRpcMethod("textDocument/semanticTokens/full", UseSingleObjectParameterDeserialization = true)]
    Task<SemanticTokens?> SemanticTokensFull(TextDocumentParams parameters, CancellationToken token);

    [JsonRpcMethod("textDocument/semanticTokens/full/delta", UseSingleObjectParameterDeserialization = true)]
    Task<SemanticTokens?> SemanticTokensDelta(SemanticTokensDeltaParams parameters, CancellationToken token);

    [JsonRpcMethod("textDocument/semanticTokens/range", UseSingleObjectParameterDeserialization = true)]
    Task<SemanticTokens?> SemanticTokensRange(SemanticTokensRangeParams parameters, CancellationToken token);

    [JsonRpcMethod("textDocument/documentLink", UseSingleObjectParameterDeserialization = true)]
    Task<DocumentLink[]> DocumentLink(TextDocumentParams parameters, CancellationToken token);

    [JsonRpcMethod(PageHandler.Method, UseSingleObjectParameterDeserialization = true)]
    Task<PageResult?> Page(PageParams parameters, CancellationToken token);
}
