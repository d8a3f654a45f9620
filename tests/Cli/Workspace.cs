using System.Text;

namespace HealthNotes.Cli.Tests;

/// <summary>A folder of its own for one test, gone afterwards.</summary>
internal sealed class Workspace : IDisposable
{
    public string Folder { get; } = Directory.CreateTempSubdirectory("hnote-test-").FullName;

    public string PathOf(string name) => Path.Combine(Folder, name);

    public string Note(string text, string name = "note.hnote") => Bytes(Encoding.UTF8.GetBytes(text), name);

    public string Bytes(byte[] bytes, string name = "note.hnote")
    {
        string path = PathOf(name);
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        File.WriteAllBytes(path, bytes);
        return path;
    }

    public void Dispose() => Directory.Delete(Folder, recursive: true);
}
