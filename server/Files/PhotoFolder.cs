using HealthNotes.Grammar.Notes;
using HealthNotes.Rendering;

namespace HealthNotes.Files;

/// <summary>Reads the pictures beside a note. Nothing outside the note's folder is ever opened, not even through a link.</summary>
/// <param name="folder">The note's folder.</param>
public sealed class PhotoFolder(string folder)
{
    private static readonly string[] Endings = [".jpg", ".jpeg", ".png", ".webp"];

    /// <summary>A larger file is not a photo of a pet: it is not read.</summary>
    private const long MostBytes = 64L * 1024 * 1024;

    /// <summary>The pictures beside a note file.</summary>
    public static PhotoFolder Beside(string note) => new(Path.GetDirectoryName(Path.GetFullPath(note)) ?? ".");

    /// <summary>The names of the pictures in the folder itself, the newest first; none where it can't be read.</summary>
    public IEnumerable<string> Names()
    {
        try
        {
            return [.. new DirectoryInfo(folder).EnumerateFiles().Where(file => Endings.Contains(file.Extension, StringComparer.OrdinalIgnoreCase))
                .OrderByDescending(file => file.LastWriteTimeUtc).Select(file => file.Name)];
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException or System.Security.SecurityException)
        {
            return [];
        }
    }

    /// <summary>The bytes of a picture, or why there are none.</summary>
    /// <param name="name">The file as the note names it.</param>
    public PhotoBytes Read(string name)
    {
        if (PhotoPath.Of(name).Relative is not { } relative)
        {
            return new PhotoBytes(null, "only pictures in the note's folder are shown");
        }

        try
        {
            string top = Real(new DirectoryInfo(folder));
            string path = Path.Combine(top, relative);
            if (!File.Exists(path))
            {
                return new PhotoBytes(null, "file not found beside the note");
            }

            if (!IsInside(top, path))
            {
                return new PhotoBytes(null, "only pictures in the note's folder are shown");
            }

            return new PhotoBytes(RealFile.Read(path, MostBytes), null);
        }
        catch (RefusedException refused)
        {
            return new PhotoBytes(null, refused.Message);
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return new PhotoBytes(null, "the file can't be read");
        }
    }

    /// <summary>Follows the links in every part of the path: a folder in it may lead elsewhere too.</summary>
    private static bool IsInside(string top, string path)
    {
        string relative = Path.GetRelativePath(top, path);
        string reached = top;
        foreach (string part in relative.Split(Path.DirectorySeparatorChar))
        {
            reached = Path.Combine(reached, part);
            FileSystemInfo entry = Directory.Exists(reached) ? new DirectoryInfo(reached) : new FileInfo(reached);
            reached = Real(entry);
            if (!(reached + Path.DirectorySeparatorChar).StartsWith(top.TrimEnd(Path.DirectorySeparatorChar) + Path.DirectorySeparatorChar, StringComparison.Ordinal))
            {
                return false;
            }
        }

        return true;
    }

    private static string Real(FileSystemInfo entry) => entry.ResolveLinkTarget(returnFinalTarget: true)?.FullName ?? entry.FullName;
}
