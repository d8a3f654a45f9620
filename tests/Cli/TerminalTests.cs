namespace HealthNotes.Cli.Tests;

/// <summary>Nothing in a note, a file's name or an argument drives the terminal or the calendar.</summary>
public class TerminalTests
{
    private const string Evil = "A\u001b[2J\u0007\u009b31m\u202Eb\u2066c\u200F";
    private static readonly char[] Controls = ['\u001b', '\u0007', '\u009b', '\u202E', '\u2066', '\u200F', '\r'];

    private static readonly string Note = $"pet {Evil}\nspecies dog\nborn 2020\ndue {Evil} 2026-12-01\n2026-10-04 check\n  hr 18/15s\n  lump L-flank @{Evil} 12mm\n  gums white {Evil}\n";

    [Theory]
    [InlineData("page")]
    [InlineData("due")]
    [InlineData("due", "--json")]
    [InlineData("values")]
    [InlineData("values", "--json")]
    [InlineData("values", "--days")]
    [InlineData("read")]
    [InlineData("read", "--json")]
    [InlineData("check")]
    [InlineData("check", "--json")]
    [InlineData("sheet")]
    [InlineData("format", "--write")]
    [InlineData("new", "check")]
    public void Nothing_reaches_the_terminal(params string[] command)
    {
        using var work = new Workspace();
        string note = work.Note(Note, $"n{Evil}.hnote");
        string[] today = command[0] is "read" or "format" ? [] : ["--today", Hnote.Today];
        AssertClean(Hnote.Run([.. command, note, .. today]));
        AssertClean(Hnote.Run([.. command, work.PathOf(Evil), .. today]));
        AssertClean(Hnote.Run([.. command, note, "--" + Evil]));
    }

    [Fact]
    public void The_json_says_the_same()
    {
        using var work = new Workspace();
        using var json = System.Text.Json.JsonDocument.Parse(Hnote.Run("due", "--json", work.Note(Note), "--today", Hnote.Today).Output);
        Assert.Contains(json.RootElement.GetProperty("due").EnumerateArray(), due => due.GetProperty("pet").GetString()!.Contains("\u202Eb\u2066c", StringComparison.Ordinal));
    }

    [Fact]
    public void Nothing_reaches_the_calendar()
    {
        using var work = new Workspace();
        string file = work.PathOf("x.ics");
        Assert.Equal(0, Hnote.Run("due", work.Note(Note), "--calendar", file, "--today", Hnote.Today).Code);
        string calendar = File.ReadAllText(file).Replace("\r\n", "\n", StringComparison.Ordinal);
        Assert.Contains("SUMMARY", calendar, StringComparison.Ordinal);
        Assert.DoesNotContain(calendar, c => Controls.Contains(c));
    }

    /// <summary>What goes to another program is the note, byte by byte.</summary>
    [Fact]
    public void A_note_that_is_printed_for_a_program_is_exact()
    {
        using var work = new Workspace();
        Assert.Contains(Evil, Hnote.Run("format", work.Note(Note)).Output, StringComparison.Ordinal);
    }

    private static void AssertClean(Outcome outcome)
    {
        Assert.False(outcome.ShowsInternals, outcome.Errors);
        Assert.DoesNotContain(outcome.Output + outcome.Errors, c => Controls.Contains(c));
    }
}
