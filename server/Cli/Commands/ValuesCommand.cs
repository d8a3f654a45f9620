using System.CommandLine;
using System.Text.Json;
using HealthNotes.Analysis;
using HealthNotes.Cli.Files;
using HealthNotes.Cli.Output;

namespace HealthNotes.Cli.Commands;

/// <summary><c>hnote values PATH...</c></summary>
internal static class ValuesCommand
{
    public static Command Create()
    {
        var paths = new Argument<string[]>("path") { Description = "Notes, or folders of notes", Arity = ArgumentArity.OneOrMore };
        Option<bool> json = SharedOptions.Json();
        Option<DateOnly?> today = SharedOptions.Today();
        var days = new Option<bool>("--days") { Description = "The days of home care instead, added up: doses, meals, water, stools, vomiting, glucose" };
        var command = new Command("values", "List every value of notes with what follows from it: rates per minute, kilograms, millimetres") { paths, json, days, today };
        command.SetAction(parsed => Run(parsed.GetValue(paths)!, parsed.GetValue(json), parsed.GetValue(days), parsed.DayOf(today), parsed.InvocationConfiguration.Output));
        return command;
    }

    /// <summary>One note that is named is printed by itself; several, or a folder, each under its path, in JSON one object a line.</summary>
    private static int Run(string[] paths, bool json, bool days, DateOnly today, TextWriter output)
    {
        bool one = paths is [var only] && !Directory.Exists(only);
        bool first = true;
        var notes = new ReadableNotes(paths);
        notes.ForEach(
            file =>
            {
                var analysis = NoteAnalysis.Of(file.ToNote(notes.Rules), today);
                string? path = one ? null : file.Path;
                return new
                {
                    file.Path,
                    Analysis = analysis,
                    Json = !json ? null : days ? JsonSerializer.Serialize(ContractReports.Days(analysis) with { Path = path }, ContractJson.Readable.DaysReport)
                        : JsonSerializer.Serialize(ContractReports.Values(analysis) with { Path = path }, ContractJson.Readable.ValuesReport),
                };
            },
            note =>
            {
                if (note.Json is { } text)
                {
                    Terminal.WriteJson(text);
                    return;
                }

                output.Write(first ? "" : "\n");
                first = false;
                output.Write(one ? "" : note.Path + "\n");
                (days ? ValuesPrinter.PrintDays : (Action<TextWriter, NoteAnalysis>)ValuesPrinter.Print)(output, note.Analysis);
            });
        return notes.Problem ?? ExitCodes.Fine;
    }
}
