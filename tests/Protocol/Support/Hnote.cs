using System.Diagnostics;
using System.Runtime.CompilerServices;
using System.Text;

namespace HealthNotes.Protocol.Tests.Support;

/// <summary>
/// The built program: the native binary that <c>HNOTE_BINARY</c> names, else the one that was built with these tests.
/// </summary>
internal static class Hnote
{
    public const string Today = "2026-11-25";

    public static string Top { get; } = FindTop();

    private static IReadOnlyList<string> Command { get; } =
        Environment.GetEnvironmentVariable("HNOTE_BINARY") is { Length: > 0 } binary ? [Path.GetFullPath(binary, Top)] : ["dotnet", BuiltDll()];

    /// <summary>Starts it with its three streams in our hands.</summary>
    public static Process Start(params string[] arguments)
    {
        var start = new ProcessStartInfo(Command[0])
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            StandardErrorEncoding = Encoding.UTF8,
            StandardOutputEncoding = Encoding.UTF8,
        };
        foreach (string argument in Command.Skip(1).Concat(arguments))
        {
            start.ArgumentList.Add(argument);
        }

        return Process.Start(start)!;
    }

    /// <summary>What a run prints.</summary>
    public static async Task<string> RunAsync(params string[] arguments)
    {
        using Process process = Start(arguments);
        process.StandardInput.Close();
        Task<string> errors = process.StandardError.ReadToEndAsync();
        string output = await process.StandardOutput.ReadToEndAsync();
        await process.WaitForExitAsync();
        Assert.True(process.ExitCode < 3 && (await errors).Length == 0, $"hnote {string.Join(' ', arguments)}: {process.ExitCode} {await errors}");
        return output;
    }

    /// <summary>A file of the project.</summary>
    public static string PathOf(string relative) => Path.Combine(Top, relative);

    private static string BuiltDll()
    {
        string configuration = AppContext.BaseDirectory.Contains($"{Path.DirectorySeparatorChar}Release{Path.DirectorySeparatorChar}", StringComparison.Ordinal) ? "Release" : "Debug";
        return Path.Combine(Top, "server", "Cli", "bin", configuration, "net10.0", "hnote.dll");
    }

    private static string FindTop([CallerFilePath] string here = "") => Path.GetFullPath(Path.Combine(Path.GetDirectoryName(here)!, "..", "..", ".."));
}
