using System.Runtime.CompilerServices;

namespace HealthNotes.Tests.Support;

/// <summary>Finds files of the project from a test.</summary>
public static class Repository
{
    /// <summary>The full path of a file or folder given from the project's top.</summary>
    public static string PathOf(string relative, [CallerFilePath] string here = "")
    {
        string? folder = Path.GetDirectoryName(here);
        while (folder is not null && !File.Exists(Path.Combine(folder, "HealthNotes.sln")))
        {
            folder = Path.GetDirectoryName(folder);
        }

        return Path.Combine(folder ?? throw new InvalidOperationException("HealthNotes.sln is not above the tests"), relative);
    }

    /// <summary>The samples' full paths.</summary>
    public static IEnumerable<string> Samples => Directory.EnumerateFiles(PathOf("samples"), "*.hnote").Order(StringComparer.Ordinal);
}
