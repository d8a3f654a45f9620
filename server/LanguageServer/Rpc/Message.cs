using System.Text.Json;
using HealthNotes.LanguageServer.Protocol;

namespace HealthNotes.LanguageServer.Rpc;

/// <summary>What names a request: a number or a word.</summary>
internal readonly record struct RequestId(long Number, string? Word = null)
{
    /// <summary>The id in JSON, or null where it is neither a whole number nor a text.</summary>
    public static RequestId? Of(JsonElement id) => id.ValueKind switch
    {
        JsonValueKind.Number when id.TryGetInt64(out long number) => new RequestId(number),
        JsonValueKind.String => new RequestId(0, id.GetString()),
        _ => null,
    };

    /// <summary>Writes it as the value of the property <c>id</c>.</summary>
    public void Write(Utf8JsonWriter writer)
    {
        if (Word is null)
        {
            writer.WriteNumber("id"u8, Number);
        }
        else
        {
            writer.WriteString("id"u8, Word);
        }
    }
}

/// <summary>One message of JSON-RPC 2.0. Without a method it is an answer; without an id a notification.</summary>
/// <param name="Id">What names the request.</param>
/// <param name="Method">What is wanted.</param>
/// <param name="Parameters">What it is wanted with; null where there are none.</param>
/// <param name="Result">What a request of ours was answered with; null where it was refused.</param>
internal sealed record Message(RequestId? Id, string? Method, JsonElement? Parameters, JsonElement? Result)
{
    /// <summary>Reads the body of a message.</summary>
    /// <exception cref="RefusedRequestException">It is not JSON, or not a message.</exception>
    public static Message Parse(ReadOnlySpan<byte> body)
    {
        JsonElement root;
        try
        {
            root = JsonElement.Parse(body);
        }
        catch (JsonException)
        {
            throw new RefusedRequestException(ErrorCodes.ParseError, "this is not JSON");
        }

        try
        {
            return Of(root) ?? throw new RefusedRequestException(ErrorCodes.InvalidRequest, "this is JSON, but not a message of JSON-RPC 2.0");
        }
        catch (InvalidOperationException)
        {
            throw new RefusedRequestException(ErrorCodes.InvalidRequest, "the method or the id has half of a character");
        }
    }

    private static Message? Of(JsonElement root)
    {
        if (root.ValueKind != JsonValueKind.Object)
        {
            return null;
        }

        bool named = root.TryGetProperty("id"u8, out JsonElement given);
        RequestId? id = named ? RequestId.Of(given) : null;
        if (root.TryGetProperty("method"u8, out JsonElement method))
        {
            bool fits = method.ValueKind == JsonValueKind.String && method.GetString() is { Length: > 0 } && (id is not null || !named);
            return fits ? new Message(id, method.GetString(), Property(root, "params"u8), null) : null;
        }

        return named && (root.TryGetProperty("result"u8, out _) || root.TryGetProperty("error"u8, out _))
            ? new Message(id, null, null, Property(root, "result"u8))
            : null;
    }

    private static JsonElement? Property(JsonElement root, ReadOnlySpan<byte> name) => root.TryGetProperty(name, out JsonElement value) ? value : null;
}
