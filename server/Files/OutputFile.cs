using System.Text;
using HealthNotes.Rendering;

namespace HealthNotes.Files;

/// <summary>The files that are made of notes. None of them takes the place of a note, or of a file that was not made here.</summary>
public static class OutputFile
{
    private const string Note = ".hnote";
    private const int Ends = 16 * 1024;

    /// <summary>Writes it.</summary>
    /// <param name="path">Where.</param>
    /// <param name="bytes">What it holds.</param>
    /// <param name="inputs">The notes that it was made of.</param>
    /// <param name="force">True to replace a file that was not made here; a note is never replaced.</param>
    /// <exception cref="RefusedException">It can't be written, or it is somebody's own; the file is as it was.</exception>
    public static void Write(string path, byte[] bytes, IReadOnlyCollection<string> inputs, bool force)
    {
        Check(path, inputs, force);
        AtomicFile.Write(path, bytes, inputs);
    }

    /// <summary>Says before any work whether it may be written.</summary>
    /// <exception cref="RefusedException">It may not.</exception>
    public static void Check(string path, IReadOnlyCollection<string> inputs, bool force)
    {
        try
        {
            string target = RealFile.Target(path);
            string? identity = RealFile.At(path)?.Identity;
            if (inputs.Any(input => Path.GetFullPath(input) == Path.GetFullPath(path) || (identity is not null && RealFile.At(input)?.Identity == identity)))
            {
                throw new RefusedException($"{path} is the note itself; name another file");
            }

            if (IsNote(path) || IsNote(target))
            {
                throw new RefusedException($"{path} is a note, and hnote never writes over one; name another file");
            }

            if (!force && File.Exists(target) && !IsOwn(target))
            {
                throw new RefusedException($"{path} is there already and was not made by hnote; name another file, or replace it with --force");
            }
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            throw new RefusedException($"can't look at {path}, where the result is to go");
        }
    }

    private static bool IsNote(string path) => path.EndsWith(Note, StringComparison.OrdinalIgnoreCase);

    /// <summary>Every kind of file says at its start or its end who made it. One without a byte is nobody's work.</summary>
    private static bool IsOwn(string path)
    {
        if (RealFile.At(path) is { IsRegular: false })
        {
            return true; // refused with a better message where it is written
        }

        using var file = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
        byte[] start = new byte[Math.Min(file.Length, Ends)];
        file.ReadExactly(start);
        byte[] end = new byte[Math.Min(file.Length, Ends)];
        file.Seek(-end.Length, SeekOrigin.End);
        file.ReadExactly(end);
        string text = Encoding.Latin1.GetString(start) + "\n" + Encoding.Latin1.GetString(end);
        return file.Length == 0 || PageMark.All.Any(mark => text.Contains(mark, StringComparison.Ordinal));
    }
}
