using System.Text;

namespace HealthNotes.Files;

/// <summary>Replaces a file in one step: a reader sees the old text or the new one, never half of it.</summary>
public static class AtomicFile
{
    private const UnixFileMode ReadAndWrite = (UnixFileMode)0b110_110_110;
    private const UnixFileMode OwnersReadAndWrite = UnixFileMode.UserRead | UnixFileMode.UserWrite;

    /// <summary>Writes a file that must not be there yet.</summary>
    /// <exception cref="RefusedException">It is there, or can't be written.</exception>
    public static void Create(string path, string text, Encoding encoding) => Put(path, encoding.GetBytes(text), null, isNew: true, []);

    /// <summary>Replaces a file that was read before.</summary>
    /// <param name="path">The file, or a link to it: the file is replaced, the link stays.</param>
    /// <param name="bytes">What it holds from now on.</param>
    /// <param name="read">What was read: when the file holds anything else by now, somebody saved it meanwhile.</param>
    /// <exception cref="RefusedException">It was changed meanwhile, or it can't be written; the file is as it was.</exception>
    public static void Replace(string path, byte[] bytes, byte[] read) => Put(path, bytes, read, isNew: false, []);

    /// <summary>Writes a file that may be there.</summary>
    /// <param name="path">The file.</param>
    /// <param name="bytes">What it holds from now on.</param>
    /// <param name="sources">What it was made of: nobody may read it who may not read all of them.</param>
    /// <exception cref="RefusedException">It can't be written; the old file is as it was.</exception>
    public static void Write(string path, byte[] bytes, IEnumerable<string> sources) => Put(path, bytes, null, isNew: false, sources);

    private static void Put(string path, byte[] bytes, byte[]? read, bool isNew, IEnumerable<string> sources)
    {
        string target = Path.GetFullPath(path);
        string? temporary = null;
        try
        {
            target = RealFile.Target(path);
            RefuseOddFiles(path, target, isNew);
            UnixFileMode mode = ModeOf(target, sources);
            string name = Path.Combine(Path.GetDirectoryName(target)!, $".{Path.GetRandomFileName()}.part");
            using (var file = new FileStream(name, Options(mode)))
            {
                temporary = name;
                file.Write(bytes);
                file.Flush(flushToDisk: true);
            }

            if (!OperatingSystem.IsWindows() && File.Exists(target))
            {
                File.SetUnixFileMode(temporary, mode);
            }

            if (read is not null && !File.ReadAllBytes(target).AsSpan().SequenceEqual(read))
            {
                throw new RefusedException($"{path} was saved meanwhile, so it was left alone: try again");
            }

            File.Move(temporary, target, overwrite: !isNew);
            temporary = null;
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException or NotSupportedException or ArgumentException)
        {
            string why = Directory.Exists(target) ? "it is a folder"
                : problem is DirectoryNotFoundException ? "there is no such folder"
                : problem is UnauthorizedAccessException ? "you are not allowed to write there"
                : isNew && File.Exists(target) ? "it is there already"
                : "the system refused it";
            throw new RefusedException($"can't write {path}: {why}");
        }
        finally
        {
            TryDelete(temporary);
        }
    }

    private static void RefuseOddFiles(string path, string target, bool isNew)
    {
        if (RealFile.At(target) is not { } there)
        {
            if (target != Path.GetFullPath(path))
            {
                throw new RefusedException($"can't write {path}: it is a link that leads nowhere");
            }

            return;
        }

        if (Directory.Exists(target) || isNew)
        {
            throw new IOException();
        }

        string? why = !there.IsRegular ? "it is a pipe or a device, not a file; - prints to standard output"
            : IsReadOnly(target) ? "it is read-only"
            : there.Links > 1 ? "it has a second name (a hard link), which would keep the old text; take one name away, or write to another file"
            : null;
        if (why is not null)
        {
            throw new RefusedException($"can't write {path}: {why}");
        }
    }

    /// <summary>Also true for the superuser, whom the system would let write.</summary>
    private static bool IsReadOnly(string file) => OperatingSystem.IsWindows()
        ? File.GetAttributes(file).HasFlag(FileAttributes.ReadOnly)
        : (File.GetUnixFileMode(file) & (UnixFileMode.UserWrite | UnixFileMode.GroupWrite | UnixFileMode.OtherWrite)) == 0;

    private static UnixFileMode ModeOf(string target, IEnumerable<string> sources)
    {
        if (OperatingSystem.IsWindows())
        {
            return ReadAndWrite;
        }

        UnixFileMode mode = File.Exists(target) ? File.GetUnixFileMode(target) : ReadAndWrite;
        foreach (string source in sources.Where(File.Exists))
        {
            mode &= File.GetUnixFileMode(source) | OwnersReadAndWrite;
        }

        return mode;
    }

    /// <summary>A name that nobody can know before, made by us or not at all, with its mode from the first byte on.</summary>
    private static FileStreamOptions Options(UnixFileMode mode)
    {
        var options = new FileStreamOptions { Mode = FileMode.CreateNew, Access = FileAccess.Write, Share = FileShare.None };
        if (!OperatingSystem.IsWindows())
        {
            options.UnixCreateMode = mode;
        }

        return options;
    }

    private static void TryDelete(string? file)
    {
        try
        {
            if (file is not null)
            {
                File.Delete(file);
            }
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            // a leftover .part file is harmless, and the first problem is the one to report
        }
    }
}
