using System.Text.Json;
using System.Text.Json.Serialization;
using StreamJsonRpc;
using StreamJsonRpc.Protocol;

namespace HealthNotes.LanguageServer.Protocol;

/// <summary>
/// Reads and writes the records without reflection. <see cref="RequestId"/> and <see cref="CommonErrorData"/> are the
/// library's: without the first a cancellation is ignored in silence, without the second an error ends the connection.
/// </summary>
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase,
    DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
    RespectNullableAnnotations = true,
    RespectRequiredConstructorParameters = true,
    Converters = [typeof(LooseInt)],
    GenerationMode = JsonSourceGenerationMode.Metadata)]
[JsonSerializable(typeof(RequestId))]
[JsonSerializable(typeof(CommonErrorData))]
[JsonSerializable(typeof(JsonElement))]
[JsonSerializable(typeof(InitializeParams))]
[JsonSerializable(typeof(InitializeResult))]
[JsonSerializable(typeof(InitializedParams))]
[JsonSerializable(typeof(SetTraceParams))]
[JsonSerializable(typeof(LogTraceParams))]
[JsonSerializable(typeof(RegistrationParams))]
[JsonSerializable(typeof(DidOpenTextDocumentParams))]
[JsonSerializable(typeof(DidChangeTextDocumentParams))]
[JsonSerializable(typeof(DidSaveTextDocumentParams))]
[JsonSerializable(typeof(DidCloseTextDocumentParams))]
[JsonSerializable(typeof(PublishDiagnosticsParams))]
[JsonSerializable(typeof(DocumentDiagnosticParams))]
[JsonSerializable(typeof(DocumentDiagnosticReport))]
[JsonSerializable(typeof(WorkspaceDiagnosticParams))]
[JsonSerializable(typeof(WorkspaceDiagnosticReport))]
[JsonSerializable(typeof(MessageParams))]
[JsonSerializable(typeof(ConfigurationParams))]
[JsonSerializable(typeof(DidChangeConfigurationParams))]
[JsonSerializable(typeof(DidChangeWatchedFilesParams))]
[JsonSerializable(typeof(DidChangeWorkspaceFoldersParams))]
[JsonSerializable(typeof(WorkDoneProgressCancelParams))]
[JsonSerializable(typeof(WorkDoneProgressCreateParams))]
[JsonSerializable(typeof(ProgressParams))]
[JsonSerializable(typeof(ShowDocumentParams))]
[JsonSerializable(typeof(ShowDocumentResult))]
[JsonSerializable(typeof(ApplyWorkspaceEditParams))]
[JsonSerializable(typeof(ApplyWorkspaceEditResult))]
[JsonSerializable(typeof(ExecuteCommandParams))]
[JsonSerializable(typeof(TextDocumentPositionParams))]
[JsonSerializable(typeof(TextDocumentParams))]
[JsonSerializable(typeof(CompletionList))]
[JsonSerializable(typeof(CompletionItem))]
[JsonSerializable(typeof(Hover))]
[JsonSerializable(typeof(InlayHintParams))]
[JsonSerializable(typeof(InlayHint[]))]
[JsonSerializable(typeof(CodeActionParams))]
[JsonSerializable(typeof(CodeAction))]
[JsonSerializable(typeof(CodeAction[]))]
[JsonSerializable(typeof(ReferenceParams))]
[JsonSerializable(typeof(Location))]
[JsonSerializable(typeof(Location[]))]
[JsonSerializable(typeof(DocumentHighlight[]))]
[JsonSerializable(typeof(PrepareRenameResult))]
[JsonSerializable(typeof(RenameParams))]
[JsonSerializable(typeof(WorkspaceEdit))]
[JsonSerializable(typeof(SelectionRangeParams))]
[JsonSerializable(typeof(SelectionRange[]))]
[JsonSerializable(typeof(DocumentSymbol[]))]
[JsonSerializable(typeof(SymbolInformation[]))]
[JsonSerializable(typeof(WorkspaceSymbolParams))]
[JsonSerializable(typeof(FoldingRange[]))]
[JsonSerializable(typeof(DocumentFormattingParams))]
[JsonSerializable(typeof(DocumentRangeFormattingParams))]
[JsonSerializable(typeof(DocumentOnTypeFormattingParams))]
[JsonSerializable(typeof(TextEdit[]))]
[JsonSerializable(typeof(SemanticTokens))]
[JsonSerializable(typeof(SemanticTokensRangeParams))]
[JsonSerializable(typeof(SemanticTokensDeltaParams))]
[JsonSerializable(typeof(DocumentLink[]))]
[JsonSerializable(typeof(CodeLens[]))]
[JsonSerializable(typeof(PageParams))]
[JsonSerializable(typeof(PageResult))]
[JsonSerializable(typeof(JsonElement[]))]
[JsonSerializable(typeof(object))]
internal sealed partial class ProtocolJson : JsonSerializerContext;
