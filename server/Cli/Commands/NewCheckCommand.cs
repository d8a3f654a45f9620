using System.CommandLine;
using HealthNotes.Cli.Files;
using HealthNotes.Cli.Output;
using HealthNotes.Features.Actions;
using HealthNotes.Features.Documents;
using HealthNotes.Files;

namespace HealthNotes.Cli.Commands;

/// <summary><c>hnote new check FILE</c>: adds today's check, ready to be filled in, in the order of the check sheet.</summary>
internal static class NewCheckCommand
{
    public static Command Create()
    {
        var file = new Argument<string>("file") { Description = "The note" };
        Option<DateOnly?> today = SharedOptions.Today();
        var command = new Command("check", "Add a check for today to a note: the lines of the check sheet, ready to be filled in") { file, today };
        command.SetAction(parsed => Run(parsed.GetValue(file)!, parsed.DayOf(today), parsed.InvocationConfiguration.Output));
        return command;
    }

    private static int Run(string path, DateOnly today, TextWriter output)
    {
        if (path == "-")
        {
            throw new RefusedException("name the note to add to; standard input can't be added to");
        }

        NoteFile note = NoteFile.Read(path);
        Document document = Document.Open(path, 0, note.Text, today);
        CheckEdit check = CheckEdits.AddCheckForToday(document);
        if (check.Edit is not { } edit)
        {
            throw new RefusedException($"{path} has a check of {today:yyyy-MM-dd} already, in line {check.Cursor.Line + 1}; add to it in your editor");
        }

        note.Replace(document.Edit(edit, 1).Syntax.Print());
        output.WriteLine($"Added a check of {today:yyyy-MM-dd} to {path}. Open it in your editor at line {check.Cursor.Line + 1}: take the # away from a line and write what you saw.");
        return ExitCodes.Fine;
    }
}
