using System.Buffers;
using System.Collections.Concurrent;
using System.Globalization;
using System.Text.Encodings.Web;
using System.Text.Json;
using HealthNotes.LanguageServer.Protocol;

namespace HealthNotes.LanguageServer.Rpc;

/// <summary>What is sent to the client: notifications, requests of our own, and answers that give nothing of the inside away.</summary>
/// <param name="send">Sends the body of one message and does not wait for the client. It may be called from any thread.</param>
/// <param name="log">Where trouble is reported.</param>
internal sealed class Connection(Action<ReadOnlyMemory<byte>> send, ServerLog log)
{
    /// <summary>No text goes into a web page from here, so nothing is escaped that JSON itself does not ask for.</summary>
    private static readonly JsonWriterOptions Plain = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping, SkipValidation = true };

    private readonly ConcurrentDictionary<RequestId, TaskCompletionSource<JsonElement?>> asked = new();
    private long last;
    private volatile string? trace;

    /// <summary>Tells the client something.</summary>
    public void Tell<T>(string method, T parameters)
        where T : class => Send(writer => Call(writer, method, parameters));

    /// <summary>Asks the client for something. A refusal is logged and life goes on; the answer is then null.</summary>
    public async Task<TResult?> AskAsync<T, TResult>(string method, T? parameters)
        where T : class
        where TResult : class
    {
        try
        {
            return await TryAskAsync(method, parameters).ConfigureAwait(false) is { ValueKind: not JsonValueKind.Null } answer ? answer.Deserialize(ProtocolJson.Of<TResult>()) : null;
        }
        catch (Exception strange) when (strange is JsonException or InvalidOperationException)
        {
            log.Note($"the answer to {method} can't be read");
            return null;
        }
    }

    /// <summary>Asks the client to do something; false when it refused.</summary>
    public async Task<bool> AskedAsync<T>(string method, T? parameters)
        where T : class => await TryAskAsync(method, parameters).ConfigureAwait(false) is not null;

    /// <summary>Gives an answer to whoever waits for it; false when nobody does.</summary>
    public bool Settle(Message answer) => answer.Id is { } id && asked.TryRemove(id, out TaskCompletionSource<JsonElement?>? waiting) && waiting.TrySetResult(answer.Result);

    /// <summary>Answers a request.</summary>
    public void Answer(RequestId id, Action<Utf8JsonWriter> result) => Send(writer =>
    {
        id.Write(writer);
        writer.WritePropertyName("result"u8);
        result(writer);
    });

    /// <summary>Refuses a request; one whose id could not be read has none.</summary>
    public void Refuse(RequestId? id, int code, string why) => Send(writer =>
    {
        if (id is { } known)
        {
            known.Write(writer);
        }
        else
        {
            writer.WriteNull("id"u8);
        }

        writer.WriteStartObject("error"u8);
        writer.WriteNumber("code"u8, code);
        writer.WriteString("message"u8, why);
        writer.WriteEndObject();
    });

    /// <summary>Says that something went wrong inside, to the log and to the client's log.</summary>
    public void Report(string what, Exception fault)
    {
        log.Fault($"internal error in {what}: {fault}");
        Tell("window/logMessage", new MessageParams(MessageType.Error, $"hnote: internal error in {what} ({fault.GetType().Name}). The server is still running; your notes are unchanged."));
    }

    /// <summary>3.17, Lifecycle Messages, SetTrace Notification: off, messages or verbose.</summary>
    public void SetTrace(string? value) => trace = value is "messages" or "verbose" ? value : null;

    /// <summary>Tells whoever listens how long a message took.</summary>
    public void Trace(string method, TimeSpan time, string ended)
    {
        if (trace is null && !log.HasFile)
        {
            return;
        }

        string took = string.Create(CultureInfo.InvariantCulture, $"{time.TotalMilliseconds:0.0} ms{ended}");
        log.Note($"{method} took {took}");
        if (trace is { } how)
        {
            Tell("$/logTrace", new LogTraceParams($"received {method}", how == "verbose" ? $"took {took}" : null));
        }
    }

    private async Task<JsonElement?> TryAskAsync<T>(string method, T? parameters)
        where T : class
    {
        var id = new RequestId(Interlocked.Increment(ref last));
        var answer = new TaskCompletionSource<JsonElement?>(TaskCreationOptions.RunContinuationsAsynchronously);
        asked[id] = answer;
        Send(writer =>
        {
            id.Write(writer);
            Call(writer, method, parameters);
        });
        JsonElement? result = await answer.Task.ConfigureAwait(false);
        if (result is null)
        {
            log.Note($"{method} was refused");
        }

        return result;
    }

    private static void Call<T>(Utf8JsonWriter writer, string method, T? parameters)
        where T : class
    {
        writer.WriteString("method"u8, method);
        if (parameters is not null)
        {
            writer.WritePropertyName("params"u8);
            JsonSerializer.Serialize(writer, parameters, ProtocolJson.Of<T>());
        }
    }

    private void Send(Action<Utf8JsonWriter> body)
    {
        var buffer = new ArrayBufferWriter<byte>();
        using (var writer = new Utf8JsonWriter(buffer, Plain))
        {
            writer.WriteStartObject();
            writer.WriteString("jsonrpc"u8, "2.0"u8);
            body(writer);
            writer.WriteEndObject();
        }

        send(buffer.WrittenMemory);
    }
}
