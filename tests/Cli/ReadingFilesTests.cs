using System.Diagnostics;
using System.Text;

namespace HealthNotes.Cli.Tests;

/// <summary>Files that are no notes, notes in odd shapes, and files that can't be read: a clear message, never a crash.</summary>
public class ReadingFilesTests
{
    private const string Good = "pet Marlow\nspecies dog\nborn 2020-01-01\n2026-10-04 check\n  gums pink\n";

    [Fact]
    public void A_missing_file_is_named_and_the_others_are_still_checked()
    {
        using var work = new Workspace();
        string good = work.Note(Good);
        Outcome outcome = Hnote.Run("check", "--today", "2026-10-04", work.PathOf("none.hnote"), good);
        Assert.Equal(2, outcome.Code);
        Assert.Contains("none.hnote: there is no such file", outcome.Errors, StringComparison.Ordinal);
        Assert.Contains("Every line was understood", outcome.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("read")]
    public void A_folder_is_no_note(string command)
    {
        using var work = new Workspace();
        Outcome outcome = Hnote.Run(command, work.Folder);
        Assert.Equal(2, outcome.Code);
        Assert.Contains("it is a folder", outcome.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public void A_folder_without_notes_says_so()
    {
        using var work = new Workspace();
        Outcome outcome = Hnote.Run("check", work.Folder);
        Assert.Equal(2, outcome.Code);
        Assert.Contains("holds no note", outcome.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public void A_binary_file_is_no_note()
    {
        using var work = new Workspace();
        byte[] bytes = new byte[4096];
        new Random(1).NextBytes(bytes);
        Outcome outcome = Hnote.Run("check", work.Bytes(bytes));
        Assert.Equal(2, outcome.Code);
        Assert.False(outcome.ShowsInternals, outcome.Errors);
        Assert.Equal(2, Hnote.Run("check", work.Bytes(new byte[4096])).Code);
    }

    [Fact]
    public void Bytes_that_are_not_UTF8_are_pointed_at()
    {
        using var work = new Workspace();
        Outcome latin1 = Hnote.Run("check", work.Bytes([.. Encoding.UTF8.GetBytes("pet Marlow\nbreed saint-")[..], 0xE9, (byte)'x']));
        Assert.Equal(2, latin1.Code);
        Assert.Contains("line 2, column 13", latin1.Errors, StringComparison.Ordinal);
        Outcome surrogate = Hnote.Run("check", work.Bytes([.. Encoding.UTF8.GetBytes(Good), 0xED, 0xA0, 0x80]));
        Assert.Equal(2, surrogate.Code);
        Assert.False(surrogate.ShowsInternals, surrogate.Errors);
    }

    [Fact]
    public void UTF16_with_its_mark_and_UTF8_with_its_mark_are_read()
    {
        using var work = new Workspace();
        Assert.Equal(0, Hnote.Run("check", work.Bytes([.. Encoding.Unicode.GetPreamble(), .. Encoding.Unicode.GetBytes(Good)])).Code);
        Assert.Equal(0, Hnote.Run("check", work.Bytes([.. Encoding.UTF8.GetPreamble(), .. Encoding.UTF8.GetBytes(Good)])).Code);
    }

    [Fact]
    public void Ten_megabytes_in_one_line_are_kept_and_flagged()
    {
        using var work = new Workspace();
        string path = work.Note(Good + new string('x', 10 * 1024 * 1024));
        Outcome outcome = Hnote.Run("check", path);
        Assert.Equal(1, outcome.Code);
        Assert.Contains("line-too-long", outcome.Output, StringComparison.Ordinal);
        Assert.True(outcome.Output.Length < 5_000, "the line itself is not printed whole");
        Assert.Equal(0, Hnote.Run("format", "--write", path).Code);
        Assert.True(new FileInfo(path).Length > 10 * 1024 * 1024);
    }

    [Fact]
    public void A_stray_NUL_or_direction_mark_costs_its_line_alone_and_never_reaches_the_terminal()
    {
        using var work = new Workspace();
        Outcome outcome = Hnote.Run("check", work.Note("pet Marlow\nspecies dog\nborn 2020-01-01\n2026-10-04 check\n  gums p\0ink\n  ear L \u202Ewax\n  gums pale\n"));
        Assert.Equal(1, outcome.Code);
        Assert.DoesNotContain('\0', outcome.Output);
        Assert.DoesNotContain('\u202E', outcome.Output);
        Assert.Contains("gum-colour", outcome.Output, StringComparison.Ordinal);
    }

    [SkippableFact]
    public void A_file_without_permission_says_so()
    {
        using var work = new Workspace();
        string path = work.Note(Good);
        Skip.If(OperatingSystem.IsWindows(), "permissions are set another way on Windows");
        File.SetUnixFileMode(path, UnixFileMode.None);
        IReadOnlyList<string> command = Hnote.Command;
        if (Environment.IsPrivilegedProcess)
        {
            // to root every file is open, so the program is copied where all may read it and run as nobody
            Skip.IfNot(File.Exists("/usr/bin/setpriv"), "setpriv is missing: apt-get install util-linux");
            File.SetUnixFileMode(work.Folder, (UnixFileMode)0b111_101_101);
            string copy = CopyForAll(work);
            command = ["/usr/bin/setpriv", "--reuid=65534", "--regid=65534", "--clear-groups", .. command.SkipLast(1), copy];
        }

        Outcome outcome = Hnote.RunWith([.. command, "check", path], null, ("HOME", work.Folder), ("DOTNET_CLI_HOME", work.Folder));
        Assert.Equal(2, outcome.Code);
        Assert.Contains("you are not allowed to read it", outcome.Errors, StringComparison.Ordinal);
    }

    [Fact]
    public void A_note_may_come_through_a_pipe()
    {
        Outcome outcome = Hnote.RunWith([.. Hnote.Command, "check", "-"], Good);
        Assert.Equal(0, outcome.Code);
    }

    private static string CopyForAll(Workspace work)
    {
        string program = Hnote.Command[^1];
        string folder = Directory.CreateDirectory(work.PathOf("program")).FullName;
        foreach (string file in Directory.EnumerateFiles(Path.GetDirectoryName(program)!).Where(f => !f.EndsWith(".dbg", StringComparison.Ordinal) && !f.EndsWith(".pdb", StringComparison.Ordinal)))
        {
            File.Copy(file, Path.Combine(folder, Path.GetFileName(file)));
        }

        using var chmod = Process.Start("chmod", ["-R", "a+rX", folder]);
        chmod.WaitForExit();
        return Path.Combine(folder, Path.GetFileName(program));
    }
}
