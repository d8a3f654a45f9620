using System.CommandLine;
using System.Text.Json;
using HealthNotes.Analysis;
using HealthNotes.Cli.Files;
using HealthNotes.Cli.Output;

namespace HealthNotes.Cli.Commands;

/// <summary><c>hnote values FILE</c></summary>
internal static class ValuesCommand
{
    public static Command Create()
    {
        var file = new Argument<string>("file") { Description = "The note" };
        Option<bool> json = SharedOptions.Json();
        Option<DateOnly?> today = SharedOptions.Today();
        var days = new Option<bool>("--days") { Description = "The days of home care instead, added up: doses, meals, water, stools, vomiting, glucose" };
        var command = new Command("values", "List every value of a note with what follows from it: rates per minute, kilograms, millimetres") { file, json, days, today };
        command.SetAction(parsed => Run(parsed.GetValue(file)!, parsed.GetValue(json), parsed.GetValue(days), parsed.DayOf(today), parsed.InvocationConfiguration.Output));
        return command;
    }

    private static int Run(string path, bool json, bool days, DateOnly today, TextWriter output)
    {
        var analysis = NoteAnalysis.Of(NoteFile.Read(path).ToNote(), today);
        if (json && days)
        {
            Terminal.WriteJson(JsonSerializer.Serialize(ContractReports.Days(analysis), ContractJson.Readable.DaysReport));
        }
        else if (days)
        {
            ValuesPrinter.PrintDays(output, analysis);
        }
        else if (json)
        {
            Terminal.WriteJson(JsonSerializer.Serialize(ContractReports.Values(analysis), ContractJson.Readable.ValuesReport));
        }
        else
        {
            ValuesPrinter.Print(output, analysis);
        }

        return ExitCodes.Fine;
    }
}
