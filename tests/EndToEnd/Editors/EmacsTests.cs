using System.Text.Json;
using HealthNotes.EndToEnd.Support;
using HealthNotes.Tests.Support;

namespace HealthNotes.EndToEnd.Editors;

/// <summary>
/// A real Emacs without a screen opens a sample with the built server, eglot and <c>editor-client/emacs/hnote-mode.el</c>,
/// loaded as its README says; <c>emacs.el</c> drives it.
/// </summary>
public sealed class EmacsTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("hnote-emacs-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [SkippableFact]
    public async Task Emacs_shows_findings_and_hovers_takes_a_completion_applies_an_action_formats_and_renames()
    {
        string emacs = ExternalTool.Find("HNOTE_EMACS", "apt-get install emacs-nox elpa-eglot", "/usr/bin/emacs", "/usr/local/bin/emacs");
        (string, string) home = ("HOME", folder);
        ToolRun eglot = await ToolRun.OfAsync(folder, [emacs, "--batch", "--eval", "(require 'eglot)"], home);
        ExternalTool.Need(eglot.Code == 0, "Emacs lacks eglot: apt-get install elpa-eglot, or Emacs 29.");
        SampleCopy.Write(folder);
        string results = Path.Combine(folder, "results.json");

        ToolRun run = await ToolRun.OfAsync(
            folder,
            [
                emacs, "--batch", "--load", Repository.PathOf("editor-client/emacs/hnote-mode.el"),
                "--load", Repository.PathOf("tests/EndToEnd/Editors/emacs.el"),
            ],
            home,
            ("HNOTE_SERVER", JsonSerializer.Serialize(BuiltServer.Command)),
            ("HNOTE_FOLDER", folder),
            ("HNOTE_RESULTS", results));

        Assert.True(File.Exists(results), $"no results, code {run.Code}\n{run.Output}\n{run.Errors}");
        string written = await File.ReadAllTextAsync(results);
        using JsonDocument read = JsonDocument.Parse(written);
        JsonElement seen = read.RootElement;
        Assert.False(seen.TryGetProperty("fault", out JsonElement fault), $"{fault}\n{written}\n{run.Errors}");
        Assert.Equal("hnote-mode", Text("mode"));
        Assert.Contains(Texts("diagnostics"), message => message.Contains("`stif`", StringComparison.Ordinal));
        Assert.Contains("Capillary refill time", Text("hover"), StringComparison.Ordinal);
        Assert.Contains("bright", Texts("offered"));
        Assert.Equal("  alert bright", Text("completed"));
        Assert.Contains("Write `stiff`", Texts("actions"));
        Assert.Equal("  gait stiff  warms-up", Text("corrected"));
        Assert.Equal("  gait stiff warms-up", Text("formatted"));
        Assert.Equal(SampleCopy.TaggedLines, seen.GetProperty("renamed").GetInt32());
        Assert.Equal(0, seen.GetProperty("left").GetInt32());
        Assert.Equal(
            ["comment", "keyword", "constant", "doc", "variable-name", "comment"],
            Texts("painted").Select(face => face["font-lock-".Length..^"-face".Length]));

        string Text(string name) => seen.GetProperty(name).GetString()!;
        string[] Texts(string name) => [.. seen.GetProperty(name).EnumerateArray().Select(one => one.GetString()!)];
    }
}
