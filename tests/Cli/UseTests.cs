using System.Diagnostics;

namespace HealthNotes.Cli.Tests;

/// <summary>How the program is used: help, wrong use, colour, completion, explanations.</summary>
public class UseTests
{
    private static readonly string[] Commands = ["new", "check", "read", "page", "format", "values", "about", "card", "completion"];

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
    [InlineData("check", "--today", "4/10/2026", "note.hnote")]
    [InlineData("page", "--format", "docx", "note.hnote")]
    [InlineData("completion", "tcl")]
    [InlineData("about", "no-such-rule")]
    [InlineData("format", "--write", "--check", "note.hnote")]
    [InlineData("new")]
    public void Wrong_use_ends_with_2_and_a_message(params string[] arguments)
    {
        Outcome outcome = Hnote.Run(arguments);
        Assert.Equal(2, outcome.Code);
        Assert.NotEqual("", outcome.Errors.Trim());
        Assert.False(outcome.ShowsInternals, outcome.Errors);
    }

    [Theory]
    [InlineData("unknown command chek. Did you mean check?", "hnote --help lists the commands.", "chek", "note.hnote")]
    [InlineData("unknown command frobnicate.", "hnote --help lists the commands.", "frobnicate")]
    [InlineData("unknown option --levle. Did you mean --level? For a file of that name write ./--levle", "hnote check --help shows how to use it.", "check", "note.hnote", "--levle", "call")]
    [InlineData("Cannot parse argument 'x' for option '--days'", "hnote due --help shows how to use it.", "due", "note.hnote", "--days", "x")]
    [InlineData("Unrecognized command or argument 'more'.", "hnote new check --help shows how to use it.", "new", "check", "note.hnote", "more")]
    [InlineData("`4/10/2026` is not a date here. Write year-month-day, so 2026-04-10 or 2026-10-04.", "hnote check --help shows how to use it.", "check", "note.hnote", "--since", "4/10/2026")]
    [InlineData("`3 nov check` is not a date. Write year-month-day, such as 2026-11-25, or \"25 nov\".", "hnote check --help shows how to use it.", "check", "note.hnote", "--since", "3 nov check")]
    public void Wrong_use_prints_what_is_wrong_and_where_help_is_and_nothing_else(string wrong, string help, params string[] arguments)
    {
        Outcome outcome = Hnote.Run(arguments);
        Assert.Equal((2, "", $"hnote: {wrong}\n{help}\n"), (outcome.Code, outcome.Output, outcome.Errors));
    }

