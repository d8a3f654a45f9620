using System.Text.Json;
using HealthNotes.EndToEnd.Support;
using HealthNotes.Tests.Support;

namespace HealthNotes.EndToEnd.Editors;

/// <summary>
/// A real VS Code in Chromium with the packed extension; <c>drive.mjs</c> beside the extension types and clicks as a person
/// would. Its pictures go to <c>out/pictures</c>.
/// </summary>
public sealed class VsCodeTests : IDisposable
{
    private const string Extension = "editor-client/vscode";
    private const string Vsix = $"{Extension}/health-notes-linux-x64.vsix";
    private const string GetVsCode = $"bash {Extension}/test/vscode/get-vscode.sh out/vscode (about two minutes)";

    private readonly string folder = Directory.CreateTempSubdirectory("hnote-vscode-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [SkippableFact]
    public async Task The_packed_extension_works_in_a_real_VS_Code()
    {
        string node = ExternalTool.Find("HNOTE_NODE", "apt-get install nodejs npm", "/usr/bin/node", "/usr/local/bin/node");
        string entry = "node_modules/code-server/out/node/entry.js";
        string code = ExternalTool.Find("HNOTE_VSCODE", GetVsCode, Repository.PathOf($"out/vscode/{entry}"));
        ExternalTool.Need(File.Exists(Repository.PathOf(Vsix)), $"{Vsix} is missing: (cd {Extension} && npm ci --ignore-scripts && npm run package)");
        SampleCopy.Write(folder);
        string results = Path.Combine(folder, "results.json");

        ToolRun run = await ToolRun.OfAsync(
            folder,
            [
                node, Repository.PathOf($"{Extension}/test/vscode/drive.mjs"), code[..^entry.Length], Repository.PathOf(Vsix), folder,
                Repository.PathOf("out/pictures"), results,
            ],
            ("HNOTE_CHROMIUM", ExternalTool.Chromium));

        Assert.True(File.Exists(results), $"no results, code {run.Code}\n{run.Output}\n{run.Errors}");
        string written = await File.ReadAllTextAsync(results);
        using JsonDocument read = JsonDocument.Parse(written);
        JsonElement seen = read.RootElement;
        Assert.False(seen.TryGetProperty("fault", out JsonElement fault), $"{fault}\n{written}\n{run.Errors}");

        Assert.Contains("1 not understood", Text("status"), StringComparison.Ordinal);
        Assert.Contains("Write `stiff`", Text("fixes"), StringComparison.Ordinal);
        Assert.Contains("limb", Text("offered"), StringComparison.Ordinal);
        Assert.Contains("1 urgent", Text("statusAfter"), StringComparison.Ordinal);
        Assert.DoesNotContain("not understood", Text("statusAfter"), StringComparison.Ordinal);
        Assert.Equal("Marlow", Text("title"));
        Assert.Equal(0, seen.GetProperty("pageScripts").GetInt32());
        Assert.Equal("rr 12/30s asleep", Text("counted"));
        Assert.Equal("24/min", Text("rate"));
        Assert.Contains("Capillary refill time", Text("hover"), StringComparison.Ordinal);
        Assert.Equal(SampleCopy.TaggedLines, seen.GetProperty("renamed").GetInt32());
        Assert.Equal(0, seen.GetProperty("left").GetInt32());
        Assert.Contains("appointment with the vet2026-11-27, in 2 days", Text("due"), StringComparison.Ordinal);
        Assert.Equal("Marlow: check sheet", Text("visit-sheet.html"));
        Assert.Equal("Marlow: visit page, 2026-11-25", Text("visit-page.html"));
        Assert.Equal("Pebble: check sheet", Text("firstSheet"));
        Assert.True(seen.GetProperty("firstFile").GetBoolean());
        Assert.Contains("not checked", Text("unchecked"), StringComparison.Ordinal);
        // today's check was only begun: what was urgent before still is
        Assert.Contains("1 urgent", Text("onPath"), StringComparison.Ordinal);
        Assert.Empty(seen.GetProperty("messages").EnumerateArray());

        string Text(string name) => seen.GetProperty(name).GetString()!;
    }
}
