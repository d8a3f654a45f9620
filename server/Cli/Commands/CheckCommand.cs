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
        var all = new Option<bool>("--all") { Description = "Show the findings of older entries, and those that have ended, too" };
        Option<DateOnly?> since = SharedOptions.Since();
        Option<DateOnly?> today = SharedOptions.Today();
        var command = new Command("check", "List what is wrong or worrying in a note") { paths, json, all, since, today };
        command.SetAction(parsed => Run(parsed.GetValue(paths)!, parsed.GetValue(json), parsed.GetValue(all), parsed.DayOf(today), parsed.GetValue(since), parsed.InvocationConfiguration.Output));
        return command;
    }

    private static int Run(string[] paths, bool json, bool all, DateOnly today, DateOnly? since, TextWriter output)
    {
        var notes = new ReadableNotes(paths);
        var reports = new List<FileReport>();
        bool anything = false;
        notes.ForEach(file =>
        {
            var analysis = NoteAnalysis.Of(Note.Read(file.Text), today, since: since);
            anything |= analysis.CurrentFindings.Any(f => f.Level >= FindingLevel.Call);
            if (json)
            {
                reports.Add(ContractReports.Check(file.Path, analysis));
            }
            else
            {
                CheckPrinter.Print(output, file.Path, analysis, all);
            }
        });

        if (json)
        {
            Terminal.WriteJson(JsonSerializer.Serialize(new CheckReport(reports), ContractJson.Readable.CheckReport));
        }
        else
        {
            output.WriteLine("hnote compares and describes; it makes no diagnosis. A veterinarian decides.");
        }

        return notes.Problem ?? (anything ? ExitCodes.Findings : ExitCodes.Fine);
    }
}
