using System.CommandLine;
using HealthNotes.Cli.Files;
using HealthNotes.Files;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Tidying;

namespace HealthNotes.Cli.Commands;

/// <summary><c>hnote tidy FILE... [--write]</c></summary>
internal static class TidyCommand
{
    public static Command Create()
    {
        var files = new Argument<string[]>("file") { Description = "Notes, or folders of notes", Arity = ArgumentArity.OneOrMore };
        var write = new Option<bool>("--write", "-w") { Description = "Put the files themselves in order (the default shows the tidy text)" };
        var command = new Command("tidy", "Write a note in its one plain form: spelling, order, indent; no meaning changes") { files, write };
        command.SetAction(parsed => Run(parsed.GetValue(files)!, parsed.GetValue(write), parsed.InvocationConfiguration.Output));
        return command;
    }

    private static int Run(string[] paths, bool write, TextWriter output)
    {
        // all are read before any is written: one file that can't be read changes nothing
        List<NoteFile> notes = [.. NoteFinder.Find(paths).Select(NoteFile.Read)];
        foreach (NoteFile note in notes)
        {
            string tidy = NoteTidier.Tidy(NoteSyntax.Parse(note.Text));
            if (!write || note.Path == "-")
            {
                output.Write(notes.Count == 1 ? tidy : $"# {note.Path}\n{tidy}\n");
            }
            else if (tidy == note.Text)
            {
                output.WriteLine($"{note.Path}: tidy already");
            }
            else
            {
                AtomicFile.Write(note.Path, tidy, note.Encoding);
                output.WriteLine($"{note.Path}: tidied");
            }
        }

        return ExitCodes.Fine;
    }
}
