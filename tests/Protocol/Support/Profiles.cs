using System.Text.Json.Nodes;

namespace HealthNotes.Protocol.Tests.Support;

/// <summary>What two very different editors send to <c>initialize</c>.</summary>
internal static class Profiles
{
    /// <summary>Like VS Code: counts UTF-16, takes snippets, asks for diagnostics, shows progress, lets capabilities be registered.</summary>
    public static JsonObject Rich => Parse(Text("rich-client.json"));

    /// <summary>Like a small editor: counts UTF-8, wants diagnostics pushed, and has little else.</summary>
    public static JsonObject Sparse => Parse("""
        {
          "processId": null,
          "rootUri": null,
          "clientInfo": { "name": "sparse" },
          "capabilities": {
            "general": { "positionEncodings": ["utf-8"] },
            "textDocument": { "publishDiagnostics": { "relatedInformation": true } }
          }
        }
        """);

    /// <summary>The rich one with diagnostics pushed.</summary>
    public static JsonObject RichPush
    {
        get
        {
            JsonObject rich = Rich;
            rich["capabilities"]!["textDocument"]!.AsObject().Remove("diagnostic");
            rich["capabilities"]!["workspace"]!.AsObject().Remove("diagnostics");
            return rich;
        }
    }

    /// <summary>A client that counts in the given units and wants diagnostics pushed.</summary>
    public static JsonObject Counting(params string[] encodings)
    {
        JsonObject sparse = Sparse;
        sparse["capabilities"]!["general"]!["positionEncodings"] = new JsonArray([.. encodings.Select(encoding => JsonValue.Create(encoding))]);
        return sparse;
    }

    /// <summary>A recorded payload of these tests.</summary>
    public static string Text(string name) => File.ReadAllText(Path.Combine(Hnote.Top, "tests", "Protocol", "Payloads", name));

    /// <summary>Reads a payload.</summary>
    public static JsonObject Parse(string json) => JsonNode.Parse(json)!.AsObject();
}
