using System.CommandLine;
using System.Text.Json;
using HealthNotes.Analysis;
using HealthNotes.Analysis.Findings;
using HealthNotes.Cli.Files;
using HealthNotes.Cli.Output;
using HealthNotes.Grammar.Notes;

namespace HealthNotes.Cli.Commands;

/// <summary><c>hnote check PATH...</c></summary>
internal static class CheckCommand
{
    public static Command Create()
    {
        var paths = new Argument<string[]>("path") { Description = "Notes, or folders of notes", Arity = ArgumentArity.OneOrMore };
        Option<bool> json = SharedOptions.Json();
        var all = new Option<bool>("--all") { Description = "Show the findings of older entries too" };
        Option<DateOnly?> today = SharedOptions.Today();
        var command = new Command("check", "Say what is wrong or worrying in a note") { paths, json, all, today };
        command.SetAction(parsed => Run(parsed.GetValue(paths)!, parsed.GetValue(json), parsed.GetValue(all), parsed.DayOf(today), parsed.InvocationConfiguration.Output));
        return command;
    }

    private static int Run(string[] paths, bool json, bool all, DateOnly today, TextWriter output)
    {
        IReadOnlyList<string> files = NoteFinder.Find(paths);
        var reports = new List<FileReport>();
        var progress = new Progress(files.Count);
        bool anything = false;
        bool refused = false;
        foreach (string path in files)
        {
            progress.Next(path);
            if (ReadOrReport(path, progress) is not { } file)
            {
                refused = true;
                continue;
            }

            var analysis = NoteAnalysis.Of(Note.Read(file.Text), today);
            anything |= analysis.Findings.Any(f => f.Level >= FindingLevel.Call);
            if (json)
            {
                reports.Add(ContractReports.Check(path, analysis));
            }
            else
            {
                progress.Clear();
                CheckPrinter.Print(output, path, analysis, all);
            }
        }

        progress.Clear();
        if (json)
        {
            output.WriteLine(JsonSerializer.Serialize(new CheckReport(reports), ContractJson.Readable.CheckReport));
        }

        return refused ? ExitCodes.Refused : anything ? ExitCodes.Findings : ExitCodes.Fine;
    }

    /// <summary>One file that can't be read is reported and does not keep the others from being checked.</summary>
    private static NoteFile? ReadOrReport(string path, Progress progress)
    {
        try
        {
            return NoteFile.Read(path);
        }
        catch (RefusedException refused)
        {
            progress.Clear();
            Console.Error.WriteLine($"hnote: {refused.Message}");
            return null;
        }
    }
}
