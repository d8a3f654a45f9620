using HealthNotes.Features.Documents;
using HealthNotes.Files;
using HealthNotes.LanguageServer.Convert;
using HealthNotes.LanguageServer.State;

namespace HealthNotes.LanguageServer.Session;

/// <summary>Finds the notes in folders. Hidden folders, and those that hold other programs' files by the thousand, are passed over.</summary>
internal static class NoteFiles
{
    private const string Ending = ".hnote";
    private const long LargestFile = 16 * 1024 * 1024;

    private static readonly HashSet<string> PassedOver = new(["node_modules", "bower_components", "target", "obj", "bin", "__pycache__"], StringComparer.OrdinalIgnoreCase);

    private static readonly EnumerationOptions Visible = new()
    {
        IgnoreInaccessible = true,
        AttributesToSkip = FileAttributes.Hidden | FileAttributes.System | FileAttributes.ReparsePoint,
    };

    /// <summary>The paths of the notes, nearest first; at most <paramref name="mostFolders"/> folders are looked into.</summary>
    public static IEnumerable<string> In(IEnumerable<string> folders, int mostFolders, Func<bool> goesOn)
    {
        var left = new Queue<string>(folders);
        for (int seen = 0; left.Count > 0 && seen < mostFolders && goesOn(); seen++)
        {
            string folder = left.Dequeue();
            foreach (string file in Listed(() => Directory.GetFiles(folder, "*" + Ending, Visible)))
            {
                yield return file;
            }

            foreach (string inner in Listed(() => Directory.GetDirectories(folder, "*", Visible)))
            {
                if (!PassedOver.Contains(Path.GetFileName(inner)))
                {
                    left.Enqueue(inner);
                }
            }
        }
    }

    /// <summary>The text of a note, or null when it is not there, is larger than any note, or can't be read.</summary>
    public static string? Read(string uri)
    {
        try
        {
            using var text = new StreamReader(new MemoryStream(RealFile.Read(Uris.PathOf(uri) ?? "", LargestFile)));
            return text.ReadToEnd();
        }
        catch (Exception problem) when (problem is RefusedException or IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return null;
        }
    }

    /// <summary>The notes of the folders that are not open, read now and let go of after.</summary>
    public static IEnumerable<Document> NotOpen(Workspace workspace) =>
        from uri in workspace.Notes.Keys
        where !workspace.Open.ContainsKey(uri)
        let text = Read(uri)
        where text is not null
        select Document.Open(uri, 0, text, workspace.Today);

    private static string[] Listed(Func<string[]> list)
    {
        try
        {
            string[] found = list();
            Array.Sort(found, StringComparer.Ordinal);
            return found;
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException or ArgumentException)
        {
            return [];
        }
    }
}
