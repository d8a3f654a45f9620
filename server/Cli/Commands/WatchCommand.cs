using System.CommandLine;
using System.Runtime.InteropServices;
using HealthNotes.Cli.Output;
using HealthNotes.Files;

namespace HealthNotes.Cli.Commands;

/// <summary><c>hnote watch FILE</c>: keeps the page up to date while any editor saves the note.</summary>
internal static class WatchCommand
{
    /// <summary>How often the note is looked at. An editor saves in several steps: the page is made when nothing has changed for so long.</summary>
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(200);

    public static Command Create()
    {
        var file = new Argument<string>("file") { Description = "The note" };
        var target = new Option<string?>("--out", "-o") { Description = "Where to write the page (the default is beside the note)", HelpName = "FILE" };
        Option<string?> units = SharedOptions.Units();
        Option<DateOnly?> today = SharedOptions.Today();
        Option<bool> force = SharedOptions.Force();
        var command = new Command("watch", "Make the page, and again each time you save the note; Ctrl-C ends it") { file, target, units, force, today };
        command.SetAction((parsed, stop) => RunAsync(
            parsed.GetValue(file)!, parsed.GetValue(target), parsed.GetValue(force), SharedOptions.UsUnits(parsed.GetValue(units)), () => parsed.DayOf(today), parsed.InvocationConfiguration.Output, stop));
        return command;
    }

    private static async Task<int> RunAsync(string path, string? target, bool force, bool? usUnits, Func<DateOnly> today, TextWriter output, CancellationToken stop)
    {
        string note = Path.GetFullPath(path);
        Destination to = Destination.Of(path, target, PageMaker.EndingOf(PageFormat.Html), force);
        if (to.Path is null)
        {
            throw new RefusedException("a page that is kept up to date needs a file: name it with --out");
        }

        using var ended = CancellationTokenSource.CreateLinkedTokenSource(stop);
        using PosixSignalRegistration interrupt = OnSignal(PosixSignal.SIGINT, ended);
        using PosixSignalRegistration terminate = OnSignal(PosixSignal.SIGTERM, ended);
        string folder = Path.GetDirectoryName(note)!;
        if (!Directory.Exists(folder))
        {
            throw new RefusedException($"can't watch {note}: there is no such folder");
        }

        string? made = State(note);
        if (made is null)
        {
            Terminal.Error.WriteLine($"hnote: there is no file {note} yet. The page is made when it is saved there. Ctrl-C ends.");
        }
        else
        {
            Make(path, to, usUnits, today(), output);
        }

        try
        {
            while (true)
            {
                await Task.Delay(Pause, ended.Token).ConfigureAwait(false);
                string? now = State(note);
                if (now is null || now == made)
                {
                    continue;
                }

                do
                {
                    made = now;
                    await Task.Delay(Pause, ended.Token).ConfigureAwait(false);
                    now = State(note);
                }
                while (now != made);
                if (now is not null)
                {
                    Make(path, to, usUnits, today(), output);
                }
            }
        }
        catch (OperationCanceledException)
        {
            return ExitCodes.Fine;
        }
    }

    /// <summary>
    /// What a save changes, at the end of all links; null while there is no file. It is looked at again and again, since what the
    /// system tells of a folder stops when the folder is renamed, and says nothing of a file that a link leads to.
    /// </summary>
    private static string? State(string note)
    {
        try
        {
            var file = new FileInfo(RealFile.Target(note));
            return file.Exists ? $"{RealFile.At(file.FullName)?.Identity} {file.LastWriteTimeUtc.Ticks} {file.Length}" : null;
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }

    private static void Make(string path, Destination target, bool? usUnits, DateOnly today, TextWriter output)
    {
        try
        {
            MadePage page = PageMaker.Make(path, new PageRequest(today, UsUnits: usUnits));
            target.Write(page.Bytes, output, $"{page.Analysis.Pet.Name ?? "a pet without a name"}, {page.Analysis.Note.Entries.Length} entries. Ctrl-C ends.");
        }
        catch (RefusedException problem)
        {
            // the next time it is saved it may be well
            Terminal.Error.WriteLine($"hnote: {problem.Message}");
        }

        output.Flush();
    }

    private static PosixSignalRegistration OnSignal(PosixSignal signal, CancellationTokenSource ended) =>
        PosixSignalRegistration.Create(signal, context =>
        {
            context.Cancel = true;
            ended.Cancel();
        });
}
