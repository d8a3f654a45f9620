using System.Diagnostics;
using System.Runtime.CompilerServices;
using System.Text;

namespace HealthNotes.Cli.Tests;

/// <summary>
/// Runs the real program: the native binary that <c>HNOTE_BINARY</c> names, else the one that was built with these tests.
/// </summary>
internal static class Hnote
{
    /// <summary>Where a command lies on the PATH; the command itself where it does not, or is a path already.</summary>
    public static string Absolute(string command) =>
        command.Contains('/', StringComparison.Ordinal) || command.EndsWith(".dll", StringComparison.Ordinal) ? command
        : (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator).Select(folder => Path.Combine(folder, command)).FirstOrDefault(File.Exists) ?? command;

    public const string Today = "2026-11-25";

    public static string Top { get; } = FindTop();

    /// <summary>The command and the first arguments that start hnote.</summary>
    public static IReadOnlyList<string> Command { get; } =
        Environment.GetEnvironmentVariable("HNOTE_BINARY") is { Length: > 0 } binary ? [Path.GetFullPath(binary, Top)] : ["dotnet", BuiltDll()];

    public static Outcome Run(params string[] arguments) => RunWith([.. Command, .. arguments], null);

    public static Outcome RunWith(IReadOnlyList<string> command, string? input, params (string Name, string Value)[] environment)
    {
        var start = new ProcessStartInfo(command[0])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            RedirectStandardInput = true,
            StandardOutputEncoding = Encoding.UTF8,
        };
        foreach (string argument in command.Skip(1))
        {
            start.ArgumentList.Add(argument);
        }

        foreach ((string name, string value) in environment)
        {
            start.Environment[name] = value;
        }

        using var process = Process.Start(start)!;
        process.StandardInput.Write(input ?? "");
        process.StandardInput.Close();
        Task<string> errors = process.StandardError.ReadToEndAsync();
        string output = process.StandardOutput.ReadToEnd();
        Assert.True(process.WaitForExit(60_000), "hnote did not end within a minute");
        return new Outcome(process.ExitCode, output, errors.Result);
    }

    private static string BuiltDll()
    {
        string configuration = AppContext.BaseDirectory.Contains($"{Path.DirectorySeparatorChar}Release{Path.DirectorySeparatorChar}", StringComparison.Ordinal) ? "Release" : "Debug";
        return Path.Combine(Top, "server", "Cli", "bin", configuration, "net10.0", "hnote.dll");
    }

    private static string FindTop([CallerFilePath] string here = "") => Path.GetFullPath(Path.Combine(Path.GetDirectoryName(here)!, "..", ".."));
}

/// <summary>What a run of the program left.</summary>
internal sealed record Outcome(int Code, string Output, string Errors)
{
    /// <summary>True when a stack trace or an unhandled exception shows.</summary>
    public bool ShowsInternals => (Output + Errors).Contains("   at ", StringComparison.Ordinal) || Errors.Contains("Unhandled", StringComparison.Ordinal) || Errors.Contains("an internal error in hnote", StringComparison.Ordinal);
}
