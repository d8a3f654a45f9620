using HealthNotes.Cli.Output;
using HealthNotes.Files;

namespace HealthNotes.Cli.Files;

/// <summary>The notes that are meant by paths, one after the other: one that can't be read is reported and does not keep the others.</summary>
/// <param name="paths">Notes, and folders of notes.</param>
/// <param name="withRules">True to take the clinic's rules in these folders as notes, too.</param>
internal sealed class ReadableNotes(IEnumerable<string> paths, bool withRules = false)
{
    private EachNote? each;
    private IReadOnlyList<string>? files;

    /// <summary>Their files.</summary>
    /// <exception cref="RefusedException">A folder holds no note.</exception>
    public IReadOnlyList<string> Files => files ??= NoteFinder.Find(paths, withRules);

    /// <summary>The clinic's rules over these notes.</summary>
    public RulesFiles Rules { get; } = new();

    /// <summary>The exit code where something went wrong with a note; null when nothing did.</summary>
    public int? Problem => each switch { { Failed: true } => ExitCodes.Fault, { Refused: true } => ExitCodes.Refused, _ => null };

    /// <summary>Reads them and works on each, on all cores.</summary>
    /// <param name="work">What is made of one; it runs on several threads.</param>
    /// <param name="take">Takes what was made, in the order of the notes, on this thread.</param>
    /// <exception cref="RefusedException">A folder holds no note.</exception>
    public void ForEach<T>(Func<NoteFile, T> work, Action<T> take)
        where T : class
    {
        var progress = new Progress(Files.Count);
        each = new EachNote(message =>
        {
            progress.Clear();
            Terminal.Error.WriteLine($"hnote: {message}");
        });
        each.Do(Files, path => work(NoteFile.Read(path)), (path, made, _) =>
        {
            progress.Clear();
            if (made is not null)
            {
                take(made);
            }

            progress.Next(path);
        });

        progress.Clear();
        Report(Rules, Files);
    }

    /// <summary>Prints what of the clinic's rules could not be read: without it a limit would be missed in silence.</summary>
    /// <param name="rules">The rules, after notes were read under them.</param>
    /// <param name="told">Files whose problems are reported elsewhere.</param>
    public static void Report(RulesFiles rules, IEnumerable<string>? told = null)
    {
        HashSet<string> elsewhere = [.. (told ?? []).Where(RulesFiles.IsRules).Select(Path.GetFullPath)];
        foreach ((_, string message) in rules.Wrong.Where(wrong => !elsewhere.Contains(wrong.File)))
        {
            Terminal.Error.WriteLine($"hnote: {message}");
        }
    }
}
