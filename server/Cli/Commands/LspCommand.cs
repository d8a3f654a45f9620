using System.CommandLine;
using System.Reflection;
using HealthNotes.LanguageHost;
using HealthNotes.LanguageServer.Session;

namespace HealthNotes.Cli.Commands;

/// <summary><c>hnote lsp</c>: the language server, started by an editor.</summary>
internal static class LspCommand
{
    public static Command Create()
    {
        var standard = new Option<bool>("--stdio") { Description = "Speak over standard input and output (this is the default)" };
        var pipe = new Option<string?>("--pipe") { Description = "Speak over a named pipe or socket file that the editor made", HelpName = "NAME" };
        var log = new Option<string?>("--log") { Description = "Add lines about what the server does to a file", HelpName = "FILE" };
        var client = new Option<int?>("--clientProcessId") { Description = "End when this process ends", HelpName = "ID" };
        Option<DateOnly?> today = SharedOptions.Today();
        var command = new Command("lsp", "The language server: an editor starts it, and it reads along") { standard, pipe, log, client, today };
        command.SetAction((parsed, _) => LanguageServerHost.RunAsync(new ServerOptions
        {
            Pipe = parsed.GetValue(pipe),
            Log = parsed.GetValue(log),
            ClientProcessId = parsed.GetValue(client),
            Today = parsed.GetValue(today) ?? SharedOptions.TodayOfTests(),
            Version = typeof(LspCommand).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion.Split('+')[0] ?? "",
        }));
        return command;
    }
}
