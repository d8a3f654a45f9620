using HealthNotes.EndToEnd.Support;
using HealthNotes.Tests.Support;

namespace HealthNotes.EndToEnd.Editors;

/// <summary>
/// The extension's own tests, <c>npm test</c>: its types, its plain functions, its settings against the server's, its colours
/// against fixed lines and, on every sample, against what the built server says.
/// </summary>
public sealed class VsCodeExtensionTests
{
    private const string Extension = "editor-client/vscode";

    [SkippableFact]
    public async Task The_extensions_own_tests_pass()
    {
        string npm = ExternalTool.Find("HNOTE_NPM", "apt-get install nodejs npm", "/usr/bin/npm", "/usr/local/bin/npm");
        string folder = Repository.PathOf(Extension);
        ExternalTool.Need(Directory.Exists(Path.Combine(folder, "node_modules")), $"{Extension} has no libraries: run npm ci --ignore-scripts in it.");

        ToolRun run = await ToolRun.OfAsync(folder, [npm, "test"]);

        Assert.True(run.Code == 0, run.Output + run.Errors);
        Assert.Contains("no sample is painted against the server", run.Output, StringComparison.Ordinal);
    }
}
