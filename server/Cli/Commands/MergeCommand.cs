using System.CommandLine;
using HealthNotes.Cli.Files;
using HealthNotes.Cli.Output;
using HealthNotes.Features.Merging;
using HealthNotes.Files;

namespace HealthNotes.Cli.Commands;

/// <summary><c>hnote merge NOTE [OTHER]</c>: joins two versions of a note; also the merge driver of git.</summary>
internal static class MergeCommand
{
    public static Command Create()
    {
        var note = new Argument<string>("note") { Description = "The note; the joined text takes its place" };
        var other = new Argument<string?>("other") { Description = "The other version (the default is every copy that file sync left beside the note)", Arity = ArgumentArity.ZeroOrOne };
        var before = new Option<string?>("--base") { Description = "What both versions come from: lines that one of them took out go", HelpName = "FILE" };
        var command = new Command("merge", "Join two versions of a note by day: no line that either has is lost") { note, other, before };
        command.SetAction(parsed => Run(parsed.GetValue(note)!, parsed.GetValue(other), parsed.GetValue(before), parsed.InvocationConfiguration.Output));
        return command;
    }

    private static int Run(string path, string? other, string? before, TextWriter output)
    {
        NoteFile note = NoteFile.Read(path);
        string[] others = other is not null ? [other] : [.. CopiesOf(path)];
        string text = note.Text;
        if (others.Length == 0)
        {
            text = NoteMerge.OfMarked(text)?.Text ?? throw new RefusedException($"there is no copy beside {path}, and no mark of a conflict in it; name the other version");
        }

        string[] twice = [];
        foreach (string one in others)
        {
            MergedNote merged = NoteMerge.Of(before is null ? null : NoteFile.Read(before).Text, text, NoteFile.Read(one).Text);
            text = merged.Text;
            twice = [.. twice, .. merged.ChangedTwice];
        }

        if (text != note.Text)
        {
            note.Replace(text);
        }

        output.WriteLine(others.Length == 0 ? $"Joined the two versions in {path}."
            : other is null ? $"Joined {path} with {string.Join(", ", others)}. Check it, then delete the {(others.Length == 1 ? "copy" : "copies")}."
            : $"Joined {path} with {other}.");
        foreach (string line in twice)
        {
            output.WriteLine($"Both versions changed a line, so both are in the note: {line.Trim()}");
        }

        return twice.Length == 0 ? ExitCodes.Fine : ExitCodes.Findings;
    }

    /// <summary>The names that file sync gives to a copy when two devices changed one file.</summary>
    private static IEnumerable<string> CopiesOf(string path)
    {
        string folder = Path.GetDirectoryName(Path.GetFullPath(path))!;
        string name = Path.GetFileNameWithoutExtension(path);
        return Directory.EnumerateFiles(folder, "*.hnote")
            .Where(file => Path.GetFileNameWithoutExtension(file) is var copy && copy.Length > name.Length && copy.StartsWith(name, StringComparison.Ordinal)
                && (copy.Contains("conflicted copy", StringComparison.OrdinalIgnoreCase) || copy.Contains("sync-conflict", StringComparison.OrdinalIgnoreCase)))
            .Order(StringComparer.Ordinal);
    }
}
