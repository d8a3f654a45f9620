using System.Collections.Concurrent;
using System.Security.Cryptography;
using System.Text;

namespace HealthNotes.Files;

/// <summary>What a run made of one note.</summary>
/// <param name="IsWorrying">True where the note ends the run with a finding.</param>
/// <param name="Text">What is printed of it.</param>
public sealed record KeptResult(bool IsWorrying, string Text);

/// <summary>
/// What a run over many notes made of each, kept in the user's cache folder for the next run like it. A result counts only for the very same
/// note, rules, options, day and build of the program. A file that is damaged, too large or no ordinary file counts as none, and one that
/// can't be written is left out: a cache never makes a run fail.
/// </summary>
public sealed class RunCache
{
    /// <summary>Fewer notes are read as fast as a cache is.</summary>
    private const int FewestNotes = 32;
    private const int MostFiles = 16;
    private const long MostBytes = 64L * 1024 * 1024;
    private const UnixFileMode OwnerOnly = UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute;
    private readonly string? file;
    private readonly string about;
    private readonly Dictionary<string, KeptResult> before;
    private readonly ConcurrentDictionary<string, KeptResult> now = new(StringComparer.Ordinal);

    private RunCache(string? file, string about)
    {
        this.file = file;
        this.about = about;
        before = file is null ? [] : Load(file);
    }

    /// <summary>The cache of runs like this one.</summary>
    /// <param name="run">The command with its paths and options; runs that differ in it have a file each.</param>
    /// <param name="about">What else every result depends on: the day, the build, the terminal.</param>
    /// <param name="notes">How many notes there are.</param>
    public static RunCache Of(string run, string about, int notes) =>
        new(notes < FewestNotes || Folder() is not { } folder ? null : Path.Combine(folder, Hash(run)[..32] + ".cache"), about);

    /// <summary>A cache that keeps nothing.</summary>
    public static RunCache None { get; } = new(null, "");

    /// <summary>The result for a note: the kept one, else one that is made. It may be asked on several threads.</summary>
    /// <param name="path">The note as it is named in what is printed.</param>
    /// <param name="bytes">What it holds.</param>
    /// <param name="rules">The rules over it; null where they are not known, and nothing is kept.</param>
    /// <param name="make">Makes the result.</param>
    public KeptResult Get(string path, byte[] bytes, Func<string?> rules, Func<KeptResult> make)
    {
        ArgumentNullException.ThrowIfNull(rules);
        ArgumentNullException.ThrowIfNull(make);
        if (file is null || rules() is not { } over)
        {
            return make();
        }

        string key = Hash($"{about}\0{path}\0{Convert.ToHexString(SHA256.HashData(bytes))}\0{over}");
        KeptResult result = before.GetValueOrDefault(key) ?? make();
        now[key] = result;
        return result;
    }

    /// <summary>Keeps the results of this run in place of those before.</summary>
    /// <param name="notes">The notes: nobody may read the cache who may not read all of them.</param>
    public void Save(IEnumerable<string> notes)
    {
        if (file is null || (now.Count == before.Count && now.Keys.All(before.ContainsKey)))
        {
            return;
        }

        try
        {
            string folder = Path.GetDirectoryName(file)!;
            CreateFolder(folder);
            using var memory = new MemoryStream();
            using var writer = new BinaryWriter(memory, Encoding.UTF8);
            writer.Write(now.Count);
            foreach ((string key, KeptResult result) in now)
            {
                writer.Write(key);
                writer.Write(result.IsWorrying);
                writer.Write(result.Text);
            }

            byte[] payload = memory.ToArray();
            if (payload.Length < MostBytes)
            {
                AtomicFile.Write(file, [.. SHA256.HashData(payload), .. payload], notes);
            }

            foreach (FileInfo old in new DirectoryInfo(folder).GetFiles("*.cache").OrderByDescending(one => one.LastWriteTimeUtc).Skip(MostFiles))
            {
                old.Delete();
            }
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException or RefusedException or ArgumentException or NotSupportedException)
        {
            // the next run works everything out again
        }
    }

    private static Dictionary<string, KeptResult> Load(string file)
    {
        try
        {
            if (!File.Exists(file) || new FileInfo(file).LinkTarget is not null || new DirectoryInfo(Path.GetDirectoryName(file)!).LinkTarget is not null)
            {
                return [];
            }

            byte[] bytes = RealFile.Read(file, MostBytes);
            if (bytes.Length < SHA256.HashSizeInBytes || !SHA256.HashData(bytes.AsSpan(SHA256.HashSizeInBytes)).AsSpan().SequenceEqual(bytes.AsSpan(0, SHA256.HashSizeInBytes)))
            {
                return [];
            }

            using var reader = new BinaryReader(new MemoryStream(bytes, SHA256.HashSizeInBytes, bytes.Length - SHA256.HashSizeInBytes), Encoding.UTF8);
            Dictionary<string, KeptResult> results = new(StringComparer.Ordinal);
            for (int left = reader.ReadInt32(); left > 0; left--)
            {
                results[reader.ReadString()] = new KeptResult(reader.ReadBoolean(), reader.ReadString());
            }

            return results;
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException or RefusedException or FormatException or ArgumentException or NotSupportedException)
        {
            return [];
        }
    }

    private static string? Folder()
    {
        string home = Environment.GetFolderPath(Environment.SpecialFolder.UserProfile);
        string? cache = OperatingSystem.IsWindows() ? Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData)
            : Environment.GetEnvironmentVariable("XDG_CACHE_HOME") is { } named && Path.IsPathFullyQualified(named) ? named
            : home.Length == 0 ? null
            : Path.Combine(home, OperatingSystem.IsMacOS() ? "Library/Caches" : ".cache");
        return string.IsNullOrEmpty(cache) ? null : Path.Combine(cache, "hnote");
    }

    private static void CreateFolder(string folder)
    {
        if (OperatingSystem.IsWindows())
        {
            Directory.CreateDirectory(folder);
        }
        else
        {
            Directory.CreateDirectory(folder, OwnerOnly);
        }
    }

    private static string Hash(string text) => Convert.ToHexString(SHA256.HashData(Encoding.UTF8.GetBytes(text)));
}
