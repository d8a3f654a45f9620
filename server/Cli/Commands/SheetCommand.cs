using System.CommandLine;
using System.Text;
using HealthNotes.Analysis;
using HealthNotes.Cli.Files;
using HealthNotes.Cli.Output;
using HealthNotes.Grammar.Notes;
using HealthNotes.Rendering;
using HealthNotes.Rendering.Sheet;

namespace HealthNotes.Cli.Commands;

/// <summary><c>hnote sheet FILE</c></summary>
internal static class SheetCommand
{
    public static Command Create()
    {
        var file = new Argument<string>("file") { Description = "The note" };
        var target = new Option<string?>("--out", "-o") { Description = "Where to write the sheet; - prints it (the default is beside the note)", HelpName = "FILE" };
        var format = new Option<string?>("--format") { Description = "html or pdf (the default follows the ending of --out, else html)", HelpName = "FORMAT" };
        format.AcceptOnlyFromAmong("html", "pdf");
        Option<Paper> paper = SharedOptions.OnPaper();
        Option<DateOnly?> today = SharedOptions.Today();
        Option<bool> force = SharedOptions.Force();
        var command = new Command("sheet", "Make this pet's blank check sheet, to be filled in by hand beside the animal") { file, target, format, paper, force, today };
        command.SetAction(parsed =>
        {
            string? to = parsed.GetValue(target);
            bool pdf = (parsed.GetValue(format) ?? Path.GetExtension(to ?? "").TrimStart('.')).Equals("pdf", StringComparison.OrdinalIgnoreCase);
            return Run(parsed.GetValue(file)!, to, parsed.GetValue(force), pdf, parsed.GetValue(paper), parsed.DayOf(today), parsed.InvocationConfiguration.Output);
        });
        return command;
    }

    private static int Run(string path, string? target, bool force, bool pdf, Paper paper, DateOnly today, TextWriter output)
    {
        Destination destination = Destination.Of(path, target, "-sheet" + (pdf ? ".pdf" : ".html"), force);
        string sheet = CheckSheet.Html(NoteAnalysis.Of(Note.Read(NoteFile.Read(path).Text), today), paper);
        destination.Write(
            pdf ? PdfPrinter.Print(sheet, today) : Encoding.UTF8.GetBytes(sheet), output,
            $"two sides of {paper}. Print it at 100 % (actual size). Type it up later with: hnote new check {path}");
        return ExitCodes.Fine;
    }
}
