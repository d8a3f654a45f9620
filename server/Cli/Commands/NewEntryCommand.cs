using System.CommandLine;
using HealthNotes.Cli.Files;
using HealthNotes.Cli.Output;
using HealthNotes.Features.Actions;
using HealthNotes.Features.Documents;
using HealthNotes.Files;

namespace HealthNotes.Cli.Commands;

/// <summary><c>hnote new check FILE</c>, <c>new log FILE</c>, <c>new visit FILE</c>: adds an entry of today, ready to be filled in.</summary>
internal static class NewEntryCommand
{
    private static readonly (string Kind, string Description)[] Kinds =
    [
        ("check", "Add a check for today to a note: the lines of the check sheet, ready to be filled in"),
        ("log", "Add a log for today to a note: its medicines, meals, water and outputs, ready to be filled in"),
        ("visit", "Add a visit of today to a note: your open questions, and lines for what the clinic found and ordered"),
    ];

    public static IEnumerable<Command> All() => Kinds.Select(kind => Create(kind.Kind, kind.Description));

    private static Command Create(string kind, string description)
    {
        var file = new Argument<string>("file") { Description = "The note" };
        Option<DateOnly?> today = SharedOptions.Today();
        var command = new Command(kind, description) { file, today };
        command.SetAction(parsed => Run(parsed.GetValue(file)!, kind, parsed.DayOf(today), parsed.InvocationConfiguration.Output));
        return command;
    }

    private static int Run(string path, string kind, DateOnly today, TextWriter output)
    {
        if (path == "-")
        {
            throw new RefusedException("name the note to add to; standard input can't be added to");
        }

        NoteFile note = NoteFile.Read(path);
        Document document = Document.Open(path, 0, note.ToNote(), today);
        CheckEdit added = CheckEdits.AddForToday(document, kind);
        if (added.Edit is not { } edit)
        {
            throw new RefusedException($"{path} has a {kind} of {today:yyyy-MM-dd} already, in line {added.Cursor.Line + 1}; add to it in your editor");
        }

        note.Replace(document.Edit(edit, 1).Syntax.Print());
        output.WriteLine($"Added a {kind} of {today:yyyy-MM-dd} to {path}. Open it in your editor at line {added.Cursor.Line + 1}: take the # away from a line and write what you saw.");
        return ExitCodes.Fine;
    }
}
