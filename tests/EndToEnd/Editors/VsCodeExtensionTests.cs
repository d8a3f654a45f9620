using System.Text.RegularExpressions;
using HealthNotes.EndToEnd.Support;
using HealthNotes.Tests.Support;

namespace HealthNotes.EndToEnd.Editors;

/// <summary>
/// The extension's own tests, by <c>npm test</c> in its folder: types, the parts that need no editor, its settings and what it
/// reads against the built server, and its TextMate grammar, which is also compared with the server's tokens on every sample.
/// </summary>
public sealed class VsCodeExtensionTests
{
    private const string Extension = "editor-client/vscode";

    [SkippableFact]
    public async Task The_extensions_own_tests_pass()
    {
        string npm = ExternalTool.Find("HNOTE_NPM", "apt-get install nodejs npm", "/usr/bin/npm", "/usr/local/bin/npm");
        ExternalTool.Need(
            Directory.Exists(Repository.PathOf($"{Extension}/node_modules")),
            $"{Extension}/node_modules is missing: (cd {Extension} && npm ci --ignore-scripts)");

        ToolRun run = await ToolRun.OfAsync(Repository.PathOf(Extension), [npm, "test"]);

        string said = run.Output + run.Errors;
        Assert.True(run.Code == 0, said);
        Assert.True(Regex.IsMatch(said, @"pass [1-9]\d+\n") && said.Contains("test/grammar/first-paint.hnote run", StringComparison.Ordinal), $"not all of it ran\n{said}");
    }
}
