using HealthNotes.Files;

namespace HealthNotes.Cli.Files;

/// <summary>Turns the paths that were given into the notes that are meant.</summary>
internal static class NoteFinder
{
    private const string Ending = ".hnote";

    /// <summary>Files as they are; of folders, every note in them and below, in the order of their names.</summary>
    /// <exception cref="RefusedException">A folder holds no note, or can't be read.</exception>
    public static IReadOnlyList<string> Find(IEnumerable<string> paths)
    {
        var found = new List<string>();
        foreach (string path in paths)
        {
            if (!Directory.Exists(path))
            {
                found.Add(path);
                continue;
            }

            List<string> notes = [.. InFolder(path).Order(StringComparer.Ordinal)];
            if (notes.Count == 0)
            {
                throw new RefusedException($"the folder {path} holds no note; notes end in {Ending}");
            }

            found.AddRange(notes);
        }

        return [.. found.Distinct()];
    }

    private static string[] InFolder(string folder)
    {
        try
        {
            var options = new EnumerationOptions { RecurseSubdirectories = true, IgnoreInaccessible = true, AttributesToSkip = FileAttributes.Hidden | FileAttributes.System };
            return Directory.GetFiles(folder, "*" + Ending, options);
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            throw new RefusedException($"can't read the folder {folder}");
        }
    }
}
