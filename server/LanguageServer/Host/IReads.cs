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
}
