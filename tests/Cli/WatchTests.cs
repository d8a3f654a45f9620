using System.Diagnostics;

namespace HealthNotes.Cli.Tests;

/// <summary><c>hnote watch</c>: the page follows the note however an editor saves it.</summary>
public sealed class WatchTests : IDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);

    private readonly Workspace folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public async Task The_page_follows_a_save_a_replaced_file_and_a_gap_and_an_interrupt_ends_it()
    {
        string note = folder.Note("pet Marlow\nspecies dog\n");
        string page = folder.PathOf("note.html");
        using Process watching = Start("watch", note, "--today", Hnote.Today);
        Task<string> errors = watching.StandardError.ReadToEndAsync();
        await Shows(page, "Marlow");

        File.WriteAllText(note, "pet Tansy\nspecies cat\n");
        await Shows(page, "Tansy");

        string next = folder.Note("pet Hazel\nspecies dog\n", "note.hnote~new");
        File.Move(next, note, overwrite: true);
        await Shows(page, "Hazel");

        File.WriteAllBytes(note, [0xC3, 0x28]);
        await Task.Delay(500);
        File.WriteAllText(note, "pet Juniper\nspecies cat\n");
        await Shows(page, "Juniper");

        using Process interrupt = Process.Start("kill", ["-INT", $"{watching.Id}"]);
        Assert.True(watching.WaitForExit((int)Patience.TotalMilliseconds), "it did not end after an interrupt");
        Assert.Equal(0, watching.ExitCode);
        string said = await errors;
        Assert.Contains("not UTF-8", said, StringComparison.Ordinal);
        Assert.Single(said.Split('\n', StringSplitOptions.RemoveEmptyEntries));
    }

    [SkippableFact]
    public async Task A_renamed_folder_and_the_file_behind_a_link_are_followed()
    {
        Skip.If(OperatingSystem.IsWindows(), "links need rights on Windows");
        string real = folder.Note("pet Marlow\nspecies dog\n", "far/real.hnote");
        Directory.CreateDirectory(folder.PathOf("near"));
        File.CreateSymbolicLink(folder.PathOf("near/note.hnote"), real);
        string page = folder.PathOf("page.html");
        using Process watching = Start("watch", folder.PathOf("near/note.hnote"), "--out", page, "--today", Hnote.Today);
        try
        {
            await Shows(page, "Marlow");
            File.WriteAllText(real, "pet Tansy\nspecies cat\n");
            await Shows(page, "Tansy");
            Directory.Move(folder.PathOf("near"), folder.PathOf("old"));
            await Task.Delay(500);
            folder.Note("pet Hazel\nspecies dog\n", "near/note.hnote");
            await Shows(page, "Hazel");
        }
        finally
        {
            watching.Kill();
        }
    }

    [Fact]
    public void The_note_itself_is_never_the_page()
    {
        string note = folder.Note("pet Marlow\n");
        Outcome outcome = Hnote.Run("watch", note, "--out", note, "--today", Hnote.Today);
        Assert.NotEqual(0, outcome.Code);
        Assert.Contains("is the note itself", outcome.Errors, StringComparison.Ordinal);
    }

    private static Process Start(params string[] arguments)
    {
        string[] command = [.. Hnote.Command, .. arguments];
        return Process.Start(new ProcessStartInfo(command[0], command[1..]) { RedirectStandardOutput = true, RedirectStandardError = true })!;
    }

    private static async Task Shows(string page, string name)
    {
        for (var clock = Stopwatch.StartNew(); clock.Elapsed < Patience; await Task.Delay(30))
        {
            if (File.Exists(page) && (await File.ReadAllTextAsync(page)).Contains($"<bdi>{name}</bdi>", StringComparison.Ordinal))
            {
                return;
            }
        }

        Assert.Fail($"the page never showed {name}");
    }
}
