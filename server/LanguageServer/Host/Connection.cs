using System.Diagnostics;
using System.Globalization;
using System.Text.Json;
using HealthNotes.LanguageServer.Protocol;
using HealthNotes.LanguageServer.State;
using StreamJsonRpc;
using StreamJsonRpc.Protocol;

namespace HealthNotes.LanguageServer.Host;

/// <summary>JSON-RPC as the library does it, with answers that give nothing of the inside away.</summary>
internal sealed class Connection : JsonRpc
{
    private const int InvalidParams = -32602;
    private const int InternalError = -32603;
    private const int ContentModified = -32801;
    private const int RequestFailed = -32803;
    private readonly MessageHandler handler;
    private readonly ServerLog log;
    private volatile Trace trace;

    public Connection(MessageHandler handler, ServerLog log)
        : base(handler)
    {
        this.handler = handler;
        this.log = log;
        TraceSource.Switch.Level = SourceLevels.Off;
    }

    /// <summary>Tells the client something. A disconnected client is not an error.</summary>
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
        where TResult : class => (await TryAskAsync<T, TResult>(method, parameters, token).ConfigureAwait(false)).Answer;

    /// <summary>Asks the client to do something; false when it refused.</summary>
    public async Task<bool> AskedAsync<T>(string method, T? parameters, CancellationToken token = default)
        where T : class => (await TryAskAsync<T, object>(method, parameters, token).ConfigureAwait(false)).Done;

    private async Task<(bool Done, TResult? Answer)> TryAskAsync<T, TResult>(string method, T? parameters, CancellationToken token)
        where T : class
        where TResult : class
    {
        RequestId id = CreateNewRequestId();
        handler.Expect(id);
        try
        {
            return (true, await InvokeCoreAsync<TResult?>(id, method, parameters is null ? null : [parameters], null, null, token, isParameterObject: true).ConfigureAwait(false));
        }
        catch (Exception refused) when (refused is RemoteRpcException or OperationCanceledException or JsonException || IsGone(refused))
        {
            log.Note($"{method} was refused: {refused.GetType().Name}");
            return (false, null);
        }
    }

    /// <summary>3.17, Lifecycle Messages, SetTrace Notification: off, messages or verbose.</summary>
    public void SetTrace(string? value) => trace = value switch
    {
        "messages" => Trace.Messages,
        "verbose" => Trace.Verbose,
        _ => Trace.Off,
    };

    /// <summary>Says that something went wrong inside, to the log and to the client's log.</summary>
    public void Report(string what, Exception fault)
    {
        log.Fault($"internal error in {what}: {fault}");
        _ = TellAsync("window/logMessage", new MessageParams(MessageType.Error, $"hnote: internal error in {what} ({fault.GetType().Name}). The server is still running; your notes are unchanged."));
    }

    /// <inheritdoc/>
    protected override JsonRpcError.ErrorDetail CreateErrorDetails(JsonRpcRequest request, Exception exception)
    {
        switch (exception)
        {
            case LocalRpcException refused:
                return new OurError { Code = (JsonRpcErrorCode)refused.ErrorCode, Message = refused.Message };
            case ContentModifiedException modified:
                return new OurError { Code = (JsonRpcErrorCode)ContentModified, Message = modified.Message };
            case RequestFailedException failed:
                return new OurError { Code = (JsonRpcErrorCode)RequestFailed, Message = failed.Message };
            case JsonException:
                return new OurError { Code = (JsonRpcErrorCode)InvalidParams, Message = $"the parameters of {request.Method} can't be read" };
            default:
                Report(request.Method ?? "a request", exception);
                return new OurError { Code = (JsonRpcErrorCode)InternalError, Message = "something went wrong inside hnote; its log says more" };
        }
    }

    /// <summary>The library's dispatch, with a word to whoever listens. Nothing waits before it, so the order of messages stays.</summary>
    protected override async ValueTask<JsonRpcMessage> DispatchRequestAsync(JsonRpcRequest request, TargetMethod targetMethod, CancellationToken cancellationToken)
    {
        if (trace == Trace.Off && !log.HasFile)
        {
            return await base.DispatchRequestAsync(request, targetMethod, cancellationToken).ConfigureAwait(false);
        }

        long start = Stopwatch.GetTimestamp();
        JsonRpcMessage answer = await base.DispatchRequestAsync(request, targetMethod, cancellationToken).ConfigureAwait(false);
        string took = string.Create(CultureInfo.InvariantCulture, $"{Stopwatch.GetElapsedTime(start).TotalMilliseconds:0.0} ms{(answer is JsonRpcError ? ", an error" : "")}");
        log.Note($"{request.Method} took {took}");
        if (trace != Trace.Off)
        {
            await TellAsync("$/logTrace", new LogTraceParams($"received {request.Method}", trace == Trace.Verbose ? $"took {took}" : null)).ConfigureAwait(false);
        }

        return answer;
    }

    /// <summary>Whatever the library puts beside an error (types, stack traces) stays here.</summary>
    protected override ValueTask SendAsync(JsonRpcMessage message, CancellationToken cancellationToken)
    {
        if (message is JsonRpcError { Error: { } error })
        {
            error.Data = null;
            if (error.Code == JsonRpcErrorCode.InvalidParams && error is not OurError)
            {
                error.Message = "the parameters can't be read";
            }
        }

        return base.SendAsync(message, cancellationToken);
    }

    /// <summary>An error whose words are ours.</summary>
    private sealed class OurError : JsonRpcError.ErrorDetail;

    private enum Trace
    {
        Off,
        Messages,
        Verbose,
    }

    private static bool IsGone(Exception problem) => problem is ConnectionLostException or ObjectDisposedException or IOException;
}
