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

        Seen seen = await Seen.OfAsync(run, results);
        Assert.Equal("hnote-mode", seen.Text("mode"));
        Assert.Contains(seen.Texts("diagnostics"), message => message.Contains("`stif`", StringComparison.Ordinal));
        Assert.Contains("Capillary refill time", seen.Text("hover"), StringComparison.Ordinal);
        Assert.Contains("bright", seen.Texts("offered"));
        Assert.Equal("  alert bright", seen.Text("completed"));
        Assert.Contains(seen.Texts("actions"), title => title.StartsWith("Write: gait stiff", StringComparison.Ordinal));
        Assert.Equal("  gait stiff  warms-up", seen.Text("corrected"));
        Assert.Equal("  gait stiff warms-up", seen.Text("formatted"));
        Assert.Equal(SampleCopy.TaggedLines, seen.Number("renamed"));
        Assert.Equal(0, seen.Number("left"));
        Assert.Equal(
            ["comment", "keyword", "constant", "doc", "variable-name", "comment"],
            seen.Texts("painted").Select(face => face["font-lock-".Length..^"-face".Length]));
    }
}
