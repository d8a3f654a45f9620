using System.Text;
using HealthNotes.Files;
using HealthNotes.LanguageServer.Convert;
using HealthNotes.Rendering;

namespace HealthNotes.LanguageServer.Handlers;

/// <summary>Puts a visit page where the reader can open it.</summary>
internal static class PageFile
{
    private const string Ending = ".html";

    /// <summary>A page with the pictures beside the note; one that is on no disk has none.</summary>
    public static PageOptions OptionsFor(string uri) =>
        Uris.PathOf(uri) is { } note ? PageOptions.Default with { Photos = PhotoFolder.Beside(note).Read } : PageOptions.Default;

    /// <summary>The pictures beside a note; none for one that is on no disk.</summary>
    public static IEnumerable<string> PicturesBeside(string uri) => Uris.PathOf(uri) is { } note ? PhotoFolder.Beside(note).Names() : [];

    /// <summary>
    /// Writes the page beside the note; where that can't be, or a file of the user's own has its name, in a new folder that only this
    /// user can open. The result is its path.
    /// </summary>
    public static string Write(string uri, string page)
    {
        byte[] bytes = Encoding.UTF8.GetBytes(page);
        string[] notes = Uris.PathOf(uri) is { } note ? [note] : [];
        try
        {
            if (notes.Length > 0)
            {
                string beside = Path.ChangeExtension(notes[0], Ending);
                OutputFile.Write(beside, bytes, notes, force: false);
                return beside;
            }
        }
        catch (RefusedException)
        {
            // a folder or a file that is not ours: the page goes elsewhere
        }

        string path = Path.Combine(Directory.CreateTempSubdirectory("hnote-").FullName, "page" + Ending);
        AtomicFile.Write(path, bytes, notes);
        return path;
    }
}
