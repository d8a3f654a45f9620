using HealthNotes.Files;
using HealthNotes.Grammar.Notes;

namespace HealthNotes.Cli.Files;

/// <summary>Turns the paths that were given into the notes that are meant.</summary>
internal static class NoteFinder
{
    private const string Ending = ".hnote";

    /// <summary>
    /// Files as they are; of folders, every note in them and below, in the order of their names. A file that several names lead to is
    /// there once; a link to a folder is followed once.
    /// </summary>
    /// <param name="paths">Notes, rules, and folders of them.</param>
    /// <param name="withRules">True to find the clinic's rules in folders, too.</param>
    /// <exception cref="RefusedException">A folder holds no note, or can't be read.</exception>
    public static IReadOnlyList<string> Find(IEnumerable<string> paths, bool withRules = false)
    {
        var found = new List<string>();
        HashSet<string> seen = [];
        foreach (string path in paths)
        {
            if (!Directory.Exists(path))
            {
                AddOnce(path, seen, found);
                continue;
            }

            List<string> notes = [.. InFolder(path, withRules).Order(StringComparer.Ordinal)];
            if (notes.Count == 0)
            {
                throw new RefusedException($"the folder {path} holds no note; notes end in {Ending}");
            }

            notes.ForEach(note => AddOnce(note, seen, found));
        }

        return found;
    }

    private static void AddOnce(string path, HashSet<string> seen, List<string> found)
    {
        if (seen.Add(RealFile.At(path)?.Identity ?? path))
        {
            found.Add(path);
        }
    }

    private static List<string> InFolder(string top, bool withRules)
    {
        try
        {
            var options = new EnumerationOptions { IgnoreInaccessible = true, AttributesToSkip = FileAttributes.Hidden | FileAttributes.System };
            List<string> notes = [];
            HashSet<string> seen = [];
            var left = new Queue<string>([top]);
            while (left.TryDequeue(out string? folder))
            {
                if (seen.Add(RealFile.At(folder)?.Identity ?? folder))
                {
                    notes.AddRange(Directory.GetFiles(folder, "*" + Ending, options).Where(file => RealFile.At(file) is null or { IsRegular: true }));
                    // the name of a folder's rules may be the ending alone, which hides it
                    notes.AddRange(withRules ? Directory.GetFiles(folder, "*" + ClinicRules.Ending, new EnumerationOptions { IgnoreInaccessible = true, AttributesToSkip = FileAttributes.System })
                        .Where(file => new FileInfo(file).LinkTarget is null && RealFile.At(file) is null or { IsRegular: true }) : []);
                    foreach (string inner in Directory.GetDirectories(folder, "*", options))
                    {
                        left.Enqueue(inner);
                    }
                }
            }

            return notes;
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            throw new RefusedException($"can't read the folder {top}");
        }
    }
}