    /// <summary>The forms of a heading; without a year the last such day up to <c>--today</c>.</summary>
    [Theory]
    [InlineData("3nov", "2026-11-03")]
    [InlineData("3 nov", "2026-11-03")]
    [InlineData("Nov 3", "2026-11-03")]
    [InlineData("Tuesday 3rd November, 2026", "2026-11-03")]
    [InlineData("3.11.", "2026-11-03")]
    [InlineData("3.11.2026", "2026-11-03")]
    [InlineData("2026-11-3", "2026-11-03")]
    [InlineData("25 nov", "2026-11-25")]
    [InlineData("3 dec", "2025-12-03")]
    public void A_day_is_given_as_in_a_heading(string day, string meant)
    {
        using var work = new Workspace();
        string path = work.Note($"pet Marlow\nspecies dog\nborn 2020\n{DateOnly.ParseExact(meant, "yyyy-MM-dd").AddDays(-1):yyyy-MM-dd}\n  gums white\n{meant}\n  limp LH\n");
        Outcome Since(string since) => Hnote.Run("check", path, "--since", since, "--today", Hnote.Today);
        Assert.Equal(Since(meant), Since(day));
        Assert.NotEqual(Since(meant), Since("2025-01-01"));
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
    public void A_person_sees_the_line_the_words_in_question_and_the_rule()
    {
        using var work = new Workspace();
        Outcome outcome = Hnote.Run("check", "--today", Hnote.Today, work.Note("pet Marlow\nspecies dog\nborn 2020\n2026-10-04 check\n  lump L-flnak 12mm\n"));
        string[] lines = outcome.Output.ReplaceLineEndings("\n").Split('\n');
        Assert.EndsWith("note.hnote (Marlow)", lines[0], StringComparison.Ordinal);
        Assert.StartsWith("  Not understood, 4 Oct: ", lines[2], StringComparison.Ordinal);
        Assert.EndsWith("Did you mean `flank`?", lines[2], StringComparison.Ordinal);
        Assert.Equal(["    line 5, column 10: \"lump L-[flnak] 12mm\"", "    write: lump L-flank 12mm", "    about: unknown-word"], lines[3..6]);
        Assert.Contains("  1 line was not understood.", lines);
    }

    [Fact]
    public void A_finding_starts_with_its_level_in_words_and_the_day()
    {
        using var work = new Workspace();
        string note = work.Note("pet Marlow\nspecies dog\nborn 2020\n2025-10-04 check\n  ear L wax\n2026-10-04 check\n  gums white\n  ear L wax\n");
        string output = Hnote.Run("check", "--all", "--today", "2026-10-05", note).Output.ReplaceLineEndings("\n");
        Assert.Contains("\n  Phone now, yesterday: Gums: `white`", output, StringComparison.Ordinal);
        Assert.Contains("\n    line 7: \"gums white\"\n", output, StringComparison.Ordinal);
        Assert.Contains("\n  Keep an eye on, yesterday: Ear L: `wax`", output, StringComparison.Ordinal);
        Assert.Contains("\n  Keep an eye on, 4 Oct 2025: Ear L: `wax`", output, StringComparison.Ordinal);
        Assert.Contains("  Every line was understood.\n  3 problems: 1 to phone about now, 2 to keep an eye on.\n", output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("gums pink", "  Every line was understood.\n  No recorded value is out of range. This does not mean that your pet is healthy.\n")]
    [InlineData("ear L wax", "  Every line was understood.\n  1 problem to keep an eye on.\n")]
    [InlineData("gumz pink", "  1 line was not understood.\n")]
    [InlineData("ate all beside the window", "  Every line was read. 1 line has words that are kept as a remark; `hnote read` shows them.\n")]
    public void The_summary_says_what_is_true(string line, string summary)
    {
        using var work = new Workspace();
        string note = work.Note($"pet Marlow\nspecies dog\nborn 2020-01-01\n2026-11-24 check\n  {line}\n");
        Assert.Contains(summary, Hnote.Run("check", "--today", Hnote.Today, note).Output.ReplaceLineEndings("\n"), StringComparison.Ordinal);
    }

    /// <summary>One message for each line that was not understood, however much is wrong in it.</summary>
    [Fact]
    public void A_line_that_was_not_understood_has_one_message()
    {
        using var work = new Workspace();
        string note = work.Note("pet Marlow\nspecies dog\nborn 2020-01-01\n2026-11-24 check\n  lump L-flnak 12 sfot\n");
        string output = Hnote.Run("check", "--today", Hnote.Today, note).Output;
        Assert.Single(output.Split('\n'), line => line.Contains("Not understood", StringComparison.Ordinal));
        Assert.Contains("1 line was not understood.", output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_note_is_printed_beside_its_reading()
    {
        using var work = new Workspace();
        string note = work.Note("pet Marlow\n2026-11-24 8:05 check\n  OS clear   # by the window\n  gumz pink\n  > fine\n");
        string[] lines = Hnote.Run("read", note).Output.ReplaceLineEndings("\n").Split('\n');
        Assert.Equal("1  pet Marlow                     = pet Marlow", lines[0]);
        Assert.Equal("2  2026-11-24 8:05 check          = 2026-11-24 08:05 check", lines[1]);
        Assert.Equal("3    OS clear   # by the window   = eye L clear", lines[2]);
        Assert.StartsWith("4    gumz pink                    not understood: ", lines[3], StringComparison.Ordinal);
        Assert.Contains("write: gums pink", lines[4], StringComparison.Ordinal);
        Assert.Equal("5    > fine", lines[5]);
    }

    [Fact]
    public void The_json_of_read_is_a_contract()
    {
        using var work = new Workspace();
        string note = work.Note("pet Marlow\n\n2026-11-24 check\n  OS clear\n  gumz pink\n  > fine\n# end\n");
        Outcome outcome = Hnote.Run("read", "--json", note);
        Assert.Equal(0, outcome.Code);
        using var json = System.Text.Json.JsonDocument.Parse(outcome.Output);
        System.Text.Json.JsonElement[] lines = [.. json.RootElement.GetProperty("lines").EnumerateArray()];
        Assert.Equal(["item", "blank", "head", "item", "unknown", "text", "comment", "blank"], lines.Select(line => line.GetProperty("kind").GetString()));
        Assert.All(lines, line => Assert.Equal(["line", "kind", "text", "reading", "problem", "corrected"], line.EnumerateObject().Select(member => member.Name)));
        Assert.Equal("eye L clear", lines[3].GetProperty("reading").GetString());
        Assert.Null(lines[4].GetProperty("reading").GetString());
        Assert.NotNull(lines[4].GetProperty("problem").GetString());
    }

    [Fact]
    public void Every_rule_that_a_sample_raises_has_a_page()
    {
        string sample = Path.Combine(Hnote.Top, "samples", "full-of-mistakes.hnote");
        string json = Hnote.Run("check", "--json", "--today", Hnote.Today, sample).Output;
        IEnumerable<string> rules = json.Split("\"rule\":\"").Skip(1).Select(part => part[..part.IndexOf('"', StringComparison.Ordinal)]).Distinct();
        Assert.All(rules, rule => Assert.Equal(0, Hnote.Run("about", rule).Code));
    }

    [Fact]
    public void About_offers_the_nearest_rule() =>
        Assert.Contains("did you mean `gum-colour`?", Hnote.Run("about", "gum-color").Errors, StringComparison.Ordinal);

    [Fact]
    public void The_shell_is_told_what_could_come_next()
    {
        Outcome outcome = Hnote.Run("[suggest:7]", "hnote c");
        Assert.Equal(["card", "check", "completion", "schema", "watch"], outcome.Output.Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(s => s.Trim()));
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
