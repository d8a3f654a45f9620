using System.Diagnostics;

namespace HealthNotes.Cli.Tests;

/// <summary>Files that are no files, folders without end, and texts that grow: nothing hangs, and nothing takes the machine.</summary>
public class BombTests
{
    private const string Good = "pet Marlow\nspecies dog\nborn 2020-01-01\n2026-10-04 check\n  gums pink\n";

    [SkippableFact]
    public void A_pipe_or_a_device_is_no_note_and_no_picture()
    {
        Skip.IfNot(OperatingSystem.IsLinux(), "only Linux tells what a file is before it is opened");
        using var work = new Workspace();
        string note = work.Note(Good + "  photo a.png\n  photo zero.png\n");
        Run("mkfifo", work.PathOf("a.png"));
        Run("mkfifo", work.PathOf("fifo.hnote"));
        Run("mknod", work.PathOf("zero.png"), "c", "1", "5");
        Outcome page = Hnote.Run("page", note, "--out", "-", "--today", Hnote.Today);
        Assert.Equal(0, page.Code);
        Assert.Contains("not shown: it is a pipe or a device", page.Output, StringComparison.Ordinal);
        Assert.Equal(0, Hnote.Run("check", work.Folder, "--today", "2026-10-04").Code);
        Assert.All(["check", "read", "format", "values", "due"], command =>
        {
            Outcome outcome = Hnote.Run(command, work.PathOf("fifo.hnote"));
            Assert.Equal(2, outcome.Code);
            Assert.Contains("it is a pipe or a device", outcome.Errors, StringComparison.Ordinal);
        });
        Assert.Equal(2, Hnote.Run("check", "/dev/zero").Code);
        Assert.Equal(2, Hnote.Run("page", note, "--out", work.PathOf("fifo.hnote")).Code);
        Run("mkfifo", work.PathOf("out.html"));
        Assert.Equal(2, Hnote.Run("page", note, "--out", work.PathOf("out.html")).Code);
    }

    [SkippableFact]
    public void Each_note_is_visited_once_whatever_leads_to_it()
    {
        Skip.If(OperatingSystem.IsWindows(), "links need rights on Windows");
        using var work = new Workspace();
        work.Note(Good, "pets/marlow.hnote");
        Directory.CreateSymbolicLink(work.PathOf("pets/one"), work.PathOf("pets"));
        Directory.CreateSymbolicLink(work.PathOf("pets/two"), work.PathOf("pets"));
        File.CreateSymbolicLink(work.PathOf("pets/same.hnote"), work.PathOf("pets/marlow.hnote"));
        var clock = Stopwatch.StartNew();
        Outcome outcome = Hnote.Run("check", work.PathOf("pets"), work.PathOf("pets/marlow.hnote"), "--today", "2026-10-04");
        Assert.Equal(1, outcome.Output.Split("(Marlow)").Length - 1);
        Assert.InRange(clock.Elapsed.TotalSeconds, 0, 20);
    }

    [Fact]
    public void A_table_in_free_text_stays_small()
    {
        using var work = new Workspace();
        string wide = "  > " + string.Concat(Enumerable.Repeat("|a", 1_500)) + "|\n  > " + string.Concat(Enumerable.Repeat("|-", 1_500)) + "|\n";
        Outcome outcome = Hnote.Run("page", work.Note(Good + wide + string.Concat(Enumerable.Repeat("  > |b\n", 1_500))), "--today", "2026-10-04");
        Assert.Equal(0, outcome.Code);
        Assert.InRange(new FileInfo(work.PathOf("note.html")).Length, 1, 1_000_000);
    }

    [Fact]
    public void A_file_larger_than_any_note_is_refused()
    {
        using var work = new Workspace();
        string path = work.PathOf("huge.hnote");
        using (FileStream file = File.Create(path))
        {
            file.SetLength(800L * 1024 * 1024);
        }

        Outcome outcome = Hnote.Run("check", path);
        Assert.Equal(2, outcome.Code);
        Assert.Contains("it is larger than 32 MB", outcome.Errors, StringComparison.Ordinal);
    }

    private static void Run(params string[] command)
    {
        using var process = Process.Start(command[0], command[1..]);
        process.WaitForExit();
    }
}
