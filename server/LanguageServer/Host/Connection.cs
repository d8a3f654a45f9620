using System.Diagnostics;
using System.Text.Json;
using HealthNotes.LanguageServer.Protocol;
using StreamJsonRpc;
using StreamJsonRpc.Protocol;

namespace HealthNotes.LanguageServer.Host;

/// <summary>JSON-RPC as the library does it, with answers that give nothing of the inside away.</summary>
internal sealed class Connection : JsonRpc
{
    private const int InvalidParams = -32602;
    private const int InternalError = -32603;
    private readonly MessageHandler handler;
    private readonly ServerLog log;

    public Connection(MessageHandler handler, ServerLog log)
        : base(handler)
    {
        this.handler = handler;
        this.log = log;
        TraceSource.Switch.Level = SourceLevels.Off;
    }

    /// <summary>Tells the client something. A client that is gone is no fault.</summary>
    public async Task TellAsync<T>(string method, T parameters)
        where T : class
    {
        try
        {
            await InvokeCoreAsync<object>(RequestId.NotSpecified, method, [parameters], null, null, CancellationToken.None, isParameterObject: true).ConfigureAwait(false);
        }
        catch (Exception gone) when (IsGone(gone))
        {
            log.Note($"{method} was not sent: the client is gone");
        }
    }

    /// <summary>Asks the client for something. A refusal is logged and life goes on; the answer is then null.</summary>
    public async Task<TResult?> AskAsync<T, TResult>(string method, T? parameters, CancellationToken token = default)
        where T : class
        where TResult : class
    {
        RequestId id = CreateNewRequestId();
        handler.Expect(id);
        try
        {
            return await InvokeCoreAsync<TResult?>(id, method, parameters is null ? null : [parameters], null, null, token, isParameterObject: true).ConfigureAwait(false);
        }
        catch (Exception refused) when (refused is RemoteRpcException or OperationCanceledException or JsonException || IsGone(refused))
        {
            log.Note($"{method} was refused: {refused.GetType().Name}");
            return null;
        }
    }

    /// <summary>Says that something went wrong inside, to the log and to the client's log.</summary>
    public void Report(string what, Exception fault)
    {
        log.Fault($"a fault in {what}: {fault}");
        _ = TellAsync("window/logMessage", new MessageParams(MessageType.Error, $"hnote: a fault in {what} ({fault.GetType().Name}). The server goes on; your notes are as they were."));
    }

    /// <inheritdoc/>
    protected override JsonRpcError.ErrorDetail CreateErrorDetails(JsonRpcRequest request, Exception exception)
    {
        switch (exception)
        {
            case LocalRpcException refused:
                return new JsonRpcError.ErrorDetail { Code = (JsonRpcErrorCode)refused.ErrorCode, Message = refused.Message };
            case JsonException:
                return new JsonRpcError.ErrorDetail { Code = (JsonRpcErrorCode)InvalidParams, Message = $"the parameters of {request.Method} can't be read" };
            default:
                Report(request.Method ?? "a request", exception);
                return new JsonRpcError.ErrorDetail { Code = (JsonRpcErrorCode)InternalError, Message = "something went wrong inside hnote; its log says more" };
        }
    }

    /// <summary>Whatever the library puts beside an error (types, stack traces) stays here.</summary>
    protected override ValueTask SendAsync(JsonRpcMessage message, CancellationToken cancellationToken)
    {
        if (message is JsonRpcError { Error: { } error })
        {
            error.Data = null;
            if (error.Code == JsonRpcErrorCode.InvalidParams)
            {
                error.Message = "the parameters can't be read";
            }
        }

        return base.SendAsync(message, cancellationToken);
    }

    private static bool IsGone(Exception problem) => problem is ConnectionLostException or ObjectDisposedException or IOException;
}
