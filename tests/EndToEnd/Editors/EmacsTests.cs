using System.Text.Json;
using HealthNotes.EndToEnd.Support;
using HealthNotes.Tests.Support;

namespace HealthNotes.EndToEnd.Editors;

/// <summary>A real Emacs without a screen, with the project's own configuration, opens a sample with the built server.</summary>
public sealed class EmacsTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("hnote-emacs-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [SkippableFact]
    public async Task Emacs_shows_findings_completes_explains_fixes_renames_and_formats()
    {
        string emacs = ExternalTool.Find("HNOTE_EMACS", "apt-get install emacs-nox elpa-eglot", "/usr/bin/emacs", "/usr/local/bin/emacs");
        TaggedSample.Write(folder);
        string results = Path.Combine(folder, "results.json");

        ToolRun run = await ToolRun.OfAsync(
            folder,
            [
                emacs, "--batch", "-q", "-f", "package-initialize",
                "-l", Repository.PathOf("editor-client/emacs/hnote-mode.el"), "-l", Repository.PathOf("tests/EndToEnd/Editors/emacs.el"),
            ],
            ("HNOTE_SERVER", JsonSerializer.Serialize(BuiltServer.Command)),
            ("HNOTE_FOLDER", folder),
            ("HNOTE_RESULTS", results),
            ("HOME", folder));

        Assert.True(File.Exists(results), $"no results, code {run.Code}\n{run.Output}\n{run.Errors}");
        string written = await File.ReadAllTextAsync(results);
        using JsonDocument read = JsonDocument.Parse(written);
        JsonElement seen = read.RootElement;
        Assert.False(seen.TryGetProperty("fault", out JsonElement fault), $"{fault}\n{written}\n{run.Errors}");
        Assert.Equal("hnote-mode", seen.GetProperty("mode").GetString());
        Assert.Contains(seen.GetProperty("diagnostics").EnumerateArray(), message => message.GetString()!.Contains("`stif`", StringComparison.Ordinal));
        Assert.Contains("bright", seen.GetProperty("offered").EnumerateArray().Select(word => word.GetString()));
        Assert.Equal("  alert bright", seen.GetProperty("completed").GetString());
        Assert.Contains("How the pet walks", seen.GetProperty("hover").GetString(), StringComparison.Ordinal);
        Assert.Contains(seen.GetProperty("actions").EnumerateArray(), title => title.GetString()!.Contains("stiff", StringComparison.Ordinal));
        Assert.Equal(TaggedSample.Mentions(folder), seen.GetProperty("renamed").GetInt32());
        Assert.Equal(0, seen.GetProperty("left").GetInt32());
        Assert.Equal("  gait stiff warms-up", seen.GetProperty("formatted").GetString());
    }
}
