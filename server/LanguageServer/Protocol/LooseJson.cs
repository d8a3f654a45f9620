using System.Buffers;
using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace HealthNotes.LanguageServer.Protocol;

/// <summary>
/// A whole number in whatever form JSON allows it (<c>3.0</c>, <c>3e0</c>); one beyond our numbers becomes the last of them, as a
/// position beyond the text becomes its end.
/// </summary>
internal sealed class LooseInt : JsonConverter<int>
{
    /// <inheritdoc/>
    public override int Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
    {
        if (reader.TokenType == JsonTokenType.Number && reader.TryGetInt32(out int number))
        {
            return number;
        }

        return reader.TokenType == JsonTokenType.Number && reader.TryGetDouble(out double value) && Math.Truncate(value) == value
            ? (int)Math.Clamp(value, int.MinValue, int.MaxValue)
            : throw new JsonException();
    }

    /// <inheritdoc/>
    public override void Write(Utf8JsonWriter writer, int value, JsonSerializerOptions options) => writer.WriteNumberValue(value);
}

/// <summary>Text as an editor has it: half of a surrogate pair, which editors keep and JSON can say, stays what it is.</summary>
internal sealed class LooseText : JsonConverter<string>
{
    private static readonly UTF8Encoding Utf8 = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    /// <inheritdoc/>
    public override string? Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
    {
        if (reader.TokenType != JsonTokenType.String)
        {
            throw new JsonException();
        }

        try
        {
            return reader.GetString();
        }
        catch (InvalidOperationException)
        {
            return Unescaped(reader.HasValueSequence ? reader.ValueSequence.ToArray() : reader.ValueSpan.ToArray());
        }
    }

    /// <inheritdoc/>
    public override void Write(Utf8JsonWriter writer, string value, JsonSerializerOptions options) => writer.WriteStringValue(value);

    /// <summary>RFC 8259, section 7. The reader has checked the escapes; it refuses only what they stand for.</summary>
    private static string Unescaped(byte[] bytes)
    {
        string raw;
        try
        {
            raw = Utf8.GetString(bytes);
        }
        catch (DecoderFallbackException)
        {
            throw new JsonException();
        }

        var text = new StringBuilder(raw.Length);
        for (int at = 0; at < raw.Length; at++)
        {
            if (raw[at] != '\\')
            {
                text.Append(raw[at]);
                continue;
            }

            char escape = raw[++at];
            text.Append(escape switch
            {
                'b' => '\b',
                'f' => '\f',
                'n' => '\n',
                'r' => '\r',
                't' => '\t',
                'u' => (char)ushort.Parse(raw.AsSpan(at + 1, 4), NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture),
                _ => escape,
            });
            at += escape == 'u' ? 4 : 0;
        }

        return text.ToString();
    }
}
