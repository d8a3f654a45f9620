using System.CommandLine;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using HealthNotes.Cli.Files;
using HealthNotes.Cli.Output;
using HealthNotes.Export.Fhir;
using HealthNotes.Files;

namespace HealthNotes.Cli.Commands;

/// <summary><c>hnote import BUNDLE</c>: a note from a FHIR bundle.</summary>
internal static class ImportCommand
{
    private const string Ending = ".fhir.json";
    private const string Standard = "-";

    public static Command Create()
    {
        var bundle = new Argument<string>("bundle") { Description = "A FHIR R4 bundle about one pet, as JSON" };
        var target = new Option<string?>("--out", "-o") { Description = "The note to write (the default is beside the bundle); - prints it", HelpName = "FILE.hnote" };
        var command = new Command("import", "Make a note of a FHIR bundle: the note it holds, else the facts and common measures in it") { bundle, target };
        command.SetAction(parsed => Run(parsed.GetValue(bundle)!, parsed.GetValue(target), parsed.InvocationConfiguration.Output));
        return command;
    }

    private static int Run(string bundle, string? asked, TextWriter output)
    {
        ImportedNote note;
        try
        {
            note = FhirImport.Of(JsonNode.Parse(NoteFile.Read(bundle).Text));
        }
        catch (Exception problem) when (problem is JsonException or FormatException)
        {
            throw new RefusedException($"can't import {bundle}: {(problem is JsonException ? "it is not JSON" : problem.Message)}");
        }

        string target = asked ?? (bundle == Standard ? Standard
            : bundle.EndsWith(Ending, StringComparison.Ordinal) ? bundle[..^Ending.Length] + ".hnote" : Path.ChangeExtension(bundle, null) + ".imported.hnote");
        if (target == Standard)
        {
            Terminal.WriteNote(note.Text);
            return ExitCodes.Fine;
        }

        AtomicFile.Create(target, note.Text, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false));
        output.WriteLine(note.IsWhole ? $"Wrote {target}: the note that the bundle holds." : $"Wrote {target} from the resources of the bundle; {note.Left} of them have no line in it.");
        return ExitCodes.Fine;
    }
}
