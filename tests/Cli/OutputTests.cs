namespace HealthNotes.Cli.Tests;

/// <summary>What hnote makes never takes the place of a note, or of a file that hnote did not make.</summary>
public class OutputTests
{
    private const string Note = "pet Marlow\nspecies dog\n2026-10-04 check\n  weight 21.4kg\ndue booster 2026-12-01\n";

    /// <summary>In a folder with <c>a.hnote</c>, <c>b.hnote</c>, the user's own <c>own.html</c> and <c>a.html</c>, and <c>link.html</c>, which leads to <c>b.hnote</c>.</summary>
    [Theory]
    [InlineData("due", "--calendar", "a.hnote", "b.hnote")] // the shell's *.hnote
    [InlineData("page", "-o", "a.hnote", "b.hnote")]
    [InlineData("page", "b.hnote", "-o", "a.hnote")]
    [InlineData("page", "b.hnote", "-o", "new.hnote")]
    [InlineData("page", "b.hnote", "-o", "B.HNOTE")]
    [InlineData("page", "b.hnote", "-o", "link.html")]
    [InlineData("page", "a.hnote", "-o", "link.html", "--force")]
    [InlineData("page", "a.hnote", "-o", "hard.html", "--force")]
    [InlineData("page", "a.hnote", "-o", "nowhere.html", "--force")]
    [InlineData("page", "a.hnote", "-o", "b.hnote", "--force")]
    [InlineData("page", "own.html", "-o", "own.html", "--force")]
    [InlineData("page", "a.hnote")]
    [InlineData("page", "a.hnote", "--out", "own.html")]
    [InlineData("page", "a.hnote", "--format", "markdown", "--out", "own.html")]
    [InlineData("page", ".")]
    [InlineData("sheet", "a.hnote", "--out", "own.html")]
    [InlineData("sheet", "a.hnote", "--out", "b.hnote")]
    [InlineData("card", "--out", "own.html")]
    [InlineData("card", "--out", "a.hnote")]
    [InlineData("watch", "a.hnote")]
    [InlineData("watch", "a.hnote", "--out", "b.hnote")]
    [InlineData("due", "a.hnote", "--calendar", "own.html")]
    [InlineData("lsp", "--log", "a.hnote")]
    [InlineData("lsp", "--log", "own.html")]
    [InlineData("new", "own.html", "--name", "X", "--species", "dog")]
    public void No_file_of_the_users_own_is_written_over(params string[] arguments)
    {
        using var work = new Workspace();
        work.Note(Note, "a.hnote");
        work.Note(Note, "b.hnote");
        work.Note("<h1>mine</h1>", "own.html");
        work.Note("<h1>mine</h1>", "a.html");
        File.CreateSymbolicLink(work.PathOf("link.html"), work.PathOf("b.hnote"));
        File.CreateSymbolicLink(work.PathOf("nowhere.html"), work.PathOf("c.hnote"));
        using (var link = System.Diagnostics.Process.Start("ln", [work.PathOf("b.hnote"), work.PathOf("hard.html")]))
        {
            link.WaitForExit();
        }

        string before = Content(work);
        Outcome outcome = Hnote.RunWith(["sh", "-c", "cd \"$0\" && exec \"$@\"", work.Folder, .. Hnote.Command, .. arguments, "--today", Hnote.Today], "");
        Assert.Equal(before, Content(work));
        Assert.Equal(2, outcome.Code);
        Assert.False(outcome.ShowsInternals, outcome.Errors);
        Assert.StartsWith("hnote: ", outcome.Errors, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("page", "note.hnote")]
    [InlineData("page", "note.hnote", "--out", "own.md")]
    [InlineData("page", "note.hnote", "--out", "own.pdf")]
    [InlineData("sheet", "note.hnote", "--out", "own.html")]
    [InlineData("card", "--out", "own.html")]
    [InlineData("due", "note.hnote", "--calendar", "own.ics")]
    [InlineData("page", ".", "--out", "pages")]
    public void Its_own_files_are_replaced_and_others_with_force(params string[] arguments)
    {
        using var work = new Workspace();
        work.Note(Note);
        string browser = work.Note("#!/bin/sh\nfor a in \"$@\"; do case $a in --print-to-pdf=*) out=${a#*=};; esac; done\necho %PDF-1.4 > \"$out\"\n", "browser");
        File.SetUnixFileMode(browser, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
        Outcome Run(params string[] more) => Hnote.RunWith(["sh", "-c", "cd \"$0\" && exec \"$@\"", work.Folder, .. Hnote.Command, .. arguments, "--today", Hnote.Today, .. more], "", ("HNOTE_CHROMIUM", browser));
        Assert.Equal((0, ""), (Run().Code, Run().Errors));
        string[] made = [.. Directory.GetFiles(work.Folder, "*", SearchOption.AllDirectories).Where(file => file != browser && !file.EndsWith(".hnote", StringComparison.Ordinal))];
        Assert.NotEmpty(made);
        Array.ForEach(made, file => File.WriteAllText(file, "mine"));
        Assert.Equal(2, Run().Code);
        Assert.All(made, file => Assert.Equal("mine", File.ReadAllText(file)));
        Assert.Equal(0, Run("--force").Code);
        Assert.All(made, file => Assert.NotEqual("mine", File.ReadAllText(file)));
    }

    [Theory]
    [InlineData("format", "--wirte", "note.hnote")]
    [InlineData("check", "--Json", "note.hnote")]
    [InlineData("check", "note.hnote", "-x")]
    [InlineData("due", "--calender", "pets.ics", "note.hnote")]
    [InlineData("page", "note.hnote", "--for=share", "--fotos=x")]
    [InlineData("new", "--nmae", "X")]
    [InlineData("read", "--all")]
    [InlineData("lsp", "--port", "4711")]
    [InlineData("about", "--all")]
    public void An_unknown_option_is_refused_and_never_read_as_a_file(params string[] arguments)
    {
        using var work = new Workspace();
        work.Note(Note);
        string unknown = arguments.First(argument => argument.StartsWith('-') && !argument.StartsWith("--for", StringComparison.Ordinal)).Split('=')[0];
        work.Note(Note, unknown);
        Outcome outcome = Hnote.RunWith(["sh", "-c", "cd \"$0\" && exec \"$@\"", work.Folder, .. Hnote.Command, .. arguments], "");
        Assert.Equal((2, ""), (outcome.Code, outcome.Output));
        Assert.Contains($"unknown option {unknown}", outcome.Errors, StringComparison.Ordinal);
        Assert.Equal(0, Hnote.RunWith(["sh", "-c", "cd \"$0\" && exec \"$@\"", work.Folder, .. Hnote.Command, "read", "--", unknown], "").Code);
    }

    [Fact]
    public void A_file_of_arguments_is_not_read()
    {
        using var work = new Workspace();
        string note = work.Note(Note);
        string list = work.Note($"--write {note}\n", "list");
        Outcome outcome = Hnote.Run("format", "@" + list);
        Assert.Equal(2, outcome.Code);
        Assert.Contains($"can't read @{list}: there is no such file", outcome.Errors, StringComparison.Ordinal);
    }

    [SkippableFact]
    public void What_is_made_of_a_private_note_is_private()
    {
        Skip.If(OperatingSystem.IsWindows(), "there are no modes on Windows");
        using var work = new Workspace();
        const UnixFileMode Private = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        string note = work.Note(Note);
        work.Note(Note, "open.hnote");
        Hnote.Run("page", note, "--today", Hnote.Today);
        Assert.NotEqual(Private, File.GetUnixFileMode(work.PathOf("note.html")));
        File.SetUnixFileMode(note, Private);
        Hnote.Run("page", note, "--today", Hnote.Today);
        Hnote.Run("sheet", note, "--today", Hnote.Today);
        Hnote.Run("due", work.Folder, "--calendar", work.PathOf("x.ics"), "--today", Hnote.Today);
        Hnote.Run("page", work.Folder, "--out", work.PathOf("out"), "--today", Hnote.Today);
        Assert.All(["note.html", "note-sheet.html", "x.ics", "out/note.html", "out/index.html"], name => Assert.Equal((name, Private), (name, File.GetUnixFileMode(work.PathOf(name)))));
        Assert.NotEqual(Private, File.GetUnixFileMode(work.PathOf("out/open.html")));
    }

    [SkippableTheory]
    [InlineData("format", "--write")]
    [InlineData("new", "check")]
    public void A_read_only_file_and_a_file_of_two_names_are_left_alone(params string[] command)
    {
        Skip.If(OperatingSystem.IsWindows(), "there are no modes on Windows");
        using var work = new Workspace();
        string fixedNote = work.Note("pet  Marlow\n", "fixed.hnote");
        File.SetUnixFileMode(fixedNote, UnixFileMode.UserRead);
        Outcome readOnly = Hnote.Run([.. command, fixedNote]);
        Assert.Equal((2, "pet  Marlow\n"), (readOnly.Code, File.ReadAllText(fixedNote)));
        Assert.Contains("it is read-only", readOnly.Errors, StringComparison.Ordinal);

        string note = work.Note("pet  Marlow\n");
        using (var link = System.Diagnostics.Process.Start("ln", [note, work.PathOf("second")]))
        {
            link.WaitForExit();
        }

        Skip.IfNot(OperatingSystem.IsLinux(), "only Linux tells how many names a file has");
        Outcome twice = Hnote.Run([.. command, note]);
        Assert.Equal((2, "pet  Marlow\n"), (twice.Code, File.ReadAllText(note)));
        Assert.Contains("a second name", twice.Errors, StringComparison.Ordinal);
    }

    private static string Content(Workspace work) => string.Join('\n', Directory.GetFileSystemEntries(work.Folder).Order(StringComparer.Ordinal)
        .Select(file => $"{file} {new FileInfo(file).LinkTarget} {(file.EndsWith("nowhere.html", StringComparison.Ordinal) || Directory.Exists(file) ? "" : File.ReadAllText(file))}"));
}
