namespace HealthNotes.Cli.Tests;

/// <summary>What is written is replaced in one step, and a failed run leaves the old file whole.</summary>
public class WritingFilesTests
{
    private const string Unformatted = "pet Marlow\nspecies DOG\n2026-10-04 check\nOS clear\n weight 21,4 KG   # after breakfast\n";
    private const string Formatted = "pet Marlow\nspecies dog\n2026-10-04 check\n  eye L clear\n  weight 21.4kg   # after breakfast\n";

    [Fact]
    public void Format_prints_and_writes_on_request()
    {
        using var work = new Workspace();
        string path = work.Note(Unformatted);
        Assert.Equal(Formatted, Hnote.Run("format", path).Output);
        Assert.Equal(Unformatted, File.ReadAllText(path));
        Outcome outcome = Hnote.Run("format", "--write", path);
        Assert.Equal((0, Formatted), (outcome.Code, File.ReadAllText(path)));
        Assert.Contains(": formatted", outcome.Output, StringComparison.Ordinal);
        Assert.Contains(": no change", Hnote.Run("format", "--write", path).Output, StringComparison.Ordinal);
        Assert.Equal([path], Directory.GetFiles(work.Folder));
    }

    [Fact]
    public void Format_check_writes_nothing_and_ends_with_1_when_a_file_would_change()
    {
        using var work = new Workspace();
        string path = work.Note(Unformatted);
        string other = work.Note(Formatted, "other.hnote");
        Outcome outcome = Hnote.Run("format", "--check", work.Folder);
        Assert.Equal((1, $"{path}: would change\n"), (outcome.Code, outcome.Output));
        Assert.Equal(Unformatted, File.ReadAllText(path));
        Assert.Equal((0, ""), (Hnote.Run("format", "--check", other).Code, Hnote.Run("format", "--check", other).Output));
    }

    [Fact]
    public void One_file_that_cannot_be_read_changes_none()
    {
        using var work = new Workspace();
        string path = work.Note(Unformatted);
        Assert.Equal(2, Hnote.Run("format", "--write", path, work.PathOf("none.hnote")).Code);
        Assert.Equal(Unformatted, File.ReadAllText(path));
    }

    [Fact]
    public void A_link_stays_a_link_and_the_mode_stays()
    {
        using var work = new Workspace();
        string path = work.Note(Unformatted);
        File.SetUnixFileMode(path, UnixFileMode.UserRead | UnixFileMode.UserWrite);
        string link = work.PathOf("link.hnote");
        File.CreateSymbolicLink(link, path);
        Assert.Equal(0, Hnote.Run("format", "--write", link).Code);
        Assert.NotNull(new FileInfo(link).LinkTarget);
        Assert.Equal(Formatted, File.ReadAllText(path));
        Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(path));
    }

    [Fact]
    public void A_page_is_written_beside_the_note_and_to_where_it_is_asked()
    {
        using var work = new Workspace();
        string path = work.Note(Formatted);
        Assert.Equal(0, Hnote.Run("page", path).Code);
        Assert.StartsWith("<!DOCTYPE html>", File.ReadAllText(work.PathOf("note.html")), StringComparison.OrdinalIgnoreCase);
        Assert.Equal(0, Hnote.Run("page", path, "--out", work.PathOf("note.md")).Code);
        Assert.StartsWith("# Marlow", File.ReadAllText(work.PathOf("note.md")), StringComparison.Ordinal);
        Assert.StartsWith("# Marlow", Hnote.Run("page", path, "--out", "-", "--format", "markdown").Output, StringComparison.Ordinal);
    }

    [Fact]
    public void The_same_note_and_day_give_the_same_bytes()
    {
        using var work = new Workspace();
        string path = work.Note(Formatted);
        string first = Hnote.Run("page", path, "--today", Hnote.Today, "--out", "-").Output;
        Assert.Equal(first, Hnote.Run("page", path, "--today", Hnote.Today, "--out", "-").Output);
    }

    [Fact]
    public void A_page_that_cannot_be_written_says_so_and_leaves_nothing_behind()
    {
        using var work = new Workspace();
        string path = work.Note(Formatted);
        Outcome nowhere = Hnote.Run("page", path, "--out", work.PathOf("no/such/folder/page.html"));
        Assert.Equal(2, nowhere.Code);
        Assert.Contains("there is no such folder", nowhere.Errors, StringComparison.Ordinal);
        Directory.CreateDirectory(work.PathOf("page.html"));
        Outcome folder = Hnote.Run("page", path, "--out", work.PathOf("page.html"));
        Assert.Equal(2, folder.Code);
        Assert.False(folder.ShowsInternals, folder.Errors);
        Outcome itself = Hnote.Run("page", path, "--out", path);
        Assert.Equal(2, itself.Code);
        Assert.Equal(Formatted, File.ReadAllText(path));
        Assert.Equal([path], Directory.GetFiles(work.Folder));
    }

    [Fact]
    public void A_new_note_reads_without_a_problem_and_is_never_written_over()
    {
        using var work = new Workspace();
        string path = work.PathOf("tansy.hnote");
        string[] facts = ["new", path, "--name", "Tansy", "--species", "Cat", "--sex", "FS", "--born", "~2011", "--today", Hnote.Today];
        Outcome started = Hnote.Run(facts);
        Assert.Equal(0, started.Code);
        Assert.Contains("\n  vomit none ", started.Output, StringComparison.Ordinal);
        string note = File.ReadAllText(path);
        Assert.Contains("pet Tansy\nspecies cat\nsex female neutered\nborn ~2011\n", note, StringComparison.Ordinal);
        Assert.Contains("2026-11-25 check", note, StringComparison.Ordinal);
        Assert.Equal(0, Hnote.Run("check", path, "--today", Hnote.Today).Code);
        Assert.Equal(note, Hnote.Run("format", path).Output);
        Outcome again = Hnote.Run(facts);
        Assert.Equal(2, again.Code);
        Assert.Contains("is there already", again.Errors, StringComparison.Ordinal);
        Assert.Equal(note, File.ReadAllText(path));
    }

    /// <summary>The lines that wait as comments in a new note must work once their # is taken away.</summary>
    [Fact]
    public void Every_waiting_line_of_a_new_note_can_be_used()
    {
        using var work = new Workspace();
        string path = work.PathOf("marlow.hnote");
        Hnote.Run("new", path, "--name", "Marlow", "--species", "dog", "--born", "2020", "--today", Hnote.Today);
        string filled = string.Join('\n', File.ReadAllLines(path).Select(line => line.StartsWith("  # ", StringComparison.Ordinal) && char.IsLower(line[4]) ? "  " + line[4..] : line));
        Assert.DoesNotContain("error", Hnote.Run("check", "--json", "--today", Hnote.Today, work.Note(filled)).Output.Split("\"level\":").Select(s => s.Split('"').ElementAtOrDefault(1)));
    }

    [Theory]
    [InlineData("--species", "hamster")]
    [InlineData("--born", "2017-13")]
    [InlineData("--name", "a\nb")]
    public void A_new_note_refuses_an_answer_it_could_not_read(string option, string answer)
    {
        using var work = new Workspace();
        string path = work.PathOf("x.hnote");
        string[] given = option == "--name" ? [option, answer, "--species", "dog"] : ["--name", "X", "--species", "dog", option, answer];
        Outcome outcome = Hnote.Run(["new", path, .. given]);
        Assert.Equal(2, outcome.Code);
        Assert.Contains(option, outcome.Errors, StringComparison.Ordinal);
        Assert.False(File.Exists(path));
    }
}
