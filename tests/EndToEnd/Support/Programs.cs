using System.Diagnostics;

namespace HealthNotes.EndToEnd.Support;

/// <summary>Runs programs of other people beside ours.</summary>
internal static class Programs
{
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(3);

    /// <summary>The command line that starts the language server: the binary that <c>HNOTE_BINARY</c> names, else the one built with these tests.</summary>
    public static string[] LanguageServer
    {
        get
        {
            string top = Tests.Support.Repository.PathOf("");
            string[] hnote = Environment.GetEnvironmentVariable("HNOTE_BINARY") is { Length: > 0 } binary ? [Path.GetFullPath(binary, top)] : ["dotnet", BuiltDll(top)];
            return [.. hnote, "lsp", "--today", "2026-11-25"];
        }
    }

    /// <summary>Runs a program; what it printed.</summary>
    public static async Task<(int Code, string Output)> RunAsync(string program, string folder, IEnumerable<string> arguments, params (string Name, string Value)[] environment)
    {
        var start = new ProcessStartInfo(program) { WorkingDirectory = folder, RedirectStandardOutput = true, RedirectStandardError = true, RedirectStandardInput = true };
        foreach (string argument in arguments)
        {
            start.ArgumentList.Add(argument);
        }

        foreach ((string name, string value) in environment)
        {
            start.Environment[name] = value;
        }

        using Process process = Process.Start(start)!;
        process.StandardInput.Close();
        Task<string> output = process.StandardOutput.ReadToEndAsync();
        Task<string> errors = process.StandardError.ReadToEndAsync();
        try
        {
            await process.WaitForExitAsync().WaitAsync(Patience);
        }
        catch (TimeoutException)
        {
            process.Kill(entireProcessTree: true);
            throw;
        }

        return (process.ExitCode, await output + await errors);
    }

    private static string BuiltDll(string top)
    {
        string configuration = AppContext.BaseDirectory.Contains($"{Path.DirectorySeparatorChar}Release{Path.DirectorySeparatorChar}", StringComparison.Ordinal) ? "Release" : "Debug";
        return Path.Combine(top, "server", "Cli", "bin", configuration, "net10.0", "hnote.dll");
    }
}
