namespace HealthNotes.Files;

/// <summary>
/// A folder of results that is written whole: beside its place first, and moved there when all is done. It takes the place of an
/// earlier result, never of anything else.
/// </summary>
public sealed class OutputFolder : IDisposable
{
    private readonly string target;
    private readonly string part;
    private bool done;

    private OutputFolder(string target)
    {
        this.target = target;
        part = $"{target}.{Guid.NewGuid():N}.part";
    }

    /// <summary>Begins one.</summary>
    /// <param name="path">Where it is to stand.</param>
    /// <param name="isResult">True for the path of a file, below the folder, that such a result holds.</param>
    /// <param name="mark">The file that every such result holds.</param>
    /// <exception cref="RefusedException">Something else stands there, or it can't be written.</exception>
    public static OutputFolder Begin(string path, string mark, Func<string, bool> isResult)
    {
        ArgumentNullException.ThrowIfNull(isResult);
        return Try(path, () =>
        {
            string target = Path.TrimEndingDirectorySeparator(Path.GetFullPath(path));
            if (File.Exists(target))
            {
                throw new RefusedException($"{path} is a file; name a folder");
            }

            if (Directory.Exists(target))
            {
                if (new DirectoryInfo(target).LinkTarget is not null)
                {
                    throw new RefusedException($"{path} is a link; name the folder itself");
                }

                string[] files = [.. Directory.EnumerateFiles(target, "*", SearchOption.AllDirectories).Select(file => Path.GetRelativePath(target, file))];
                string? other = files.Length > 0 && !files.Contains(mark) ? files[0] : files.FirstOrDefault(file => file != mark && !isResult(file.Replace('\\', '/')));
                if (other is not null)
                {
                    throw new RefusedException($"{path} holds {other}, which this command did not make; name a new folder");
                }
            }

            var folder = new OutputFolder(target);
            Directory.CreateDirectory(folder.part);
            return folder;
        });
    }

    /// <summary>Opens a file in it for writing.</summary>
    /// <exception cref="RefusedException">It can't be written.</exception>
    public Stream Create(string relative) => Try(relative, () =>
    {
        string file = Path.Combine(part, relative);
        Directory.CreateDirectory(Path.GetDirectoryName(file)!);
        return new FileStream(file, FileMode.CreateNew, FileAccess.Write, FileShare.Read, bufferSize: 128 * 1024);
    });

    /// <summary>Moves it to its place. All its files have to be closed.</summary>
    /// <exception cref="RefusedException">It can't be moved; what stood there is as it was.</exception>
    public void Finish() => Try(target, () =>
    {
        string old = $"{target}.{Guid.NewGuid():N}.old";
        bool replaces = Directory.Exists(target);
        if (replaces)
        {
            Directory.Move(target, old);
        }

        try
        {
            Directory.Move(part, target);
        }
        catch (Exception) when (replaces)
        {
            Directory.Move(old, target);
            throw;
        }

        done = true;
        if (replaces)
        {
            Directory.Delete(old, recursive: true);
        }

        return true;
    });

    /// <summary>Takes away what was not finished.</summary>
    public void Dispose()
    {
        try
        {
            if (!done && Directory.Exists(part))
            {
                Directory.Delete(part, recursive: true);
            }
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            // a leftover .part folder is harmless, and the first problem is the one to report
        }
    }

    private static T Try<T>(string path, Func<T> work)
    {
        try
        {
            return work();
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            throw new RefusedException($"can't write {path}: {(problem is UnauthorizedAccessException ? "you are not allowed to" : "the system refused it")}");
        }
    }
}
