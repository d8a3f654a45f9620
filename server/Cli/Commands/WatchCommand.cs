using System.CommandLine;
using System.Runtime.InteropServices;
using System.Threading.Channels;
using HealthNotes.Cli.Output;
using HealthNotes.Files;

namespace HealthNotes.Cli.Commands;

/// <summary><c>hnote watch FILE</c>: keeps the page up to date while any editor saves the note.</summary>
internal static class WatchCommand
{
    /// <summary>An editor saves in several steps; this long after the last of them the page is made.</summary>
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(150);

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
        // One place is enough: however often the note is saved meanwhile, the page is made once after it.
        var saved = Channel.CreateBounded<bool>(new BoundedChannelOptions(1) { FullMode = BoundedChannelFullMode.DropWrite });
        using FileSystemWatcher watcher = Watch(note, () => saved.Writer.TryWrite(true));
        Make(path, to, usUnits, today(), output);
        try
        {
            while (true)
            {
                await saved.Reader.ReadAsync(ended.Token).ConfigureAwait(false);
                do
                {
                    await Task.Delay(Pause, ended.Token).ConfigureAwait(false);
                }
                while (saved.Reader.TryRead(out _));
                Make(path, to, usUnits, today(), output);
            }
        }
        catch (OperationCanceledException)
        {
            return ExitCodes.Fine;
        }
    }

    /// <summary>Watches the folder, not the file: many editors write a new file and give it the old one's name.</summary>
    private static FileSystemWatcher Watch(string note, Action saved)
    {
        string folder = Path.GetDirectoryName(note)!;
        if (!Directory.Exists(folder))
        {
            throw new RefusedException($"can't watch {note}: there is no such folder");
        }

        string name = Path.GetFileName(note);
        var watcher = new FileSystemWatcher(folder) { NotifyFilter = NotifyFilters.FileName | NotifyFilters.LastWrite | NotifyFilters.Size };
        FileSystemEventHandler one = (_, change) => SayIf(change.Name == name, saved);
        watcher.Changed += one;
        watcher.Created += one;
        watcher.Renamed += (_, change) => SayIf(change.Name == name, saved);
        // Too many changes at once to be told one by one: the note may be among them.
        watcher.Error += (_, _) => saved();
        watcher.EnableRaisingEvents = true;
        return watcher;
    }

    private static void SayIf(bool isNote, Action saved)
    {
        if (isNote)
        {
            saved();
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
