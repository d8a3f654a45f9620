using System.IO.Pipelines;
using System.Text;
using System.Text.Json;
using HealthNotes.LanguageHost;
using HealthNotes.LanguageServer.Protocol;
using HealthNotes.LanguageServer.Rpc;

namespace HealthNotes.Tests.LanguageServer;

/// <summary>Frames and faults, over a pair of streams in memory.</summary>
public sealed class ConnectionTests : IDisposable
{
    private readonly Pipe toServer = new();
    private readonly Pipe toClient = new();
    private readonly Stream client;
    private int called;

    public ConnectionTests()
    {
        client = toClient.Reader.AsStream();
        var log = new ServerLog(null);
        var frames = new FrameWriter(toClient.Writer.AsStream(), log.Note);
        Route[] routes =
        [
            Of("ping", () => "pong"),
            Of("boom", () => throw new InvalidOperationException("secret")),
            Of("stale", () => throw new RefusedRequestException(ErrorCodes.ContentModified, "the note has changed since")),
            Of("count", () => $"{Interlocked.Increment(ref called)}"),
        ];
        var dispatch = new Dispatch(routes, new Connection(frames.Send, log), log, () => { });
        var input = new FrameReader(toServer.Reader.AsStream(), log.Fault);
        new Thread(() =>
        {
            while (input.Next() is { } message)
            {
                dispatch.Receive(message);
            }

            frames.Flush(TimeSpan.FromSeconds(20));
            toClient.Writer.Complete();
        })
        { IsBackground = true }.Start();
    }

    public void Dispose() => toServer.Writer.Complete();

    private static Route Of(string method, Func<string> answer) =>
        new(method, IsRequest: true, (_, _) => Task.FromResult(Route.Result(answer())));

    private static string Frame(string body, int off = 0) => $"Content-Length: {Encoding.UTF8.GetByteCount(body) + off}\r\n\r\n{body}";

    private static string Ping(int id) => $$"""{"jsonrpc":"2.0","id":{{id}},"method":"ping"}""";

    private async Task SendAsync(string text) => await toServer.Writer.WriteAsync(Encoding.UTF8.GetBytes(text));

    private async Task<JsonElement> ReadAsync()
    {
        using var patience = new CancellationTokenSource(TimeSpan.FromSeconds(20));
        var header = new StringBuilder();
        byte[] one = new byte[1];
        while (!header.ToString().EndsWith("\r\n\r\n", StringComparison.Ordinal))
        {
            await client.ReadExactlyAsync(one, patience.Token);
            header.Append((char)one[0]);
        }

        byte[] body = new byte[int.Parse(header.ToString()["Content-Length: ".Length..].Trim())];
        await client.ReadExactlyAsync(body, patience.Token);
        return JsonDocument.Parse(body).RootElement;
    }

    /// <summary>What is broken is answered or passed over; the next message is read as if nothing had been.</summary>
    [Theory]
    [InlineData("Content-Length: 5\r\n\r\n{\"a\":", -32700)]
    [InlineData("Content-Length: 2\r\n\r\n{}", -32600)]
    [InlineData("Content-Length: 2\r\n\r\n[]", -32600)]
    [InlineData("Content-Length: 41\r\n\r\n{\"jsonrpc\":\"2.0\",\"id\":1,\"method\":null   }", -32600)]
    [InlineData("Content-Length: 41\r\n\r\n{\"jsonrpc\":\"2.0\",\"id\":{},\"method\":\"ping\"}", -32600)]
    [InlineData("Content-Length: 42\r\n\r\n{\"jsonrpc\":\"2.0\",\"id\":987,\"result\":\"none\"}", null)] // nobody asked
    public async Task A_broken_message_costs_itself_alone(string broken, int? code)
    {
        await SendAsync(broken + Frame(Ping(7)));
        if (code is not null)
        {
            JsonElement refusal = await ReadAsync();
            Assert.Equal(code, refusal.GetProperty("error").GetProperty("code").GetInt32());
            Assert.Equal(JsonValueKind.Null, refusal.GetProperty("id").ValueKind);
        }

        JsonElement answer = await ReadAsync();
        Assert.Equal((7, "pong"), (answer.GetProperty("id").GetInt32(), answer.GetProperty("result").GetString()));
    }

