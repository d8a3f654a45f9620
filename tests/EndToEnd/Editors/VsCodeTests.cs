using System.Text.Json;
using HealthNotes.EndToEnd.Support;
using HealthNotes.Tests.Support;

namespace HealthNotes.EndToEnd.Editors;

/// <summary>
/// The packed extension in a real VS Code: <c>editor-client/vscode/test/vscode/drive.mjs</c> types and clicks as a person
/// would. Pictures of what it saw lie in <c>HNOTE_SCREENSHOTS</c>.
/// </summary>
public sealed class VsCodeTests : IDisposable
{
    private const string Extension = "editor-client/vscode";
    private const string Package = Extension + "/health-notes-linux-x64.vsix";

    private readonly string folder = Directory.CreateTempSubdirectory("hnote-vscode-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [SkippableFact]
    public async Task The_extension_helps_to_write_a_note_and_shows_its_page()
    {
        string node = ExternalTool.Find("HNOTE_NODE", "apt-get install nodejs npm", "/usr/bin/node", "/usr/local/bin/node");
        _ = ExternalTool.Chromium;
        string editor = Environment.GetEnvironmentVariable("HNOTE_VSCODE") is { Length: > 0 } named ? named : Repository.PathOf("out/vscode");
        ExternalTool.Need(
            Directory.Exists(Path.Combine(editor, "node_modules", "code-server")),
            $"{editor} holds no VS Code: run {Extension}/test/vscode/get-vscode.sh out/vscode, or set HNOTE_VSCODE.");
        ExternalTool.Need(File.Exists(Repository.PathOf(Package)), $"{Package} is missing: run npm run package in {Extension}.");
        TaggedSample.Write(folder);
        string results = Path.Combine(folder, "results.json");
        string pictures = Path.Combine(Environment.GetEnvironmentVariable("HNOTE_SCREENSHOTS") ?? folder, "vscode");

        ToolRun run = await ToolRun.OfAsync(
            folder, [node, Repository.PathOf($"{Extension}/test/vscode/drive.mjs"), editor, Repository.PathOf(Package), folder, pictures, results]);

        Assert.True(File.Exists(results), $"no results, code {run.Code}\n{run.Output}\n{run.Errors}");
        string written = await File.ReadAllTextAsync(results);
        using JsonDocument read = JsonDocument.Parse(written);
        JsonElement seen = read.RootElement;
        Assert.False(seen.TryGetProperty("fault", out JsonElement fault), $"{fault}\n{written}\n{run.Output}");
        Assert.Contains("Write `stiff`", seen.GetProperty("fixes").GetString(), StringComparison.Ordinal);
        Assert.Contains("urgent", seen.GetProperty("statusAfter").GetString(), StringComparison.Ordinal);
        Assert.Equal("Marlow", seen.GetProperty("title").GetString());
        Assert.Equal(0, seen.GetProperty("pageScripts").GetInt32());
        Assert.Equal("rr 12/30s asleep", seen.GetProperty("counted").GetString());
        Assert.DoesNotContain(seen.GetProperty("messages").EnumerateArray(), message => message.GetString()!.Contains("Content Security Policy", StringComparison.Ordinal));
    }
}
