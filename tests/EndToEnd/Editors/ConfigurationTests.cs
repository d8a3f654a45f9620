using System.Text.Json;
using HealthNotes.EndToEnd.Support;
using HealthNotes.Tests.Support;

namespace HealthNotes.EndToEnd.Editors;

/// <summary>The configurations that owners copy, as they stand in <c>editor-client</c>, in a real Neovim without a screen.</summary>
public sealed class ConfigurationTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("hnote-configured-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [SkippableFact]
    public async Task Neovims_starts_the_server_and_shows_what_it_finds()
    {
        JsonElement seen = await OpenAsync(
            "--cmd", $"let g:hnote_command = {JsonSerializer.Serialize(BuiltServer.Command)}", "--cmd", $"luafile {Repository.PathOf("editor-client/neovim/hnote.lua")}");
        Assert.Equal("hnote", seen.GetProperty("filetype").GetString());
        Assert.Contains(seen.GetProperty("diagnostics").EnumerateArray(), message => message.GetString()!.Contains("`stif`", StringComparison.Ordinal));
    }

    [SkippableFact]
    public async Task Vims_knows_the_file_and_colours_its_lines()
    {
        JsonElement seen = await OpenAsync(
            "--cmd", $"set runtimepath^={Repository.PathOf("editor-client/vim")}", "--cmd", "filetype plugin on", "--cmd", "syntax on");
        Assert.Equal("hnote", seen.GetProperty("filetype").GetString());
        Assert.Equal("# %s", seen.GetProperty("comment").GetString());
        Assert.Equal("hnoteWord", seen.GetProperty("group").GetString());
        Assert.Equal("hnoteDate", seen.GetProperty("date").GetString());
    }

    private async Task<JsonElement> OpenAsync(params string[] before)
    {
        string neovim = ExternalTool.Find("HNOTE_NEOVIM", "apt-get install neovim", "/usr/bin/nvim", "/usr/local/bin/nvim");
        SampleCopy.Write(folder);
        string results = Path.Combine(folder, "results.json");
        ToolRun run = await ToolRun.OfAsync(
            folder,
            [neovim, "--headless", "--clean", .. before, Path.Combine(folder, "visit.hnote"), "-S", Repository.PathOf("tests/EndToEnd/Editors/configured.lua")],
            ("HNOTE_RESULTS", results),
            ("XDG_STATE_HOME", folder));
        Assert.True(File.Exists(results), $"no results, code {run.Code}\n{run.Output}\n{run.Errors}");
        using JsonDocument read = JsonDocument.Parse(await File.ReadAllTextAsync(results));
        return read.RootElement.Clone();
    }
}
