using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;

namespace HealthNotes.LanguageServer.Protocol;

/// <summary>Reads and writes the records without reflection.</summary>
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase,
    DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
    RespectNullableAnnotations = true,
    RespectRequiredConstructorParameters = true,
    Converters = [typeof(LooseInt)],
    GenerationMode = JsonSourceGenerationMode.Metadata)]
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
[JsonSerializable(typeof(SignatureHelpParams))]
[JsonSerializable(typeof(SignatureHelp))]
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
[JsonSerializable(typeof(TextDocumentContentParams))]
[JsonSerializable(typeof(TextDocumentContentResult))]
[JsonSerializable(typeof(RenameFilesParams))]
[JsonSerializable(typeof(PageParams))]
[JsonSerializable(typeof(PageResult))]
[JsonSerializable(typeof(DueParams))]
[JsonSerializable(typeof(DueResult))]
[JsonSerializable(typeof(CheckStepsResult))]
[JsonSerializable(typeof(JsonElement[]))]
[JsonSerializable(typeof(object))]
internal sealed partial class ProtocolJson : JsonSerializerContext
{
    /// <summary>How a type is read and written. It is worked out when it is first needed: all of them together are much of a start.</summary>
    public static JsonTypeInfo<T> Of<T>() => (JsonTypeInfo<T>)Default.GetTypeInfo(typeof(T))!;
}