    /// <summary>Behind a broken header nothing is read: a message found there may be what another protocol carries.</summary>
    [Theory]
    [InlineData("Content-Length: -5\r\n\r\n")]
    [InlineData("Content-Length: many\r\n\r\n")]
    [InlineData("Content-Length: 0\r\n\r\n")]
    [InlineData("Content-Length: 99999999999\r\n\r\n")]
    [InlineData("Content-Length: 2\r\nContent-Length: 3\r\n\r\n{}")]
    [InlineData("X-Content-Length: 2\r\n\r\n{}")]
    [InlineData("garbage\r\n\r\n")]
    [InlineData("\r\n\r\n\r\n")]
    [InlineData("POST / HTTP/1.1\r\nHost: here\r\nContent-Length: 2\r\n\r\n{}")]
    [InlineData("{} ")]
    public async Task A_broken_header_ends_the_session(string broken)
    {
        await SendAsync(broken + Frame(Ping(7)));
        await Assert.ThrowsAsync<EndOfStreamException>(ReadAsync);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(10)]
    public async Task A_length_too_large_ends_the_session(int off)
    {
        await SendAsync(Frame(Ping(1), off) + Frame(Ping(2)));
        Assert.Equal(-32700, (await ReadAsync()).GetProperty("error").GetProperty("code").GetInt32());
        await Assert.ThrowsAsync<EndOfStreamException>(ReadAsync);
    }

    [Fact]
    public async Task A_request_without_an_id_is_passed_over()
    {
        await SendAsync(Frame("""{"jsonrpc":"2.0","method":"count"}""") + Frame("""{"jsonrpc":"2.0","id":1,"method":"count"}"""));
        Assert.Equal("1", (await ReadAsync()).GetProperty("result").GetString());
    }

    [Theory]
    [InlineData("content-length: {0}\r\n\r\n")]
    [InlineData("Content-Type: application/vscode-jsonrpc; charset=utf-8\r\nContent-Length:{0}\r\n\r\n")]
    [InlineData("Content-Length: {0}\n\n")]
    public async Task Headers_are_read_forgivingly(string header)
    {
        await SendAsync(string.Format(header, Ping(1).Length) + Ping(1));
        Assert.Equal("pong", (await ReadAsync()).GetProperty("result").GetString());
    }

    [Fact]
    public async Task A_fault_is_answered_in_neutral_words_and_told_to_the_clients_log()
    {
        await SendAsync(Frame("""{"jsonrpc":"2.0","id":"a","method":"boom"}"""));
        JsonElement[] both = [await ReadAsync(), await ReadAsync()];
        JsonElement error = both.Single(message => message.TryGetProperty("error", out _)).GetProperty("error");
        Assert.Equal(-32603, error.GetProperty("code").GetInt32());
        Assert.False(error.TryGetProperty("data", out _));
        Assert.Contains(both, message => message.TryGetProperty("method", out JsonElement method) && method.GetString() == "window/logMessage");
        Assert.All(both, message => Assert.DoesNotContain("secret", message.GetRawText(), StringComparison.Ordinal));
        await SendAsync(Frame(Ping(2)));
        Assert.Equal("pong", (await ReadAsync()).GetProperty("result").GetString());
    }

    [Theory]
    [InlineData("stale", -32801)]
    [InlineData("no/such", -32601)]
    public async Task Refusals_have_their_codes(string method, int code)
    {
        await SendAsync(Frame($$"""{"jsonrpc":"2.0","id":1,"method":"{{method}}"}"""));
        Assert.Equal(code, (await ReadAsync()).GetProperty("error").GetProperty("code").GetInt32());
    }
}
