using System.Text.Json;
using HealthNotes.LanguageServer.Protocol;

namespace HealthNotes.LanguageServer.Rpc;

/// <summary>What happens at a message. It starts in the order of the messages; what it awaits may end in any order.</summary>
/// <param name="parameters">The parameters; an empty object where the message has none.</param>
/// <param name="token">Ends a request that the client cancelled.</param>
/// <returns>Writes the result.</returns>
internal delegate Task<Action<Utf8JsonWriter>> RouteAction(JsonElement parameters, CancellationToken token);

/// <summary>One method of the protocol.</summary>
/// <param name="Method">Its name.</param>
/// <param name="IsRequest">True where it must have an id: without one it would act and tell nobody what it did.</param>
/// <param name="Run">What happens.</param>
internal sealed record Route(string Method, bool IsRequest, RouteAction Run)
{
    /// <summary>What the server can do since it has this method.</summary>
    public Func<ServerCapabilities, ServerCapabilities> Declare { get; private init; } = can => can;

    /// <summary>The route with what it declares.</summary>
    public Route Can(Func<ServerCapabilities, ServerCapabilities> declare) => this with { Declare = declare };

    /// <summary>A result that says nothing.</summary>
    public static Task<Action<Utf8JsonWriter>> Nothing { get; } = Task.FromResult<Action<Utf8JsonWriter>>(writer => writer.WriteNullValue());

    /// <summary>A result to be written as its type says.</summary>
    public static Action<Utf8JsonWriter> Result<T>(T? value)
        where T : class => writer =>
    {
        if (value is null)
        {
            writer.WriteNullValue();
        }
        else
        {
            JsonSerializer.Serialize(writer, value, ProtocolJson.Of<T>());
        }
    };

    /// <summary>The parameters as a record.</summary>
    /// <exception cref="RefusedRequestException">They do not fit.</exception>
    public static T Read<T>(string method, JsonElement parameters)
        where T : class
    {
        try
        {
            if (parameters.Deserialize(ProtocolJson.Of<T>()) is { } read)
            {
                return read;
            }
        }
        catch (Exception problem) when (problem is JsonException or InvalidOperationException or FormatException or NotSupportedException)
        {
            // refused below
        }

        throw new RefusedRequestException(ErrorCodes.InvalidParams, $"the parameters of {method} can't be read");
    }
}
