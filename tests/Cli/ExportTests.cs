namespace HealthNotes.Cli.Tests;

/// <summary>The command <c>export</c>: where it writes, and what it refuses. What it writes is read in <c>tests/Exchange</c>.</summary>
public class ExportTests
{
    private const string Marlow = "pet Marlow\nspecies dog\n2026-10-04 check\n  weight 27kg\n  gums pink\n";

    [Fact]
    public void One_table_goes_to_standard_output()
    {
        using var work = new Workspace();
        Outcome outcome = Hnote.Run("export", work.Note(Marlow, "marlow.hnote"), "--table", "readings", "--out", "-", "--format", "csv", "--today", Hnote.Today);
        Assert.Equal(0, outcome.Code);
        string[] lines = outcome.Output.Split("\r\n", StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal(2, lines.Length);
        Assert.Contains(",marlow.hnote,4,2026-10-04,,check,weight,,,,any,27,", lines[1], StringComparison.Ordinal);
    }

    [Fact]
    public void An_export_replaces_an_earlier_one_whole_and_nothing_else()
    {
        using var work = new Workspace();
        string note = work.Note(Marlow, "notes/marlow.hnote");
        string target = work.PathOf("shelf");
        Assert.Equal(0, Hnote.Run("export", note, "--out", target, "--format", "parquet", "--today", Hnote.Today).Code);
        Assert.Equal(0, Hnote.Run("export", note, "--out", target, "--format", "csv", "--today", Hnote.Today).Code);
        Assert.Empty(Directory.EnumerateFiles(target, "*.parquet", SearchOption.AllDirectories));
        File.WriteAllText(Path.Combine(target, "mine.sql"), "SELECT 1");
        Outcome refused = Hnote.Run("export", note, "--out", target, "--today", Hnote.Today);
        Assert.Equal(2, refused.Code);
        Assert.Contains("holds mine.sql, which this command did not make", refused.Errors, StringComparison.Ordinal);
        Assert.True(File.Exists(Path.Combine(target, "pets.csv")));
        Assert.Equal(["notes", "shelf"], Directory.EnumerateFileSystemEntries(work.Folder).Select(Path.GetFileName).Order());
    }

    [Theory]
    [InlineData("notes", "which this command did not make")]
    [InlineData("notes/marlow.hnote", "is a file; name a folder")]
    [InlineData("-", "standard output takes one table")]
    public void Notes_and_files_are_never_replaced(string target, string why)
    {
        using var work = new Workspace();
        string note = work.Note(Marlow, "notes/marlow.hnote");
        Outcome refused = Hnote.Run("export", note, "--out", target == "-" ? target : work.PathOf(target), "--today", Hnote.Today);
        Assert.Equal(2, refused.Code);
        Assert.Contains(why, refused.Errors, StringComparison.Ordinal);
        Assert.False(refused.ShowsInternals);
        Assert.Equal(Marlow, File.ReadAllText(note));
    }

    [Fact]
    public void A_note_that_cannot_be_read_is_reported_and_keeps_no_other()
    {
        using var work = new Workspace();
        work.Note(Marlow, "notes/marlow.hnote");
        work.Bytes([0xFF, 0xC0, 0x80], "notes/broken.hnote");
        Outcome outcome = Hnote.Run("export", work.PathOf("notes"), "--out", work.PathOf("out"), "--today", Hnote.Today);
        Assert.Equal(2, outcome.Code);
        Assert.Contains("broken.hnote can't be read as text", outcome.Errors, StringComparison.Ordinal);
        Assert.Contains("1 note,", outcome.Output, StringComparison.Ordinal);
        Assert.Contains("\"file\":\"marlow.hnote\"", File.ReadAllText(work.PathOf("out/pets.ndjson")), StringComparison.Ordinal);
    }

    [Fact]
    public void Pseudonyms_need_a_key_that_is_not_guessed_and_no_text()
    {
        using var work = new Workspace();
        string note = work.Note(Marlow, "marlow.hnote");
        Assert.Contains("at least 16 characters", Hnote.Run("export", note, "--out", work.PathOf("out"), "--pseudonyms", "short").Errors, StringComparison.Ordinal);
        string key = work.Note("a key that nobody guesses\n", "key.txt");
        Assert.Contains("can't go together", Hnote.Run("export", note, "--out", work.PathOf("out"), "--pseudonyms", "@" + key, "--with-text").Errors, StringComparison.Ordinal);
        Assert.Equal(0, Hnote.Run("export", note, "--out", work.PathOf("out"), "--pseudonyms", "@" + key, "--today", Hnote.Today).Code);
        Assert.All(Directory.EnumerateFiles(work.PathOf("out")), file => Assert.DoesNotContain("marlow", File.ReadAllText(file), StringComparison.OrdinalIgnoreCase));
    }
}
