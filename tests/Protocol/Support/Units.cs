using System.Text;
using System.Text.Json.Nodes;

namespace HealthNotes.Protocol.Tests.Support;

/// <summary>Counts characters as a client does (3.17, Text Documents, Position): written apart from the server, to hold it to the specification.</summary>
internal readonly record struct Units(string Name)
{
    /// <summary>The position of an offset.</summary>
    public JsonObject PositionOf(string text, int offset)
    {
        int line = 0;
        int start = 0;
        for (int at = 0; at < offset; at++)
        {
            if (text[at] == '\n' || (text[at] == '\r' && (at + 1 == text.Length || text[at + 1] != '\n')))
            {
                line++;
                start = at + 1;
            }
        }

        return new JsonObject { ["line"] = line, ["character"] = CountOf(text[start..offset]) };
    }

    /// <summary>The offset of a position; past the end of a line is its end.</summary>
    public int OffsetOf(string text, JsonNode position)
    {
        int at = 0;
        for (int line = (int)position["line"]!; line > 0 && at < text.Length; at++)
        {
            if (text[at] == '\n' || (text[at] == '\r' && (at + 1 == text.Length || text[at + 1] != '\n')))
            {
                line--;
            }
        }

        int units = (int)position["character"]!;
        int end = at;
        while (end < text.Length && text[end] is not ('\r' or '\n') && CountOf(text[at..end]) < units)
        {
            end += char.IsHighSurrogate(text[end]) && end + 1 < text.Length && char.IsLowSurrogate(text[end + 1]) ? 2 : 1;
        }

        return end;
    }

    private int CountOf(string text) => Name switch
    {
        "utf-8" => Encoding.UTF8.GetByteCount(text),
        "utf-32" => text.EnumerateRunes().Count(),
        _ => text.Length,
    };
}
