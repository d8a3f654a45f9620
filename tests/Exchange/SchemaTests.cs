using System.Text.Json;
using System.Text.Json.Nodes;
using Json.Schema;

namespace HealthNotes.Exchange.Tests;

/// <summary>What is printed for other programs is what its schema says, and the schema in the package is that of the program.</summary>
public class SchemaTests
{
    private static readonly string Samples = Path.Combine(Hnote.Top, "samples");

    [Theory]
    [InlineData("check", "check", "--json", "--today", Hnote.Today)]
    [InlineData("values", "values", "--json", "--today", Hnote.Today)]
    [InlineData("days", "values", "--days", "--json", "--today", Hnote.Today)]
    [InlineData("read", "read", "--json")]
    [InlineData("due", "due", "--json", "--today", Hnote.Today)]
    public void The_JSON_of_a_command_fits_its_schema(string name, params string[] command)
    {
        JsonSchema schema = Schema(name);
        foreach (string note in Directory.EnumerateFiles(Samples, "*.hnote"))
        {
            Outcome outcome = Hnote.Run([.. command, note]);
            AssertFits(schema, outcome.Output);
        }
    }

    [Fact]
    public void Every_row_of_an_export_fits_the_schema_of_its_table()
    {
        using var work = new Workspace();
        work.Note("pet X\nspecies cat\nchip 1\n2026-10-04 visit\n  lab creatinine 110umol/L ref 44-159\n  bp 150/90\n  vaccine rabies for 3y\n  gums bleu\n", "x.hnote");
        Assert.Equal(0, Hnote.Run("export", Samples, work.Folder, "--with-text", "--out", work.PathOf("out"), "--today", Hnote.Today).Code);
        JsonObject all = JsonNode.Parse(Hnote.Run("schema", "export").Output)!.AsObject();
        foreach ((string table, JsonNode? of) in all["$defs"]!.AsObject())
        {
            JsonSchema schema = JsonSchema.FromText(of!.ToJsonString());
            string[] rows = File.ReadAllLines(work.PathOf($"out/{table}.ndjson"));
            Assert.NotEmpty(rows);
            Assert.All(rows, row => AssertFits(schema, row));
        }
    }

    [Theory]
    [InlineData("check")]
    [InlineData("read")]
    [InlineData("values")]
    [InlineData("days")]
    [InlineData("due")]
    [InlineData("export")]
    public void The_schemas_beside_the_program_are_its_own(string name)
    {
        string file = Path.Combine(Hnote.Top, "server", "Cli", "schemas", name + ".schema.json");
        string now = Hnote.Run("schema", name).Output.ReplaceLineEndings("\n");
        if (Environment.GetEnvironmentVariable("HNOTE_WRITE_DOCS") == "1")
        {
            Directory.CreateDirectory(Path.GetDirectoryName(file)!);
            File.WriteAllText(file, now);
        }

        Assert.Equal(now, File.ReadAllText(file));
    }

    private static JsonSchema Schema(string name) => JsonSchema.FromText(Hnote.Run("schema", name).Output);

    private static void AssertFits(JsonSchema schema, string json)
    {
        using var document = JsonDocument.Parse(json);
        EvaluationResults results = schema.Evaluate(document.RootElement, new EvaluationOptions { OutputFormat = OutputFormat.List, RequireFormatValidation = true });
        Assert.True(results.IsValid, json[..Math.Min(json.Length, 300)] + "\n" + string.Join("\n", (results.Details ?? []).Where(one => one.Errors is not null).SelectMany(one => one.Errors!.Select(error => $"{one.InstanceLocation}: {error.Value}")).Take(5)));
    }
}
