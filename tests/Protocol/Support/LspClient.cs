using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace HealthNotes.Protocol.Tests.Support;

/// <summary>
/// A client of our own: it knows frames and ids and nothing of what is in them. It never sleeps; it waits for a message, with
/// much patience.
/// </summary>
internal sealed class LspClient
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);
    private static readonly JsonSerializerOptions Options = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };
    private readonly Stream toServer;
    private readonly Exchange exchange;
    private readonly Lock gate = new();
    private readonly Lock writing = new();
    private readonly Dictionary<int, TaskCompletionSource<JsonObject>> asked = [];
    private readonly List<JsonObject> heard = [];
    private readonly List<(Func<JsonObject, bool> Fits, TaskCompletionSource<JsonObject> Found)> waiting = [];
    private int lastId;

    public LspClient(Stream toServer, Stream fromServer, Exchange exchange)
    {
        this.toServer = toServer;
        this.exchange = exchange;
        Ended = Task.Run(() => ListenAsync(new FrameReader(fromServer)));
    }

    /// <summary>Done when the server says no more; fails where it said something that is not the protocol.</summary>
    public Task Ended { get; }

    /// <summary>What the client answers to the server's own requests, by method; what is not here it does not know.</summary>
    public Dictionary<string, Func<JsonNode?, JsonNode?>> Answers { get; } = [];

    /// <summary>Everything the server said of its own accord, so far.</summary>
    public IReadOnlyList<JsonObject> Heard
    {
        get
        {
            lock (gate)
            {
                return [.. heard];
            }
        }
    }

    /// <summary>The result of a request.</summary>
    /// <exception cref="LspError">It was answered with an error.</exception>
    public async Task<JsonNode?> AskAsync(string method, object? parameters = null, bool leaveOut = false) => ResultOf(await Send(method, parameters, leaveOut).Answer.WaitAsync(Patience));

    /// <summary>Sends a request and gives its id and the answer to come.</summary>
    public (int Id, Task<JsonObject> Answer) Send(string method, object? parameters = null, bool leaveOut = false)
    {
        int id = Interlocked.Increment(ref lastId);
        var message = new JsonObject { ["jsonrpc"] = "2.0", ["id"] = id, ["method"] = method };
        if (!leaveOut)
        {
            message["params"] = Json(parameters);
        }

        Task<JsonObject> answer = Expect(id);
        SendRaw(FrameReader.Frame(message.ToJsonString(Options)));
        return (id, answer);
    }

    /// <summary>The answer to a request that is sent by hand.</summary>
    public Task<JsonObject> Expect(int id)
    {
        var answer = new TaskCompletionSource<JsonObject>(TaskCreationOptions.RunContinuationsAsynchronously);
        lock (gate)
        {
            asked[id] = answer;
        }

        return answer.Task.WaitAsync(Patience);
    }

    /// <summary>The error that a request is answered with.</summary>
    public async Task<LspError> RefusalAsync(string method, object? parameters = null) => await Assert.ThrowsAsync<LspError>(() => AskAsync(method, parameters));

    /// <summary>Sends a notification.</summary>
    public void Tell(string method, object? parameters = null) => SendRaw(FrameReader.Frame(
        new JsonObject { ["jsonrpc"] = "2.0", ["method"] = method, ["params"] = Json(parameters) }.ToJsonString(Options)));

    /// <summary>Sends bytes, right or wrong.</summary>
    public void SendRaw(params byte[] bytes)
    {
        exchange.Add("→", System.Text.Encoding.UTF8.GetString(bytes).Replace("\r\n", "↵", StringComparison.Ordinal));
        lock (writing)
        {
            toServer.Write(bytes);
            toServer.Flush();
        }
    }

    /// <summary>The first message of a method, come or to come, that fits; its parameters.</summary>
    public async Task<JsonNode?> HearAsync(string method, Func<JsonNode?, bool>? fits = null)
    {
        bool Fits(JsonObject message) => (string?)message["method"] == method && fits?.Invoke(message["params"]) != false;
        Task<JsonObject> found;
        lock (gate)
        {
            if (heard.FirstOrDefault(Fits) is { } already)
            {
                return already["params"];
            }

            var wanted = new TaskCompletionSource<JsonObject>(TaskCreationOptions.RunContinuationsAsynchronously);
            waiting.Add((Fits, wanted));
            found = wanted.Task;
        }

        try
        {
            return (await found.WaitAsync(Patience))["params"];
        }
        catch (TimeoutException)
        {
            throw new TimeoutException($"no {method} came that fits");
        }
    }

    /// <summary>The result in an answer.</summary>
    /// <exception cref="LspError">It is an error.</exception>
    public static JsonNode? ResultOf(JsonObject answer) => answer["error"] is { } error
        ? throw new LspError((int)error["code"]!, (string)error["message"]!)
        : answer["result"];

    private static JsonNode? Json(object? value) => value switch
    {
        null => null,
        JsonNode node => node.DeepClone(),
        _ => JsonSerializer.SerializeToNode(value, Options),
    };

    private async Task ListenAsync(FrameReader reader)
    {
        try
        {
            while (await reader.ReadAsync() is { } json)
            {
                exchange.Add("←", json);
                Take(JsonNode.Parse(json) as JsonObject ?? throw new InvalidDataException($"a message is an object: {json}"));
            }
        }
        catch (Exception problem) when (problem is IOException or ObjectDisposedException)
        {
            exchange.Add("!", $"the connection ended: {problem.Message}");
        }
        finally
        {
            lock (gate)
            {
                var gone = new EndOfStreamException("the server ended before it answered");
                asked.Values.ToList().ForEach(answer => answer.TrySetException(gone));
                waiting.ForEach(wanted => wanted.Found.TrySetException(gone));
            }
        }
    }

    private void Take(JsonObject message)
    {
        Assert.Equal("2.0", (string?)message["jsonrpc"]);
        if (message["method"] is null)
        {
            Settle(message);
            return;
        }

        if (message.ContainsKey("id"))
        {
            Answer(message);
        }

        lock (gate)
        {
            heard.Add(message);
            foreach ((_, TaskCompletionSource<JsonObject> found) in waiting.Where(wanted => wanted.Fits(message)))
            {
                found.TrySetResult(message);
            }

            waiting.RemoveAll(wanted => wanted.Found.Task.IsCompleted);
        }
    }

    private void Settle(JsonObject answer)
    {
        Assert.True(answer.ContainsKey("result") != answer.ContainsKey("error"), "an answer has a result or an error");
        lock (gate)
        {
            if (answer["id"] is JsonValue id && id.TryGetValue(out int number) && asked.Remove(number, out TaskCompletionSource<JsonObject>? waiter))
            {
                waiter.SetResult(answer);
            }
            else
            {
                // an error about a message whose id could not be read
                heard.Add(answer);
                foreach ((_, TaskCompletionSource<JsonObject> found) in waiting.Where(wanted => wanted.Fits(answer)))
                {
                    found.TrySetResult(answer);
                }
            }
        }
    }

    private void Answer(JsonObject request)
    {
        var answer = new JsonObject { ["jsonrpc"] = "2.0", ["id"] = request["id"]!.DeepClone() };
        if (Answers.TryGetValue((string)request["method"]!, out Func<JsonNode?, JsonNode?>? knows))
        {
            answer["result"] = knows(request["params"]);
        }
        else
        {
            answer["error"] = new JsonObject { ["code"] = LspError.MethodNotFound, ["message"] = "this client does not know that" };
        }

        SendRaw(FrameReader.Frame(answer.ToJsonString(Options)));
    }

    /// <summary>Waits for an error that has no id.</summary>
    public async Task<LspError> HearErrorAsync()
    {
        static bool Fits(JsonObject message) => message["error"] is not null && message["id"] is null;
        Task<JsonObject> found;
        lock (gate)
        {
            var wanted = new TaskCompletionSource<JsonObject>(TaskCreationOptions.RunContinuationsAsynchronously);
            waiting.Add((Fits, wanted));
            found = wanted.Task;
            if (heard.FirstOrDefault(Fits) is { } already)
            {
                heard.Remove(already);
                wanted.TrySetResult(already);
            }
        }

        JsonObject error = await found.WaitAsync(Patience);
        lock (gate)
        {
            heard.Remove(error);
            waiting.RemoveAll(wanted => wanted.Found.Task.IsCompleted);
        }

        return Assert.Throws<LspError>(() => ResultOf(error));
    }
}
