using System.CommandLine;
using System.Text;
using HealthNotes.Analysis;
using HealthNotes.Analysis.Findings;
using HealthNotes.Cli.Files;
using HealthNotes.Grammar.Notes;
using HealthNotes.Rendering;

namespace HealthNotes.Cli.Commands;

/// <summary><c>hnote page FILE</c></summary>
internal static class PageCommand
{
    private const string Html = "html";
    private const string Markdown = "markdown";

    public static Command Create()
    {
        var file = new Argument<string>("file") { Description = "The note" };
        var target = new Option<string?>("--out", "-o") { Description = "Where to write the page; - prints it (the default is beside the note)", HelpName = "FILE" };
        var format = new Option<string?>("--format") { Description = "html or markdown (the default is html, or markdown for a file that ends in .md)", HelpName = "FORMAT" };
        format.AcceptOnlyFromAmong(Html, Markdown);
        Option<DateOnly?> today = SharedOptions.Today();
        var command = new Command("page", "Make the page that you hand to the clinic") { file, target, format, today };
        command.SetAction(parsed => Run(parsed.GetValue(file)!, parsed.GetValue(target), parsed.GetValue(format), parsed.DayOf(today), parsed.InvocationConfiguration.Output));
        return command;
    }

    private static int Run(string path, string? target, string? format, DateOnly today, TextWriter output)
    {
        var analysis = NoteAnalysis.Of(Note.Read(NoteFile.Read(path).Text), today);
        bool markdown = format == Markdown || (format is null && target?.EndsWith(".md", StringComparison.OrdinalIgnoreCase) == true);
        string page = markdown ? VisitPage.Markdown(analysis) : VisitPage.Html(analysis);
        if (target == "-" || (target is null && path == "-"))
        {
            output.Write(page);
            return ExitCodes.Fine;
        }

        string to = target ?? Path.ChangeExtension(path, markdown ? ".md" : ".html");
        if (Path.GetFullPath(to) == Path.GetFullPath(path))
        {
            throw new RefusedException($"{to} is the note itself; name another file with --out");
        }

        AtomicFile.Write(to, page, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false));
        output.WriteLine($"Wrote {to}: {Contents(analysis)}");
        return ExitCodes.Fine;
    }

    private static string Contents(NoteAnalysis analysis)
    {
        int attention = analysis.Findings.Count(f => f.Level is FindingLevel.Call or FindingLevel.Urgent && analysis.IsCurrent(f));
        int unread = analysis.Findings.Where(f => f.Level == FindingLevel.Error).Select(f => f.Line).Distinct().Count();
        string entries = analysis.Note.Entries.Length == 1 ? "1 entry" : $"{analysis.Note.Entries.Length} entries";
        return $"{analysis.Pet.Name ?? "a pet without a name"}, {entries}, {attention} to call the vet about"
            + (unread == 0 ? "." : $"; {unread} {(unread == 1 ? "line was" : "lines were")} not understood and {(unread == 1 ? "is" : "are")} on the page as written (hnote check says why).");
    }
}
