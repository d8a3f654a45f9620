using System.CommandLine;
using System.Text;
using HealthNotes.Analysis;
using HealthNotes.Analysis.Findings;
using HealthNotes.Cli.Files;
using HealthNotes.Cli.Output;
using HealthNotes.Files;

namespace HealthNotes.Cli.Commands;

/// <summary><c>hnote check PATH...</c></summary>
internal static class CheckCommand
{
    private const string Text = "text";

    public static Command Create()
    {
        var paths = new Argument<string[]>("path") { Description = "Notes, or folders of notes", Arity = ArgumentArity.OneOrMore };
        Option<bool> json = SharedOptions.Json();
        var format = new Option<string>("--format") { Description = "text, json, sarif, github (marks lines of a change) or junit", HelpName = "FORMAT", DefaultValueFactory = _ => Text };
        format.AcceptOnlyFromAmong([.. CheckOutput.Forms.Keys]);
        var level = new Option<FindingLevel>("--level") { Description = "Only findings of this level or above: info, watch, call or urgent; lines that were not understood are always reported", HelpName = "LEVEL", DefaultValueFactory = _ => FindingLevel.Info };
        level.AcceptOnlyFromAmong("info", "watch", "call", "urgent");
        var baseline = new Option<string?>("--baseline") { Description = "Leave out the findings that this file holds; what is urgent is never left out", HelpName = "FILE" };
        var write = new Option<string?>("--write-baseline") { Description = "Write the findings into this file, for --baseline", HelpName = "FILE" };
        var all = new Option<bool>("--all") { Description = "Show the findings of older entries, and those that have ended, too" };
        Option<DateOnly?> since = SharedOptions.Since();
        Option<DateOnly?> today = SharedOptions.Today();
        Option<bool> force = SharedOptions.Force();
        var command = new Command("check", "List what is wrong or worrying in a note") { paths, json, format, level, baseline, write, all, since, today, force };
        command.SetAction(parsed => Run(
            new Request(
                parsed.GetValue(paths)!, parsed.GetValue(json) ? "json" : parsed.GetValue(format)!, parsed.GetValue(level), parsed.GetValue(baseline), parsed.GetValue(write),
                parsed.GetValue(all), parsed.DayOf(today), parsed.GetValue(since), parsed.GetValue(force)),
            parsed.InvocationConfiguration.Output));
        return command;
    }

    private static int Run(Request request, TextWriter output)
    {
        Baseline? known = request.Baseline is { } file ? Baseline.Of(file, NoteFile.Read(file).Text) : null;
        if (request.Write is { } target)
        {
            OutputFile.Check(target, request.Paths, request.Force);
        }

        Baseline? written = request.Write is null ? null : Baseline.New(request.Write);
        List<string> lines = [];
        var notes = new ReadableNotes(request.Paths);
        bool anything = false;
        using CheckOutput form = CheckOutput.Forms[request.Format](output);
        notes.ForEach(
            file =>
            {
                var analysis = NoteAnalysis.Of(file.ToNote(notes.Rules), request.Today, since: request.Since);
                return new
                {
                    file.Path,
                    Analysis = analysis,
                    // our JSON marks what is shown without --all
                    Shown = PlainFindings.Of(analysis, request.All && request.Format != "json").Of(file.Path, analysis, request.Level, known),
                    Current = PlainFindings.Of(analysis, all: false).Of(file.Path, analysis, request.Level, known),
                };
            },
            note =>
            {
                anything |= note.Current.Findings.Any(finding => finding.Level >= FindingLevel.Call);
                lines.AddRange(written?.Lines(note.Path, note.Analysis, PlainFindings.Of(note.Analysis, all: true).Findings) ?? []);
                form.Note(note.Path, note.Analysis, note.Shown);
            });
        form.End();

        if (request.Write is { } path)
        {
            OutputFile.Write(path, Encoding.UTF8.GetBytes(Baseline.Text(lines)), request.Paths, request.Force);
        }

        return notes.Problem ?? (anything ? ExitCodes.Findings : ExitCodes.Fine);
    }

    private sealed record Request(string[] Paths, string Format, FindingLevel Level, string? Baseline, string? Write, bool All, DateOnly Today, DateOnly? Since, bool Force);
}
