using System.Buffers;
using System.Buffers.Text;
using System.Collections.Concurrent;
using System.IO.Pipelines;
using System.Text.Json;
using StreamJsonRpc;
using StreamJsonRpc.Protocol;

namespace HealthNotes.LanguageServer.Host;

/// <summary>
/// The base protocol's frames. Writing is the library's; reading is ours, because the library ends the connection at the
/// first message that is broken: here the client gets an error, and reading continues behind it. A broken header ends the session.
/// </summary>
internal sealed class MessageHandler(Transport transport, IJsonRpcMessageFormatter formatter, ServerLog log)
    : HeaderDelimitedMessageHandler(transport.Output, transport.Input, formatter)
{
    private const int LongestHeader = 4 * 1024;
    private const int LargestMessage = 512 * 1024 * 1024;
    private static readonly SearchValues<byte> NameCharacters = SearchValues.Create("ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-"u8);

    private readonly ConcurrentDictionary<RequestId, bool> expected = new();

    /// <summary>Called after a message that could not be read: it may have been a change of a text.</summary>
    public Action Unread { get; set; } = () => { };

    /// <summary>An answer with this id will come. Answers that nobody waits for are passed over: the library would end the connection.</summary>
    public void Expect(RequestId id) => expected[id] = true;

    /// <inheritdoc/>
    protected override async ValueTask<JsonRpcMessage?> ReadCoreAsync(CancellationToken cancellationToken)
    {
        while (true)
        {
            int? length = await ReadHeaderAsync(cancellationToken).ConfigureAwait(false);
            if (length is null)
            {
                return null;
            }

            byte[]? body = await ReadBodyAsync(length.Value, cancellationToken).ConfigureAwait(false);
            if (body is null)
            {
                log.Fault("the client stopped in the middle of a message");
                return null;
            }

            (JsonRpcMessage? message, JsonRpcError? refusal) = Read(body);
            if (message is not null)
            {
                if (message is IJsonRpcMessageWithId and not JsonRpcRequest && !expected.TryRemove(((IJsonRpcMessageWithId)message).RequestId, out _))
                {
                    log.Note("an answer came that nobody waits for");
                    continue;
                }

                if (message is JsonRpcRequest { IsResponseExpected: false, Method: { } method } && !MayGoWithoutAnswer(method))
                {
                    log.Note($"{method} came as a notification, and is a request");
                    continue;
                }

                return message;
            }

            log.Fault($"a message of {body.Length} bytes can't be read: {refusal!.Error!.Message}");
            Unread();
            await WriteAsync(refusal, cancellationToken).ConfigureAwait(false);
        }
    }

    /// <summary>True for what the specification sends as a notification. A request without an id would act and tell nobody what it did.</summary>
    private static bool MayGoWithoutAnswer(string method) =>
        method is "initialized" or "exit" or "window/workDoneProgress/cancel" || method.StartsWith("$/", StringComparison.Ordinal)
        || method.StartsWith("textDocument/did", StringComparison.Ordinal) || method.StartsWith("workspace/did", StringComparison.Ordinal);

    private (JsonRpcMessage? Message, JsonRpcError? Refusal) Read(byte[] body)
    {
        try
        {
            JsonRpcMessage message = Formatter.Deserialize(new ReadOnlySequence<byte>(body));
            return message is JsonRpcRequest { Method: null or "" } ? (null, Refusal(JsonRpcErrorCode.InvalidRequest, "a request names its method")) : (message, null);
        }
        catch (Exception problem) when (problem is JsonException or InvalidOperationException or FormatException or KeyNotFoundException or OverflowException)
        {
            return (null, IsJson(body)
                ? Refusal(JsonRpcErrorCode.InvalidRequest, "this is JSON, but no message of JSON-RPC 2.0")
                : Refusal(JsonRpcErrorCode.ParseError, "this is not JSON"));
        }
    }

    private static bool IsJson(byte[] body)
    {
        try
        {
            using JsonDocument document = JsonDocument.Parse(body);
            return true;
        }
        catch (JsonException)
        {
            return false;
        }
    }

    private JsonRpcError Refusal(JsonRpcErrorCode code, string message)
    {
        JsonRpcError error = ((IJsonRpcMessageFactory)Formatter).CreateErrorMessage();
        error.RequestId = RequestId.Null;
        error.Error = new JsonRpcError.ErrorDetail { Code = code, Message = message };
        return error;
    }

    /// <summary>
    /// The length that a header gives. Null at the end of input, and at the first line that is not a header: what follows it is
    /// another protocol's (a web page can send a request to any place), and no message may be found inside it.
    /// </summary>
    private async ValueTask<int?> ReadHeaderAsync(CancellationToken token)
    {
        int? length = null;
        while (true)
        {
            ReadResult result = await Reader!.ReadAsync(token).ConfigureAwait(false);
            SequencePosition? end = result.Buffer.PositionOf((byte)'\n');
            if (end is null && result.Buffer.Length <= LongestHeader)
            {
                Reader.AdvanceTo(result.Buffer.Start, result.Buffer.End);
                if (result.IsCompleted)
                {
                    return null;
                }

                continue;
            }

            ReadOnlySequence<byte> line = end is null ? result.Buffer : result.Buffer.Slice(0, end.Value);
            Line kind = Classify(line, ref length);
            Reader.AdvanceTo(end is null ? result.Buffer.End : result.Buffer.GetPosition(1, end.Value));
            if (kind == Line.Strange || (kind == Line.Blank && length is null))
            {
                log.Fault("expected a header with its Content-Length; the session ends");
                return null;
            }

            if (kind == Line.Blank)
            {
                return length;
            }
        }
    }

    private static Line Classify(ReadOnlySequence<byte> line, ref int? length)
    {
        if (line.Length > LongestHeader)
        {
            return Line.Strange;
        }

        ReadOnlySpan<byte> text = line.IsSingleSegment ? line.FirstSpan : line.ToArray();
        text = text.TrimEnd("\r"u8);
        if (text.IsEmpty)
        {
            return Line.Blank;
        }

        int colon = text.IndexOf((byte)':');
        if (colon <= 0 || text[..colon].ContainsAnyExcept(NameCharacters))
        {
            return Line.Strange;
        }

        if (!System.Text.Ascii.EqualsIgnoreCase(text[..colon], "content-length"u8))
        {
            return Line.Header;
        }

        ReadOnlySpan<byte> number = text[(colon + 1)..].Trim(" \t"u8);
        bool good = Utf8Parser.TryParse(number, out int value, out int used) && used == number.Length && value is > 0 and <= LargestMessage && length is null;
        length = good ? value : null;
        return good ? Line.Header : Line.Strange;
    }

    private async ValueTask<byte[]?> ReadBodyAsync(int length, CancellationToken token)
    {
        while (true)
        {
            ReadResult result = await Reader!.ReadAsync(token).ConfigureAwait(false);
            if (result.Buffer.Length >= length)
            {
                ReadOnlySequence<byte> body = result.Buffer.Slice(0, length);
                byte[] bytes = body.ToArray();
                Reader.AdvanceTo(body.End);
                return bytes;
            }

            Reader.AdvanceTo(result.Buffer.Start, result.Buffer.End);
            if (result.IsCompleted)
            {
                return null;
            }
        }
    }

    private enum Line
    {
        Blank,
        Header,
        Strange,
    }
}
