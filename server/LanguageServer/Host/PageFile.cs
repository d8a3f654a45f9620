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
    private static readonly UTF8Encoding Utf8 = new(encoderShouldEmitUTF8Identifier: false);

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
                AtomicFile.Write(beside, page, Utf8);
                return beside;
            }
            catch (RefusedException)
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
        AtomicFile.Write(path, page, Utf8);
        return path;
    }
}
