using System.CommandLine;
using System.Text.Json;
using HealthNotes.Cli.Files;
using HealthNotes.Cli.Output;

namespace HealthNotes.Cli.Commands;

/// <summary><c>hnote read FILE</c></summary>
internal static class ReadCommand
{
    public static Command Create()
    {
        var file = new Argument<string>("file") { Description = "The note" };
        Option<bool> json = SharedOptions.Json();
        var command = new Command("read", "Print each line of a note beside how it was read") { file, json };
        command.SetAction(parsed => Run(parsed.GetValue(file)!, parsed.GetValue(json), parsed.InvocationConfiguration.Output));
        return command;
    }

    private static int Run(string path, bool json, TextWriter output)
    {
        LineReading[] lines = [.. LineReading.Of(NoteFile.Read(path).ToNote())];
        if (json)
        {
            Terminal.WriteJson(JsonSerializer.Serialize(ContractReports.Read(path, lines), ContractJson.Readable.ReadReport));
        }
        else
        {
            ReadingPrinter.Print(output, lines);
        }

        return ExitCodes.Fine;
    }
}
