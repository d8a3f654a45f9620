using System.Text;

namespace HealthNotes.Files;

/// <summary>Replaces a file in one step: a reader sees the old text or the new one, never half of it.</summary>
public static class AtomicFile
{
    /// <summary>Writes <paramref name="text"/> beside <paramref name="path"/> and moves it there.</summary>
    /// <exception cref="RefusedException">It can't be written; the old file is as it was.</exception>
    public static void Write(string path, string text, Encoding encoding) => Write(path, encoding.GetBytes(text));

    /// <summary>Writes <paramref name="bytes"/> beside <paramref name="path"/> and moves them there.</summary>
    /// <exception cref="RefusedException">They can't be written; the old file is as it was.</exception>
    public static void Write(string path, byte[] bytes)
    {
        string target = Target(path);
        string temporary = $"{target}.{Environment.ProcessId}.part";
        try
        {
            File.WriteAllBytes(temporary, bytes);
            if (!OperatingSystem.IsWindows() && File.Exists(target))
            {
                File.SetUnixFileMode(temporary, File.GetUnixFileMode(target));
            }

            File.Move(temporary, target, overwrite: true);
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException or NotSupportedException)
        {
            TryDelete(temporary);
            string why = Directory.Exists(target) ? "it is a folder"
                : problem is DirectoryNotFoundException ? "there is no such folder"
                : problem is UnauthorizedAccessException ? "you are not allowed to write there"
                : "the system refused it";
            throw new RefusedException($"can't write {path}: {why}");
        }
    }

    /// <summary>The file itself where the path is a link to it: replacing the link would leave the file as it was.</summary>
    private static string Target(string path) =>
        Path.GetFullPath(File.Exists(path) && new FileInfo(path).ResolveLinkTarget(returnFinalTarget: true) is { } target ? target.FullName : path);

    private static void TryDelete(string file)
    {
        try
        {
            File.Delete(file);
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            // a leftover .part file is harmless, and the first problem is the one to report
        }
    }
}
