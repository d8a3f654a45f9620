using System.Diagnostics;

namespace HealthNotes.Exchange.Tests;

/// <summary>The validator of the format's editors finds no error. It always ends with 0, so what it prints is read.</summary>
public class SarifTests
{
    [SkippableFact]
    public void The_findings_of_every_sample_are_valid_SARIF()
    {
        Skip.IfNot(OperatingSystem.IsLinux() && File.Exists("/usr/bin/npm"), "the validator is fetched by npm: apt-get install npm");
        string folder = Path.Combine(AppContext.BaseDirectory, "sarif");
        Directory.CreateDirectory(folder);
        foreach (string file in new[] { "package.json", "package-lock.json" })
        {
            File.Copy(Path.Combine(Hnote.Top, "tests", "Exchange", "sarif", file), Path.Combine(folder, file), overwrite: true);
        }

        string tool = Path.Combine(folder, "node_modules", "@microsoft", "sarif-multitool-linux", "Sarif.Multitool");
        if (!File.Exists(tool))
        {
            Run(folder, "/usr/bin/npm", "ci", "--ignore-scripts", "--no-audit", "--no-fund");
            if (!OperatingSystem.IsWindows())
            {
                File.SetUnixFileMode(tool, File.GetUnixFileMode(tool) | UnixFileMode.UserExecute);
            }
        }

        File.WriteAllText(Path.Combine(folder, "good.sarif"), Hnote.Run("check", Path.Combine(Hnote.Top, "samples"), "--all", "--format", "sarif", "--today", Hnote.Today).Output);
        string verdict = Run(folder, tool, "validate", "good.sarif");
        Assert.Contains("1 files scanned", verdict, StringComparison.Ordinal);
        Assert.DoesNotContain(": error", verdict, StringComparison.Ordinal);

        // a line number below 0 is not allowed: the validator has to notice
        File.WriteAllText(Path.Combine(folder, "bad.sarif"), File.ReadAllText(Path.Combine(folder, "good.sarif")).Replace("\"startLine\":", "\"startLine\":-", StringComparison.Ordinal));
        Assert.Contains(": error", Run(folder, tool, "validate", "bad.sarif"), StringComparison.Ordinal);
    }

    private static string Run(string folder, string program, params string[] arguments)
    {
        var start = new ProcessStartInfo(program, arguments) { WorkingDirectory = folder, RedirectStandardOutput = true, RedirectStandardError = true };
        start.Environment["DOTNET_ROLL_FORWARD"] = "Major";
        using var process = Process.Start(start)!;
        Task<string> errors = process.StandardError.ReadToEndAsync();
        string output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return output + errors.Result;
    }
}
