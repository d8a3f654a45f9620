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
}
