using HealthNotes.EndToEnd.Support;
using HealthNotes.Tests.Support;

namespace HealthNotes.EndToEnd.TypeGuards;

/// <summary>A client library that editors are built with reads every message.</summary>
public class TypeGuardTests
{
    [SkippableFact]
    public async Task Every_answer_passes_the_type_guards_of_a_real_client_library()
    {
        string node = ExternalTool.Find("HNOTE_NODE", "apt-get install nodejs npm", "/usr/bin/node", "/usr/local/bin/node");
        string npm = ExternalTool.Find("HNOTE_NPM", "apt-get install nodejs npm", "/usr/bin/npm", "/usr/local/bin/npm");
        string scripts = Repository.PathOf("tests/EndToEnd/TypeGuards");
        string packages = Path.Combine(AppContext.BaseDirectory, "type-guards");
        if (!File.Exists(Path.Combine(packages, "node_modules", ".package-lock.json")))
        {
            Directory.CreateDirectory(packages);
            foreach (string file in new[] { "package.json", "package-lock.json" })
            {
                File.Copy(Path.Combine(scripts, file), Path.Combine(packages, file), overwrite: true);
            }

            (int installed, string said) = await Programs.RunAsync(npm, packages, ["ci", "--no-audit", "--no-fund", "--ignore-scripts"]);
            Assert.True(installed == 0, said);
        }

        (int code, string output) = await Programs.RunAsync(
            node, scripts, [Path.Combine(scripts, "check.mjs"), packages, Path.Combine(scripts, "every-feature.hnote"), .. Programs.LanguageServer]);
        Assert.True(code == 0, output);
        Assert.Contains("messages are what the specification says", output, StringComparison.Ordinal);
    }
}
