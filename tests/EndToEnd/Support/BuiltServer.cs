using HealthNotes.Tests.Support;

namespace HealthNotes.EndToEnd.Support;

/// <summary>The real language server: the native binary that <c>HNOTE_BINARY</c> names, else the program built with these tests.</summary>
internal static class BuiltServer
{
    /// <summary>The command and the arguments that start it, on the day the samples end.</summary>
    public static IReadOnlyList<string> Command { get; } = [.. Program(), "lsp", "--today", "2026-11-25"];

    /// <summary>Puts a program <c>hnote</c> into a folder, which starts the built one, and gives a PATH that has it first.</summary>
    public static string OnPath(string folder)
    {
        string script = Path.Combine(folder, "hnote");
        File.WriteAllText(script, $"#!/bin/sh\nexec {string.Join(' ', Program().Select(part => $"'{part}'"))} \"$@\"\n");
        if (!OperatingSystem.IsWindows())
        {
            File.SetUnixFileMode(script, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
        }

        return $"{folder}{Path.PathSeparator}{Environment.GetEnvironmentVariable("PATH")}";
    }

    private static string[] Program()
    {
        if (Environment.GetEnvironmentVariable("HNOTE_BINARY") is { Length: > 0 } binary)
        {
            return [Path.GetFullPath(binary, Repository.PathOf(""))];
        }

        char slash = Path.DirectorySeparatorChar;
        string configuration = AppContext.BaseDirectory.Contains($"{slash}Release{slash}", StringComparison.Ordinal) ? "Release" : "Debug";
        return ["dotnet", Repository.PathOf($"server/Cli/bin/{configuration}/net10.0/hnote.dll")];
    }
}
