using System.Text.Json;

namespace HealthNotes.EndToEnd.Support;

/// <summary>What a script that drives an editor saw, by name: the JSON file it leaves.</summary>
internal sealed class Seen
{
    private readonly JsonElement all;

    private Seen(JsonElement all) => this.all = all;

    /// <summary>Reads what a run left. A run that left nothing, or that waited for something in vain, fails the test.</summary>
    public static async Task<Seen> OfAsync(ToolRun run, string results)
    {
        Assert.True(File.Exists(results), $"no results, code {run.Code}\n{run.Output}\n{run.Errors}");
        string written = await File.ReadAllTextAsync(results);
        using var read = JsonDocument.Parse(written);
        JsonElement all = read.RootElement.Clone();
        Assert.False(all.TryGetProperty("fault", out JsonElement fault), $"{fault}\n{written}\n{run.Errors}");
        return new Seen(all);
    }

    /// <summary>A text.</summary>
    public string Text(string name) => all.GetProperty(name).GetString()!;

    /// <summary>Several texts.</summary>
    public string[] Texts(string name) => [.. all.GetProperty(name).EnumerateArray().Select(one => one.GetString()!)];

    /// <summary>A number.</summary>
    public int Number(string name) => all.GetProperty(name).GetInt32();

    /// <summary>Whether something is so.</summary>
    public bool Is(string name) => all.GetProperty(name).GetBoolean();
}
