using System.Text.Json;
using HealthNotes.EndToEnd.Support;
using HealthNotes.Tests.Support;

namespace HealthNotes.EndToEnd.Editors;

/// <summary>
/// A real Neovim without a screen opens a sample with the built server and the configuration of <c>editor-client/neovim</c>,
/// put where its README says; <c>neovim.lua</c> presses the keys.
/// </summary>
public sealed class NeovimTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("hnote-neovim-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [SkippableFact]
    public async Task Neovim_shows_findings_and_hovers_takes_a_completion_applies_an_action_formats_and_renames()
    {
        string neovim = ExternalTool.Find("HNOTE_NEOVIM", "apt-get install neovim", "/usr/bin/nvim", "/usr/local/bin/nvim");
        SampleCopy.Write(folder);
        string plugins = Directory.CreateDirectory(Path.Combine(folder, "nvim", "plugin")).FullName;
        File.Copy(Repository.PathOf("editor-client/neovim/hnote.lua"), Path.Combine(plugins, "hnote.lua"));
        string results = Path.Combine(folder, "results.json");

        ToolRun run = await ToolRun.OfAsync(
            folder,
            [neovim, "--headless", "--clean", "-S", Repository.PathOf("tests/EndToEnd/Editors/neovim.lua")],
            ("HNOTE_SERVER", JsonSerializer.Serialize(BuiltServer.Command)),
            ("HNOTE_NEOVIM", neovim),
            ("HNOTE_FOLDER", folder),
            ("HNOTE_RESULTS", results),
            ("XDG_CONFIG_HOME", folder),
            ("XDG_DATA_HOME", folder),
            ("XDG_STATE_HOME", folder),
            ("XDG_CACHE_HOME", folder));

        Seen seen = await Seen.OfAsync(run, results);
        Assert.Contains(seen.Texts("diagnostics"), message => message.Contains("`stif`", StringComparison.Ordinal));
        Assert.Contains("`stif`", seen.Text("beside"), StringComparison.Ordinal);
        Assert.Contains("bright", seen.Texts("offered"));
        Assert.Equal("  alert bright", seen.Text("completed"));
        Assert.Contains(seen.Texts("actions"), title => title.Contains("stiff", StringComparison.Ordinal));
        Assert.Equal("  gait stiff  warms-up", seen.Text("corrected"));
        Assert.Equal("  gait stiff warms-up", seen.Text("formatted"));
        Assert.Equal("hnote", seen.Text("filetype"));
        Assert.Contains("Capillary refill time", seen.Text("hover"), StringComparison.Ordinal);
        Assert.Equal(SampleCopy.TaggedLines, seen.Number("renamed"));
    }
}
