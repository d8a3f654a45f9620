using HealthNotes.Cli.Output;
using HealthNotes.Files;

namespace HealthNotes.Cli.Files;

/// <summary>The notes that are meant by paths, one after the other: one that can't be read is reported and does not keep the others.</summary>
/// <param name="paths">Notes, and folders of notes.</param>
internal sealed class ReadableNotes(IEnumerable<string> paths)
{
    private EachNote? each;

    /// <summary>The exit code where something went wrong with a note; null when nothing did.</summary>
    public int? Problem => each switch { { Failed: true } => ExitCodes.Fault, { Refused: true } => ExitCodes.Refused, _ => null };

    /// <summary>Reads them, and works on each.</summary>
    /// <exception cref="RefusedException">A folder holds no note.</exception>
    public void ForEach(Action<NoteFile> work)
    {
        IReadOnlyList<string> files = NoteFinder.Find(paths);
        var progress = new Progress(files.Count);
        each = new EachNote(message =>
        {
            progress.Clear();
            Terminal.Error.WriteLine($"hnote: {message}");
        });
        foreach (string path in files)
        {
            progress.Next(path);
            each.Do(path, () =>
            {
                NoteFile note = NoteFile.Read(path);
                progress.Clear();
                work(note);
            });
        }

        progress.Clear();
    }
}
