using System.Text.RegularExpressions;
using HealthNotes.EndToEnd.Support;
using HealthNotes.Tests.Support;

namespace HealthNotes.EndToEnd.TypeGuards;

/// <summary>
/// The built server against a client made of <c>vscode-languageserver-protocol</c>, <c>-types</c> and <c>vscode-jsonrpc</c>:
/// every answer is looked at with the libraries' own type guards (see <c>Client/client.js</c>).
/// </summary>
public sealed class TypeGuardTests : IDisposable
{
    private const string Client = "tests/EndToEnd/TypeGuards/Client";

    private static readonly string[] Expected =
    [
        "pushed diagnostics", "diagnostics cleared on close", "exit", "initialize", "pull diagnostics", "pull diagnostics again",
        "workspace pull diagnostics", "inlay hints", "completion", "completion resolve", "hover", "code actions", "code action resolve",
        "definition", "references", "highlight", "prepare rename", "rename", "document symbols", "folding", "selection ranges",
        "workspace symbols", "formatting", "range formatting", "on type formatting", "semantic tokens full", "semantic tokens delta",
        "semantic tokens delta equals full", "semantic tokens range", "document links", "code lenses", "commands", "command showUnits",
        "command addCheckToday", "command goTo", "command openPage", "registrations",
    ];

    private readonly string folder = Directory.CreateTempSubdirectory("hnote-guards-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [SkippableFact]
    public async Task Every_answer_passes_the_guards_of_the_protocols_own_library()
    {
        string node = ExternalTool.Find("HNOTE_NODE", "apt-get install nodejs npm", "/usr/bin/node", "/usr/local/bin/node");
        await InstallAsync();
        SampleCopy.Write(folder);

        ToolRun run = await ToolRun.OfAsync(folder, [node, Repository.PathOf($"{Client}/client.js"), folder, .. BuiltServer.Command]);

        string said = run.Output + run.Errors;
        string[] passed = [.. run.Output.Split('\n').Select(line => Regex.Match(line, @"^ok (.+) \(\d+\)$")).Where(match => match.Success).Select(match => match.Groups[1].Value)];
        Assert.True(Expected.All(passed.Contains), $"not checked: {string.Join(", ", Expected.Except(passed))}\n{said}");
        Assert.DoesNotContain("fault", run.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("not announced", run.Output, StringComparison.Ordinal);
        Assert.True(run.Code == 0, said);
    }

    /// <summary>The libraries at the versions of the lock file; npm keeps what it fetched beside the tests.</summary>
    private async Task InstallAsync()
    {
        string npm = ExternalTool.Find("HNOTE_NPM", "apt-get install nodejs npm", "/usr/bin/npm", "/usr/local/bin/npm");
        foreach (string file in (string[])["package.json", "package-lock.json"])
        {
            File.Copy(Repository.PathOf($"{Client}/{file}"), Path.Combine(folder, file));
        }

        string cache = Path.Combine(AppContext.BaseDirectory, "npm-cache");
        ToolRun run = await ToolRun.OfAsync(folder, [npm, "ci", "--ignore-scripts", "--no-audit", "--no-fund", "--prefer-offline", "--cache", cache]);
        ExternalTool.Need(run.Code == 0, $"npm ci in {Client} could not get the libraries: {run.Output}{run.Errors}");
    }
}
