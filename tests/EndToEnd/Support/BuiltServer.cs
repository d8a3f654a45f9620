using HealthNotes.Tests.Support;

namespace HealthNotes.EndToEnd.Support;

/// <summary>The real language server: the native binary that <c>HNOTE_BINARY</c> names, else the program built with these tests.</summary>
internal static class BuiltServer
{
    /// <summary>The command and the arguments that start it, on the day the samples end.</summary>
    public static IReadOnlyList<string> Command { get; } = [.. Program(), "lsp", "--today", "2026-11-25"];

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
