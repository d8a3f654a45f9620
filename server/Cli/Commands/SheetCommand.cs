using System.CommandLine;
using System.Text;
using HealthNotes.Analysis;
using HealthNotes.Cli.Files;
using HealthNotes.Cli.Output;
using HealthNotes.Files;
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
        var log = new Option<bool>("--log") { Description = "Make a log of home care for seven days instead: doses, meals, water, outputs, wounds" };
        var fill = new Option<bool>("--fill") { Description = "Make one HTML file to fill in on a phone instead: taps, a counter, and the entry as text at the end" };
        Option<Paper?> paper = SharedOptions.PaperOfNote();
        Option<DateOnly?> today = SharedOptions.Today();
        Option<DateOnly?> since = SharedOptions.Since(today);
        Option<bool> force = SharedOptions.Force();
        var command = new Command("sheet", "Make this pet's blank check sheet, or its log of home care, to be filled in by hand") { file, log, fill, target, format, since, paper, force, today };
        command.SetAction(parsed =>
        {
            string? to = parsed.GetValue(target);
            NoteAnalysis Read() => NoteAnalysis.Of(NoteFile.Read(parsed.GetValue(file)!).ToNote(), parsed.DayOf(today), since: parsed.GetValue(since));
            bool pdf = (parsed.GetValue(format) ?? Path.GetExtension(to ?? "").TrimStart('.')).Equals("pdf", StringComparison.OrdinalIgnoreCase);
            if (parsed.GetValue(fill))
            {
                return pdf || parsed.GetValue(log) ? throw new RefusedException("--fill makes an HTML file of a check: leave --log and pdf out")
                    : Fill(parsed.GetValue(file)!, to, parsed.GetValue(force), Read, parsed.InvocationConfiguration.Output);
            }

            return Run(parsed.GetValue(file)!, parsed.GetValue(log), to, parsed.GetValue(force), pdf, parsed.GetValue(paper), Read, parsed.InvocationConfiguration.Output);
        });
        return command;
    }

    private static int Fill(string path, string? target, bool force, Func<NoteAnalysis> read, TextWriter output)
    {
        Destination destination = Destination.Of(path, target, "-fill.html", force);
        destination.Write(Encoding.UTF8.GetBytes(FillSheet.Html(read())), output, "open it in a browser, fill it in, and paste the entry at the end of the note.");
        return ExitCodes.Fine;
    }

    private static int Run(string path, bool log, string? target, bool force, bool pdf, Paper? wanted, Func<NoteAnalysis> read, TextWriter output)
    {
        Destination destination = Destination.Of(path, target, (log ? "-log" : "-sheet") + (pdf ? ".pdf" : ".html"), force);
        NoteAnalysis analysis = read();
        Paper paper = wanted ?? (analysis.Pet.ShowUsUnits ? Paper.Letter : Paper.A4);
        string sheet = log ? CareSheet.Html(analysis, paper) : CheckSheet.Html(analysis, paper);
        destination.Write(
            pdf ? PdfPrinter.Print(sheet, analysis.Today) : Encoding.UTF8.GetBytes(sheet), output,
            $"{(log ? "one side" : "two sides")} of {paper}. Print it at 100 % (actual size). Type it up later {(log ? $"below a line: {analysis.Today:yyyy-MM-dd} log" : $"with: hnote new check {path}")}");
        return ExitCodes.Fine;
    }
}
