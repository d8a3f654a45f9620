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
        var paths = new Argument<string[]>("path") { Description = "Notes, rules of a clinic, or folders of them", Arity = ArgumentArity.OneOrMore };
        Option<bool> json = SharedOptions.Json();
        var format = new Option<string>("--format") { Description = "text, json, sarif, github (marks lines of a change) or junit", HelpName = "FORMAT", DefaultValueFactory = _ => Text };
        format.AcceptOnlyFromAmong([.. CheckOutput.Forms.Keys]);
        var level = new Option<FindingLevel>("--level") { Description = "Only findings of this level or above: info, watch, call or urgent; lines that were not understood are always reported", HelpName = "LEVEL", DefaultValueFactory = _ => FindingLevel.Info };
        level.AcceptOnlyFromAmong("info", "watch", "call", "urgent");
        var baseline = new Option<string?>("--baseline") { Description = "Leave out the findings that this file holds; what is urgent is never left out", HelpName = "FILE" };
        var write = new Option<string?>("--write-baseline") { Description = "Write the findings into this file, for --baseline", HelpName = "FILE" };
        var all = new Option<bool>("--all") { Description = "Show the findings of older entries, and those that have ended, too" };
        Option<DateOnly?> today = SharedOptions.Today();
        Option<DateOnly?> since = SharedOptions.Since(today);
        Option<bool> force = SharedOptions.Force();
        Option<bool> noCache = SharedOptions.NoCache();
        var command = new Command("check", "List what is wrong or worrying in a note") { paths, json, format, level, baseline, write, all, since, today, force, noCache };
        command.SetAction(parsed => Run(
            new Request(
                parsed.GetValue(paths)!, parsed.GetValue(json) ? "json" : parsed.GetValue(format)!, parsed.GetValue(level), parsed.GetValue(baseline), parsed.GetValue(write),
                parsed.GetValue(all), parsed.DayOf(today), parsed.GetValue(since), parsed.GetValue(force), parsed.GetValue(noCache)),
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
        var notes = new ReadableNotes(request.Paths, withRules: true);
        bool anything = false;
        using CheckOutput form = CheckOutput.Forms[request.Format](output);
        if (written is null && CheckOutput.NoteByNote.Contains(request.Format))
        {
            RunCache cache = request.NoCache ? RunCache.None : CacheOf(request, notes.Files);
            notes.ForEach(
                file => cache.Get(file.Path, file.Bytes, () => notes.Rules.TextOver(file.Path, file.Text), () =>
                {
                    Checked made = Check(file);
                    using var text = new StringWriter { NewLine = output.NewLine };
                    using CheckOutput one = CheckOutput.Forms[request.Format](text);
                    one.Note(made.Path, made.Analysis, made.Shown);
                    return new KeptResult(made.IsWorrying, text.ToString());
                }),
                result =>
                {
                    anything |= result.IsWorrying;
                    output.Write(result.Text);
                });
            cache.Save(notes.Files);
        }
        else
        {
            notes.ForEach(Check, note =>
            {
                anything |= note.IsWorrying;
                lines.AddRange(written?.Lines(note.Path, note.Analysis, PlainFindings.Of(note.Analysis, all: true).Findings) ?? []);
                form.Note(note.Path, note.Analysis, note.Shown);
            });
        }

        form.End();

        if (request.Write is { } path)
        {
            OutputFile.Write(path, Encoding.UTF8.GetBytes(Baseline.Text(lines)), request.Paths, request.Force);
        }

        return notes.Problem ?? (anything ? ExitCodes.Findings : ExitCodes.Fine);

        Checked Check(NoteFile note)
        {
            var analysis = NoteAnalysis.Of(note.ToNote(notes.Rules), request.Today, since: request.Since);
            bool worrying = PlainFindings.Of(analysis, all: false).Of(note.Path, analysis, request.Level, known).Findings.Any(finding => finding.Level >= FindingLevel.Call);
            // our JSON marks what is shown without --all
            return new Checked(note.Path, analysis, PlainFindings.Of(analysis, request.All && request.Format != "json").Of(note.Path, analysis, request.Level, known), worrying);
        }
    }

    private static RunCache CacheOf(Request request, IReadOnlyList<string> files)
    {
        string run = string.Join('\0', ["check", request.Format, $"{request.Level} {request.All} {request.Since:O}", request.Baseline ?? "", .. request.Paths.Select(Path.GetFullPath)]);
        string known = request.Baseline is { } baseline ? NoteFile.Read(baseline).Text : "";
        return RunCache.Of(run, string.Join('\0', [run, $"{request.Today:O}", Terminal.Look, ThisProgram.Build, known]), files.Count);
    }

    private sealed record Checked(string Path, NoteAnalysis Analysis, PlainFindings Shown, bool IsWorrying);

    private sealed record Request(string[] Paths, string Format, FindingLevel Level, string? Baseline, string? Write, bool All, DateOnly Today, DateOnly? Since, bool Force, bool NoCache);
}
