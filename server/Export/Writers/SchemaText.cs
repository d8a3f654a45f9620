using System.Text;
using System.Text.Json.Nodes;
using HealthNotes.Export.Tables;

namespace HealthNotes.Export.Writers;

/// <summary>Documents the tables from their one definition: for people in Markdown, for programs as JSON Schema.</summary>
public static class SchemaText
{
    /// <summary>The tables and columns in Markdown.</summary>
    public static string Markdown()
    {
        var text = new StringBuilder();
        foreach (ExportTable table in ExportTables.All)
        {
            text.Append($"## {table.Name}\n\n{table.About}\n\n| column | type | what it holds | with pseudonyms |\n| --- | --- | --- | --- |\n");
            foreach (Column column in table.Columns)
            {
                text.Append($"| `{column.Name}` | {column.Type.ToString().ToLowerInvariant()}{(column.Always ? "" : "?")} | {column.About.Replace("|", "\\|", StringComparison.Ordinal)} | {Becomes(column.Privacy)} |\n");
            }

            text.Append('\n');
        }

        return text.ToString().TrimEnd() + "\n";
    }

    /// <summary>The JSON Schema (2020-12) of one row of each table, under <c>$defs</c>; as a whole it takes a row of any table.</summary>
    public static JsonObject JsonSchema() => new()
    {
        ["$schema"] = "https://json-schema.org/draft/2020-12/schema",
        ["title"] = $"hnote export --format ndjson, version {ExportTables.Version}",
        ["anyOf"] = new JsonArray([.. ExportTables.All.Select(table => new JsonObject { ["$ref"] = "#/$defs/" + table.Name })]),
        ["$defs"] = new JsonObject(ExportTables.All.Select(table => KeyValuePair.Create(table.Name, (JsonNode?)RowSchema(table)))),
    };

    private static JsonObject RowSchema(ExportTable table) => new()
    {
        ["description"] = table.About,
        ["type"] = "object",
        ["properties"] = new JsonObject(table.Columns.Select(column => KeyValuePair.Create(column.Name, (JsonNode?)ValueSchema(column)))),
        ["required"] = new JsonArray([.. table.Columns.Select(column => (JsonNode)column.Name)]),
        ["additionalProperties"] = false,
    };

    private static JsonObject ValueSchema(Column column)
    {
        string type = column.Type switch { ColumnType.Integer => "integer", ColumnType.Number => "number", ColumnType.YesNo => "boolean", _ => "string" };
        var schema = new JsonObject { ["description"] = column.About, ["type"] = column.Always && column.Privacy != Privacy.Words ? type : new JsonArray(type, "null") };
        if (column.Type == ColumnType.Date)
        {
            schema["format"] = "date";
        }

        return schema;
    }

    private static string Becomes(Privacy privacy) => privacy switch
    {
        Privacy.Name => "a keyed hash",
        Privacy.Known => "a keyed hash, unless its words are known",
        Privacy.Words => "left out",
        _ => "as it is",
    };
}
