using System.Text.Json;
using HealthNotes.LanguageServer.Protocol;
using PolyType;
using StreamJsonRpc;

namespace HealthNotes.LanguageServer.Host;

/// <summary>
/// The messages that change something. They run one at a time, in the order they came in, to their end: none of them may
/// wait for anything. What they say of a text is read by <see cref="Changes"/> itself: a change that can't be read must not be lost
/// in silence. Every message is declared here or in <see cref="IReads"/>; there is no third way to be registered.
/// </summary>
[JsonRpcContract]
[GenerateShape(IncludeMethods = MethodShapeFlags.PublicInstance)]
internal partial interface IChanges
{
    [JsonRpcMethod("initialize", UseSingleObjectParameterDeserialization = true)]
    Task<InitializeResult> Initialize(InitializeParams parameters);

    [JsonRpcMethod("initialized", UseSingleObjectParameterDeserialization = true)]
    void Initialized(InitializedParams? parameters = null);

    [JsonRpcMethod("shutdown")]
    Task Shutdown();

    [JsonRpcMethod("exit")]
    void Exit();

    [JsonRpcMethod("$/setTrace", UseSingleObjectParameterDeserialization = true)]
    void SetTrace(SetTraceParams parameters);

    [JsonRpcMethod("textDocument/didOpen", UseSingleObjectParameterDeserialization = true)]
    void DidOpen(JsonElement parameters);

    [JsonRpcMethod("textDocument/didChange", UseSingleObjectParameterDeserialization = true)]
    void DidChange(JsonElement parameters);

    [JsonRpcMethod("textDocument/didSave", UseSingleObjectParameterDeserialization = true)]
    void DidSave(JsonElement parameters);

    [JsonRpcMethod("textDocument/didClose", UseSingleObjectParameterDeserialization = true)]
    void DidClose(JsonElement parameters);

    [JsonRpcMethod("workspace/didChangeConfiguration", UseSingleObjectParameterDeserialization = true)]
    void DidChangeConfiguration(DidChangeConfigurationParams? parameters = null);

    [JsonRpcMethod("workspace/didChangeWatchedFiles", UseSingleObjectParameterDeserialization = true)]
    void DidChangeWatchedFiles(DidChangeWatchedFilesParams parameters);

    [JsonRpcMethod("workspace/didChangeWorkspaceFolders", UseSingleObjectParameterDeserialization = true)]
    void DidChangeWorkspaceFolders(DidChangeWorkspaceFoldersParams parameters);

    [JsonRpcMethod("window/workDoneProgress/cancel", UseSingleObjectParameterDeserialization = true)]
    void CancelWorkDoneProgress(WorkDoneProgressCancelParams parameters);
}
