using HealthNotes.Cli.Output;
using HealthNotes.Files;

namespace HealthNotes.Cli.Files;

/// <summary>The notes that are meant by paths, one after the other: one that can't be read is reported and does not keep the others.</summary>
/// <param name="paths">Notes, and folders of notes.</param>
internal sealed class ReadableNotes(IEnumerable<string> paths)
{
    private Progress? progress;

    /// <summary>True once a note could not be read.</summary>
    public bool Refused { get; private set; }

    /// <summary>Reads them.</summary>
    /// <exception cref="RefusedException">A folder holds no note.</exception>
    public IEnumerable<NoteFile> Read()
    {
        IReadOnlyList<string> files = NoteFinder.Find(paths);
        progress = new Progress(files.Count);
        foreach (string path in files)
        {
            progress.Next(path);
            if (ReadOrReport(path) is { } note)
            {
                yield return note;
            }
        }

        Clear();
    }

    /// <summary>Takes the word on how far it is from the terminal, before something is printed there.</summary>
    public void Clear() => progress?.Clear();

    private NoteFile? ReadOrReport(string path)
    {
        try
        {
            return NoteFile.Read(path);
        }
        catch (RefusedException refused)
        {
            Clear();
            Console.Error.WriteLine($"hnote: {refused.Message}");
            Refused = true;
            return null;
        }
    }
}
