using System.CommandLine;
using HealthNotes.Cli.Files;
using HealthNotes.Cli.Output;
using HealthNotes.Files;
using HealthNotes.Grammar.Formatting;
using HealthNotes.Grammar.Parsing;

namespace HealthNotes.Cli.Commands;

/// <summary><c>hnote format FILE... [--write|--check]</c></summary>
internal static class FormatCommand
{
    public static Command Create()
    {
        var files = new Argument<string[]>("file") { Description = "Notes, rules of a clinic, or folders of them", Arity = ArgumentArity.OneOrMore };
        var write = new Option<bool>("--write", "-w") { Description = "Format the files themselves (without it, the formatted text is printed)" };
        var check = new Option<bool>("--check") { Description = "Write nothing; list the files that would change, and end with 1 if there are any" };
        var command = new Command("format", "Format notes: spelling, order and indent; the meaning stays the same") { files, write, check };
        command.Validators.Add(parsed =>
        {
            if (parsed.GetValue(write) && parsed.GetValue(check))
            {
                parsed.AddError("--write and --check exclude each other: use one of them");
            }
        });
        command.SetAction(parsed => Run(parsed.GetValue(files)!, parsed.GetValue(write), parsed.GetValue(check), parsed.InvocationConfiguration.Output));
        return command;
    }

    private static int Run(string[] paths, bool write, bool check, TextWriter output)
    {
        // all files are read before any is written: one unreadable file means that nothing changes
        List<NoteFile> notes = [.. NoteFinder.Find(paths, withRules: true).Select(NoteFile.Read)];
        int changed = 0;
        bool refused = false;
        foreach (NoteFile note in notes)
        {
            string formatted = NoteFormatter.Format(NoteSyntax.Parse(note.Text));
            bool changes = formatted != note.Text;
            changed += changes ? 1 : 0;
            if (check)
            {
                output.Write(changes ? $"{note.Path}: would change\n" : "");
            }
            else if (!write || note.Path == "-")
            {
                Terminal.WriteNote(notes.Count == 1 ? formatted : $"# {note.Path}\n{formatted}\n");
            }
            else if (changes)
            {
                refused |= !Replaced(note, formatted, output);
            }
            else
            {
                output.WriteLine($"{note.Path}: no change");
            }
        }

        return refused ? ExitCodes.Refused : check && changed > 0 ? ExitCodes.Findings : ExitCodes.Fine;
    }

    /// <summary>One note that can't be replaced is reported and does not keep the others.</summary>
    private static bool Replaced(NoteFile note, string formatted, TextWriter output)
    {
        try
        {
            note.Replace(formatted);
            output.WriteLine($"{note.Path}: formatted");
            return true;
        }
        catch (RefusedException refused)
        {
            Terminal.Error.WriteLine($"hnote: {refused.Message}");
            return false;
        }
    }
}
