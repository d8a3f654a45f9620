using System.Security.Cryptography;
using System.Text;
using HealthNotes.Files;
using HealthNotes.LanguageServer.Convert;
using HealthNotes.Rendering;

namespace HealthNotes.LanguageServer.Host;

/// <summary>Puts a visit page where the reader can open it.</summary>
internal static class PageFile
{
    private const string Ending = ".html";

    /// <summary>A page with the pictures beside the note; one that is on no disk has none.</summary>
    public static PageOptions OptionsFor(string uri) =>
        Uris.PathOf(uri) is { } note ? PageOptions.Default with { Photos = PhotoFolder.Beside(note).Read } : PageOptions.Default;

    /// <summary>Writes the page beside the note, or where that can't be, among the temporary files; the result is its path.</summary>
    public static string Write(string uri, string page)
    {
        if (Uris.PathOf(uri) is { } note)
        {
            try
            {
                string beside = Path.ChangeExtension(note, Ending);
                WriteWhole(beside, page);
                return beside;
            }
            catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
            {
                // a folder that is not ours: the page goes elsewhere
            }
        }

        // Health data: for the eyes of this user alone, and the same file for the same note.
        string folder = Path.Combine(Path.GetTempPath(), "hnote-" + Environment.UserName);
        _ = OperatingSystem.IsWindows()
            ? Directory.CreateDirectory(folder)
            : Directory.CreateDirectory(folder, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
        string path = Path.Combine(folder, System.Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(uri)).AsSpan(0, 8)) + Ending);
        WriteWhole(path, page);
        return path;
    }

    /// <summary>A reader never sees half a page.</summary>
    private static void WriteWhole(string path, string page)
    {
        string next = $"{path}.{Environment.ProcessId}.tmp";
        try
        {
            File.WriteAllText(next, page);
            File.Move(next, path, overwrite: true);
        }
        finally
        {
            File.Delete(next);
        }
    }
}
