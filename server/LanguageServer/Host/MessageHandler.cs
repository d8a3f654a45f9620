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
/// first message that is broken: here the client gets an error, and reading continues at the next header.
/// </summary>
internal sealed class MessageHandler(Transport transport, IJsonRpcMessageFormatter formatter, ServerLog log)
    : HeaderDelimitedMessageHandler(transport.Output, transport.Input, formatter)
{
    private const int LongestHeader = 4 * 1024;
    private const int LargestMessage = 512 * 1024 * 1024;
    private readonly ConcurrentDictionary<RequestId, bool> expected = new();

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

                return message;
            }

            log.Fault($"a message of {body.Length} bytes can't be read: {refusal!.Error!.Message}");
            await WriteAsync(refusal, cancellationToken).ConfigureAwait(false);
        }
    }

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
    /// Reads lines up to the blank one; anything that is not a header is skipped with a line in the log. Null at the end of input.
    /// </summary>
    private async ValueTask<int?> ReadHeaderAsync(CancellationToken token)
    {
        int? length = null;
        bool strange = false;
        while (true)
        {
            ReadResult result = await Reader!.ReadAsync(token).ConfigureAwait(false);
            SequencePosition? end = result.Buffer.PositionOf((byte)'\n');
            if (end is null)
            {
                bool tooLong = result.Buffer.Length > LongestHeader;
                strange = strange || (tooLong && Strange());
                Reader.AdvanceTo(tooLong ? result.Buffer.End : result.Buffer.Start, result.Buffer.End);
                if (result.IsCompleted)
                {
                    return null;
                }

                continue;
            }

            ReadOnlySequence<byte> line = result.Buffer.Slice(0, end.Value);
            Line kind = Classify(line, ref length);
            Reader.AdvanceTo(result.Buffer.GetPosition(1, end.Value));
            strange = strange || (kind == Line.Strange && Strange());

            if (kind == Line.Blank && length is not null)
            {
                return length;
            }
        }
    }

    /// <summary>Said once, however much of it comes.</summary>
    private bool Strange()
    {
        log.Fault("expected a header; looking for the next Content-Length");
        return true;
    }

    /// <summary>The length may stand behind bytes that were left over from a message whose length was too small.</summary>
    private static Line Classify(ReadOnlySequence<byte> line, ref int? length)
    {
        if (line.Length > LongestHeader)
        {
            return Line.Strange;
        }

        ReadOnlySpan<byte> text = line.IsSingleSegment ? line.FirstSpan : line.ToArray();
        text = text.TrimEnd("\r \t"u8);
        if (text.IsEmpty)
        {
            return Line.Blank;
        }

        int at = IndexOfName(text, "content-length:"u8);
        if (at >= 0)
        {
            ReadOnlySpan<byte> number = text[(at + "content-length:"u8.Length)..].Trim(" \t"u8);
            bool good = Utf8Parser.TryParse(number, out int value, out int used) && used == number.Length && value is > 0 and <= LargestMessage;
            length = good ? value : null;
            return good && at == 0 ? Line.Header : Line.Strange;
        }

        return IndexOfName(text, "content-type:"u8) == 0 ? Line.Header : Line.Strange;
    }

    private static int IndexOfName(ReadOnlySpan<byte> text, ReadOnlySpan<byte> name)
    {
        for (int i = 0; i + name.Length <= text.Length; i++)
        {
            if (System.Text.Ascii.EqualsIgnoreCase(text.Slice(i, name.Length), name))
            {
                return i;
            }
        }

        return -1;
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
