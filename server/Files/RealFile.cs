using System.Buffers.Binary;
using System.Runtime.InteropServices;
using System.Text;

namespace HealthNotes.Files;

/// <summary>What the system knows of a file that its path does not tell.</summary>
/// <param name="IsRegular">False for a folder, a pipe, a device and a socket: reading one of those may never end.</param>
/// <param name="Links">How many names it has.</param>
/// <param name="Identity">The same for two paths that lead to one file.</param>
public sealed record RealFile(bool IsRegular, long Links, string Identity)
{
    private const int Here = -100;
    private const uint Basic = 0x7FF;

    /// <summary>The file at the end of all links; null when there is none. Where the system is not asked, its real path is its identity.</summary>
    public static RealFile? At(string path)
    {
        if (OperatingSystem.IsLinux())
        {
            // statx(2): the layout is the same on every processor
            byte[] answer = new byte[256];
            if (Statx(Here, Encoding.UTF8.GetBytes(path + '\0'), 0, Basic, answer) != 0)
            {
                return null;
            }

            int kind = BinaryPrimitives.ReadUInt16LittleEndian(answer.AsSpan(28)) & 0xF000;
            uint links = BinaryPrimitives.ReadUInt32LittleEndian(answer.AsSpan(16));
            return new RealFile(kind == 0x8000, links, Convert.ToHexString(answer.AsSpan(32, 8)) + Convert.ToHexString(answer.AsSpan(136, 8)));
        }

        return File.Exists(path) || Directory.Exists(path) ? new RealFile(File.Exists(path), 1, Target(path)) : null;
    }

    /// <summary>The bytes of an ordinary file.</summary>
    /// <param name="path">The file.</param>
    /// <param name="most">The most bytes that are read.</param>
    /// <exception cref="RefusedException">It is a folder, a pipe or a device, or it is larger; the message says which.</exception>
    /// <exception cref="IOException">It can't be read.</exception>
    public static byte[] Read(string path, long most)
    {
        if (Directory.Exists(path))
        {
            throw new RefusedException("it is a folder");
        }

        if (At(path) is { IsRegular: false })
        {
            throw new RefusedException("it is a pipe or a device, not a file");
        }

        using var file = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
        return Read(file, most);
    }

    /// <summary>All bytes of a stream.</summary>
    /// <exception cref="RefusedException">There are more than <paramref name="most"/>.</exception>
    public static byte[] Read(Stream stream, long most)
    {
        using var memory = new MemoryStream();
        byte[] buffer = new byte[64 * 1024];
        for (int read = stream.Read(buffer); read > 0; read = stream.Read(buffer))
        {
            if (memory.Length + read > most)
            {
                throw new RefusedException($"it is larger than {(most < 1024 * 1024 ? $"{most / 1024} KB" : $"{most / (1024 * 1024)} MB")}");
            }

            memory.Write(buffer, 0, read);
        }

        return memory.ToArray();
    }

    /// <summary>The path behind a link, also where nothing is there; else the full path.</summary>
    public static string Target(string path)
    {
        var file = new FileInfo(path);
        return file.LinkTarget is null ? file.FullName : file.ResolveLinkTarget(returnFinalTarget: true)?.FullName ?? file.FullName;
    }

    [DllImport("libc", EntryPoint = "statx")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int Statx(int folder, byte[] path, int flags, uint mask, byte[] answer);
}
