using System.CommandLine;
using HealthNotes.Analysis;
using HealthNotes.Analysis.Findings;
using HealthNotes.Cli.Output;
using HealthNotes.Files;
using HealthNotes.Rendering;

namespace HealthNotes.Cli.Commands;

/// <summary><c>hnote page FILE</c></summary>
internal static class PageCommand
{
    public static Command Create()
    {
        var file = new Argument<string>("path") { Description = "The note, or a folder of notes" };
        var target = new Option<string?>("--out", "-o") { Description = "Where to write the page; - prints it (the default is beside the note)", HelpName = "FILE" };
        var format = new Option<string?>("--format") { Description = "html, markdown or md, pdf, text or txt (the default follows the ending of --out, else html); text is five lines for a clinic's record", HelpName = "FORMAT" };
        format.AcceptOnlyFromAmong("html", "markdown", "md", "pdf", "text", "txt");
        var audience = new Option<string>("--for") { Description = "vet: everything; owner: the same in plain words, with what to do next; share: values and known words only, no contacts, no free text, chosen pictures only (the default is vet)", HelpName = "WHOM", DefaultValueFactory = _ => "vet" };
        audience.AcceptOnlyFromAmong("vet", "owner", "share");
        var photos = new Option<string[]>("--photo") { Description = "With --for share, a picture to show, as the note names it; may be given again", HelpName = "NAME" };
        var text = new Option<bool>("--with-text") { Description = "With --for share, free text, remarks and questions too, with names and numbers masked; shows them and asks first" };
        var yes = new Option<bool>("--yes") { Description = "With --with-text, does not ask" };
        Option<string?> units = SharedOptions.Units();
        Option<DateOnly?> today = SharedOptions.Today();
        Option<DateOnly?> since = SharedOptions.Since(today);
        Option<Paper> paper = SharedOptions.OnPaper();
        Option<bool> force = SharedOptions.Force();
        Option<bool> noCache = SharedOptions.NoCache();
        var command = new Command("page", "Make the page that you hand to the clinic") { file, target, format, audience, photos, text, yes, units, since, paper, force, noCache, today };
        command.SetAction(parsed =>
        {
            string? to = parsed.GetValue(target);
            var request = new PageRequest(
                parsed.DayOf(today), FormatOf(parsed.GetValue(format), to), AudienceOf(parsed.GetValue(audience)),
                parsed.GetValue(photos), parsed.GetValue(text), lines => Confirm(lines, parsed.GetValue(yes)), SharedOptions.UsUnits(parsed.GetValue(units)), parsed.GetValue(since), parsed.GetValue(paper));
            return Run(parsed.GetValue(file)!, to, parsed.GetValue(force), parsed.GetValue(noCache), request, parsed.InvocationConfiguration.Output);
        });
        return command;
    }

    private static Audience AudienceOf(string? audience) => audience switch { "share" => Audience.Share, "owner" => Audience.Owner, _ => Audience.Vet };

    private static PageFormat FormatOf(string? format, string? target) => (format ?? Path.GetExtension(target ?? "").TrimStart('.')).ToLowerInvariant() switch
    {
        "markdown" or "md" => PageFormat.Markdown,
        "pdf" => PageFormat.Pdf,
        "text" or "txt" => PageFormat.Text,
        _ => PageFormat.Html,
    };

    private static int Run(string path, string? target, bool force, bool noCache, PageRequest request, TextWriter output)
    {
        if (request is { For: not Audience.Share, Photos.Count: > 0 })
        {
            throw new RefusedException("--photo goes with --for share; the page for the vet shows every picture");
        }

        if (request is { For: not Audience.Share, WithText: true })
        {
            throw new RefusedException("--with-text goes with --for share; the page for the vet shows every text");
        }

        if (Directory.Exists(path))
        {
            return FolderPages.Write(path, target, force, noCache, request, output);
        }

        Destination destination = Destination.Of(path, target, (request.For switch { Audience.Share => "-shared", Audience.Owner => "-owner", _ => "" }) + PageMaker.EndingOf(request.Format), force);
        MadePage page = PageMaker.Make(path, request);
        destination.Write(page.Bytes, output, Contents(page.Analysis));
        return ExitCodes.Fine;
    }

    /// <summary>Shows what the owner wrote in words of their own, and asks whether it may go to anybody.</summary>
    /// <exception cref="RefusedException">It may not, or there is nobody to ask.</exception>
    private static void Confirm(IReadOnlyList<string> lines, bool yes)
    {
        Terminal.Error.WriteLine("These words of yours are on the page. hnote can't know every name in them:");
        foreach (string line in lines)
        {
            Terminal.Error.WriteLine("  " + line);
        }

        if (yes)
        {
            return;
        }

        if (!Terminal.CanAsk)
        {
            throw new RefusedException("read them, and make the page with --yes when anybody may read them");
        }

        Terminal.Error.Write("Make the page? (y/N) ");
        if (Terminal.ReadLine()?.Trim() is not ("y" or "Y" or "yes"))
        {
            throw new RefusedException("no page was made");
        }
    }

    private static string Contents(NoteAnalysis analysis)
    {
        int attention = analysis.Findings.Count(f => f.Level is FindingLevel.Call or FindingLevel.Urgent && analysis.IsOpen(f));
        int unread = analysis.Findings.Where(f => f.Level == FindingLevel.Error).Select(f => f.Line).Distinct().Count();
        string entries = analysis.Note.Entries.Length == 1 ? "1 entry" : $"{analysis.Note.Entries.Length} entries";
        return $"{analysis.Pet.Name ?? "a pet without a name"}, {entries}, {attention} to phone the clinic about"
            + (unread == 0 ? "." : $"; {unread} {(unread == 1 ? "line was" : "lines were")} not understood and {(unread == 1 ? "is" : "are")} on the page as written (hnote check says why).");
    }
}
