using System.Collections.Concurrent;
using System.Diagnostics;
using System.Text.Json;
using HealthNotes.LanguageServer.Protocol;

namespace HealthNotes.LanguageServer.Rpc;

/// <summary>Gives each message that comes in to its route, and answers it.</summary>
/// <param name="routes">Every method that is known.</param>
/// <param name="connection">Where answers go.</param>
/// <param name="log">Where trouble is reported.</param>
/// <param name="unread">Called after a message that could not be read: it may have been a change of a text.</param>
internal sealed class Dispatch(IEnumerable<Route> routes, Connection connection, ServerLog log, Action unread)
{
    private static readonly JsonElement NoParameters = JsonElement.Parse("{}");
    private readonly Dictionary<string, Route> routes = routes.ToDictionary(route => route.Method);
    private readonly ConcurrentDictionary<RequestId, CancellationTokenSource> running = new();

    /// <summary>Takes the body of a message. Messages come one at a time, and none of them waits.</summary>
    public void Receive(ReadOnlySpan<byte> body)
    {
        Message message;
        try
        {
            message = Message.Parse(body);
        }
        catch (RefusedRequestException refused)
        {
            log.Fault($"a message of {body.Length} bytes can't be read: {refused.Message}");
            unread();
            connection.Refuse(null, refused.Code, refused.Message);
            return;
        }

        if (message.Method is not { } method)
        {
            if (!connection.Settle(message))
            {
                log.Note("an answer came that nobody waits for");
            }
        }
        else if (method == "$/cancelRequest")
        {
            Cancel(message.Parameters ?? NoParameters);
        }
        else if (!routes.TryGetValue(method, out Route? route))
        {
            if (message.Id is { } id)
            {
                connection.Refuse(id, ErrorCodes.MethodNotFound, $"there is no method {method}");
            }
        }
        else if (route.IsRequest && message.Id is null)
        {
            log.Note($"{method} came as a notification, and is a request");
        }
        else
        {
            _ = RunAsync(route, message);
        }
    }

    private async Task RunAsync(Route route, Message message)
    {
        long start = Stopwatch.GetTimestamp();
        using var cancel = new CancellationTokenSource();
        if (message.Id is { } id)
        {
            running[id] = cancel;
        }

        string ended = "";
        try
        {
            JsonElement parameters = message.Parameters is { ValueKind: not JsonValueKind.Null } given ? given : NoParameters;
            Action<Utf8JsonWriter> result = await route.Run(parameters, cancel.Token).ConfigureAwait(false);
            if (message.Id is { } asked)
            {
                connection.Answer(asked, result);
            }
        }
        catch (Exception problem) when (problem is not OutOfMemoryException)
        {
            ended = ", an error";
            Refuse(route, message.Id, problem);
        }
        finally
        {
            if (message.Id is { } done)
            {
                running.TryRemove(KeyValuePair.Create(done, cancel));
            }
        }

        connection.Trace(route.Method, Stopwatch.GetElapsedTime(start), ended);
    }

    private void Refuse(Route route, RequestId? id, Exception problem)
    {
        (int code, string why) = problem switch
        {
            RefusedRequestException refused => (refused.Code, refused.Message),
            OperationCanceledException => (ErrorCodes.RequestCancelled, $"{route.Method} was cancelled"),
            _ => (ErrorCodes.InternalError, "something went wrong inside hnote; its log says more"),
        };
        if (code == ErrorCodes.InternalError)
        {
            connection.Report(route.Method, problem);
        }

        if (id is not null)
        {
            connection.Refuse(id, code, why);
        }
        else
        {
            log.Note(why);
        }
    }

    private void Cancel(JsonElement parameters)
    {
        if (parameters.ValueKind == JsonValueKind.Object && parameters.TryGetProperty("id"u8, out JsonElement given)
            && RequestId.Of(given) is { } id && running.TryGetValue(id, out CancellationTokenSource? cancel))
        {
            try
            {
                cancel.Cancel();
            }
            catch (ObjectDisposedException)
            {
                // it has just been answered
            }
        }
    }
}
