using System.CommandLine;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Schema;
using System.Text.Json.Serialization.Metadata;
using HealthNotes.Cli.Output;
using HealthNotes.Export.Writers;

namespace HealthNotes.Cli.Commands;

/// <summary><c>hnote schema NAME</c>: the JSON Schema of what a command prints for other programs.</summary>
internal static class SchemaCommand
{
    private static readonly JsonSchemaExporterOptions Strict = new() { TreatNullObliviousAsNonNullable = true };

    private static readonly Dictionary<string, Func<JsonNode>> Schemas = new()
    {
        ["check"] = () => Of("hnote check --json", ContractJson.Readable.CheckReport),
        ["read"] = () => Of("hnote read --json", ContractJson.Readable.ReadReport),
        ["values"] = () => Of("hnote values --json", ContractJson.Readable.ValuesReport),
        ["days"] = () => Of("hnote values --days --json", ContractJson.Readable.DaysReport),
        ["due"] = () => Of("hnote due --json", ContractJson.Readable.DueReport),
        ["export"] = SchemaText.JsonSchema,
    };

    public static Command Create()
    {
        var name = new Argument<string>("name") { Description = string.Join(", ", Schemas.Keys) };
        name.AcceptOnlyFromAmong([.. Schemas.Keys]);
        var command = new Command("schema", "Print the JSON Schema of what a command prints for other programs") { name };
        command.SetAction(parsed =>
        {
            Terminal.WriteJson(Schemas[parsed.GetValue(name)!]().ToJsonString(new JsonSerializerOptions(ContractJson.Readable.Options) { WriteIndented = true }));
            return ExitCodes.Fine;
        });
        return command;
    }

    private static JsonObject Of(string title, JsonTypeInfo type)
    {
        JsonObject schema = type.GetJsonSchemaAsNode(Strict).AsObject();
        schema.Insert(0, "$schema", "https://json-schema.org/draft/2020-12/schema");
        schema.Insert(1, "title", title);
        return schema;
    }
}
