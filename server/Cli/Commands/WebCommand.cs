using System.CommandLine;
using HealthNotes.Cli.Files;
using HealthNotes.Cli.Output;
using HealthNotes.Files;

namespace HealthNotes.Cli.Commands;

/// <summary><c>hnote web</c>: the web editor in this computer's browser, or its files for any web server.</summary>
internal static class WebCommand
{
    private const int UsualPort = 4790;
    private const string First = "index.html";

    /// <summary>Where the build puts the files: beside the program.</summary>
    private static string Folder => Path.Combine(AppContext.BaseDirectory, "web");

    public static Command Create()
    {
        var target = new Option<string?>("--out", "-o") { Description = "Write the files to a folder instead, for any web server", HelpName = "FOLDER" };
        var port = new Option<int>("--port") { Description = "The port of this computer; a browser keeps the notes of each port apart", HelpName = "NUMBER", DefaultValueFactory = _ => UsualPort };
        Option<bool> force = SharedOptions.Force();
        var command = new Command("web", "Write notes in a browser, on this computer or, from a web server, on a phone; notes stay in the browser") { target, port, force };
        command.SetAction(async (parsed, stop) =>
        {
            TextWriter output = parsed.InvocationConfiguration.Output;
            Dictionary<string, string> files = Files();
            if (parsed.GetValue(target) is { } folder)
            {
                Write(files, folder, parsed.GetValue(force), output);
                return ExitCodes.Fine;
            }

            int number = parsed.GetValue(port);
            if (number is < 1024 or > 65535)
            {
                throw new RefusedException($"--port {number}: a port is a number from 1024 to 65535");
            }

            var server = new WebServer(files, number);
            await server.RunAsync(
                () =>
                {
                    output.WriteLine($"Open {server.Address} in your browser. Notes are kept in that browser. Ctrl-C ends.");
                    output.Flush();
                },
                stop).ConfigureAwait(false);
            return ExitCodes.Fine;
        });
        return command;
    }

    private static Dictionary<string, string> Files() => Directory.Exists(Folder)
        ? Directory.EnumerateFiles(Folder, "*", SearchOption.AllDirectories).ToDictionary(file => Path.GetRelativePath(Folder, file).Replace('\\', '/'))
        : throw new RefusedException("this hnote was built without the web editor; make it with bash editor-client/web/build.sh and build hnote again");

    /// <summary>A folder of somebody else's files is left alone: its own start page would be replaced.</summary>
    private static void Write(Dictionary<string, string> files, string folder, bool force, TextWriter output)
    {
        string start = Path.Combine(folder, First);
        if (!force && Directory.Exists(folder) && Directory.EnumerateFileSystemEntries(folder).Any() && !File.Exists(start))
        {
            throw new RefusedException($"{folder} has other files in it; name an empty folder, or add to it with --force");
        }

        OutputFile.Check(start, [], force);
        foreach ((string name, string file) in files.OrderBy(file => file.Key == First))
        {
            string path = Path.Combine(folder, name);
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            AtomicFile.Write(path, File.ReadAllBytes(file), []);
        }

        output.WriteLine($"Wrote {files.Count} files to {folder}. Serve them with https: a phone that opened the page once needs no network afterwards.");
    }
}
