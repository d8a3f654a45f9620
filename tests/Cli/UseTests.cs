using System.Diagnostics;

namespace HealthNotes.Cli.Tests;

/// <summary>How the program is used: help, wrong use, colour, completion, explanations.</summary>
public class UseTests
{
    private static readonly string[] Commands = ["new", "check", "page", "tidy", "values", "explain", "completion"];

    [Fact]
    public void Help_lists_the_commands_and_shows_examples()
    {
        Outcome outcome = Hnote.Run("--help");
        Assert.Equal(0, outcome.Code);
        Assert.All(Commands, command => Assert.Contains($"  {command} ", outcome.Output, StringComparison.Ordinal));
        Assert.Contains("Examples:", outcome.Output, StringComparison.Ordinal);
    }

    public static TheoryData<string> EachCommand => [.. Commands];

    [Theory]
    [MemberData(nameof(EachCommand))]
    public void Help_of_each_command_has_an_example_that_starts_with_it(string command)
    {
        Outcome outcome = Hnote.Run(command, "--help");
        Assert.Equal(0, outcome.Code);
        Assert.Contains($"hnote {command}", outcome.Output[outcome.Output.IndexOf("Examples:", StringComparison.Ordinal)..], StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("chek", "note.hnote")]
    [InlineData("check")]
    [InlineData("check", "--no-such-option", "note.hnote")]
    [InlineData("check", "--today", "25.11.2026", "note.hnote")]
    [InlineData("page", "--format", "docx", "note.hnote")]
    [InlineData("completion", "tcl")]
    [InlineData("explain", "no-such-rule")]
    [InlineData("new")]
    public void Wrong_use_ends_with_2_and_a_message(params string[] arguments)
    {
        Outcome outcome = Hnote.Run(arguments);
        Assert.Equal(2, outcome.Code);
        Assert.NotEqual("", outcome.Errors.Trim());
        Assert.False(outcome.ShowsInternals, outcome.Errors);
    }

    [Fact]
    public void No_colour_where_nobody_looks()
    {
        using var work = new Workspace();
        string path = work.Note("pet Marlow\nspecies dog\nborn 2020\n2026-10-04 check\n  gums white\n");
        Assert.DoesNotContain('\u001b', Hnote.Run("check", path).Output);
    }

    /// <summary>script(1) gives the program a terminal; NO_COLOR is the convention of no-color.org.</summary>
    [SkippableFact]
    public void Colour_on_a_terminal_unless_NO_COLOR_is_set()
    {
        Skip.IfNot(File.Exists("/usr/bin/script"), "script is missing: apt-get install bsdutils");
        using var work = new Workspace();
        string path = work.Note("pet Marlow\nspecies dog\nborn 2020\n2026-10-04 check\n  gums white\n");
        string command = string.Join(' ', [.. Hnote.Command, "check", path]);
        string[] script = ["/usr/bin/script", "-qec", command, "/dev/null"];
        Assert.Contains('\u001b', Hnote.RunWith(script, null, ("TERM", "xterm"), ("NO_COLOR", "")).Output);
        Assert.DoesNotContain("\u001b[1", Hnote.RunWith(script, null, ("TERM", "xterm"), ("NO_COLOR", "1")).Output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_person_sees_the_line_a_marker_and_what_to_do()
    {
        using var work = new Workspace();
        Outcome outcome = Hnote.Run("check", "--today", Hnote.Today, work.Note("pet Marlow\nspecies dog\nborn 2020\n2026-10-04 check\n  lump L-flnak 12mm\n"));
        string output = outcome.Output.ReplaceLineEndings("\n");
        Assert.Contains("    5 |   lump L-flnak 12mm\n      |          ^^^^^\n", output, StringComparison.Ordinal);
        Assert.Contains("did you mean `flank`?", output, StringComparison.Ordinal);
        Assert.Contains("1 could not be read", output, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_rule_that_a_sample_raises_is_explained()
    {
        string sample = Path.Combine(Hnote.Top, "samples", "full-of-mistakes.hnote");
        string json = Hnote.Run("check", "--json", "--today", Hnote.Today, sample).Output;
        IEnumerable<string> rules = json.Split("\"rule\":\"").Skip(1).Select(part => part[..part.IndexOf('"', StringComparison.Ordinal)]).Distinct();
        Assert.All(rules, rule => Assert.Equal(0, Hnote.Run("explain", rule).Code));
    }

    [Fact]
    public void Explain_offers_the_nearest_rule() =>
        Assert.Contains("did you mean `gum-colour`?", Hnote.Run("explain", "gum-color").Errors, StringComparison.Ordinal);

    [Fact]
    public void The_shell_is_told_what_could_come_next()
    {
        Outcome outcome = Hnote.Run("[suggest:7]", "hnote c");
        Assert.Equal(["check", "completion", "watch"], outcome.Output.Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(s => s.Trim()));
    }

    [Fact]
    public void The_bash_script_is_sound()
    {
        using var work = new Workspace();
        string script = work.Note(Hnote.Run("completion", "bash").Output, "completion.bash");
        using var bash = Process.Start("bash", ["-n", script]);
        bash.WaitForExit();
        Assert.Equal(0, bash.ExitCode);
    }

    [Fact]
    public void A_reader_that_stops_early_is_no_fault()
    {
        string sample = Path.Combine(Hnote.Top, "samples", "marlow.hnote");
        string command = string.Join(' ', [.. Hnote.Command, "check", "--all", sample]) + " | head -n 1";
        Outcome outcome = Hnote.RunWith(["bash", "-c", command], null);
        Assert.False(outcome.ShowsInternals, outcome.Errors);
    }
}
