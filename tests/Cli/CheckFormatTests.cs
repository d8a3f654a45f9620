using System.Text.Json;
using System.Xml.Linq;

namespace HealthNotes.Cli.Tests;

/// <summary>The forms of <c>check</c> for other programs, its levels, and its baseline.</summary>
public class CheckFormatTests
{
    private const string Marlow = "pet Marlow\nspecies dog\nborn 2020-01-01\n2026-10-04 check\n  gums pale\n  ear L wax\n  gumz pink\n";

    [Fact]
    public void Sarif_has_rule_place_and_a_print_that_stays()
    {
        using var work = new Workspace();
        JsonElement[] results = Results(work.Note(Marlow, "my note.hnote"));
        Assert.Equal(["gum-colour error 5:8-12", "unknown-line error 7:3-7", "sign warning 6:9-12"], results.Select(result =>
        {
            JsonElement region = result.GetProperty("locations")[0].GetProperty("physicalLocation").GetProperty("region");
            return $"{result.GetProperty("ruleId")} {result.GetProperty("level")} {region.GetProperty("startLine")}:{region.GetProperty("startColumn")}-{region.GetProperty("endColumn")}";
        }));
        Assert.EndsWith("my%20note.hnote", results[0].GetProperty("locations")[0].GetProperty("physicalLocation").GetProperty("artifactLocation").GetProperty("uri").GetString(), StringComparison.Ordinal);
        JsonElement[] moved = Results(work.Note("# A comment above.\n" + Marlow, "my note.hnote"));
        Assert.Equal(results.Select(Print), moved.Select(Print));
    }

    [Fact]
    public void GitHub_marks_lines_and_nothing_of_a_note_starts_a_command()
    {
        using var work = new Workspace();
        string[] lines = Hnote.Run("check", work.Note(Marlow.Replace("gumz pink", "gumz 100% ::error::x"), "a,b.hnote"), "--format", "github", "--today", "2026-10-05").Output.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal(3, lines.Length);
        Assert.StartsWith("::error file=", lines[0], StringComparison.Ordinal);
        Assert.Contains("a%2Cb.hnote,line=5,col=8,endColumn=12,title=gum-colour::", lines[0], StringComparison.Ordinal);
        Assert.StartsWith("::warning ", lines[2], StringComparison.Ordinal);
        Assert.All(lines, line => Assert.Matches("^::(error|warning|notice) file=", line));
    }

    [Fact]
    public void JUnit_fails_for_what_ends_with_1_and_passes_for_the_rest()
    {
        using var work = new Workspace();
        work.Note(Marlow, "a.hnote");
        work.Note("pet B\nspecies dog\nborn 2020-01-01\n2026-10-04 check\n  gums pink\n", "b.hnote");
        var suites = XDocument.Parse(Hnote.Run("check", work.Folder, "--format", "junit", "--today", "2026-10-05").Output);
        Assert.Equal(["3 2", "1 0"], suites.Root!.Elements("testsuite").Select(suite => $"{suite.Attribute("tests")!.Value} {suite.Attribute("failures")!.Value}"));
        Assert.Equal(2, suites.Descendants("failure").Count());
        Assert.Equal(4, suites.Descendants("testcase").Count());
    }

    [Fact]
    public void A_control_character_makes_no_broken_XML()
    {
        using var work = new Workspace();
        Assert.NotNull(XDocument.Parse(Hnote.Run("check", work.Note(Marlow + "  gu\u0001ms \uFFFF\n"), "--format", "junit", "--today", "2026-10-05").Output).Root);
    }

    [Theory]
    [InlineData("info", "gum-colour,sign,unknown-line", 1)]
    [InlineData("call", "gum-colour,unknown-line", 1)]
    [InlineData("urgent", "unknown-line", 1)]
    public void A_level_leaves_out_what_is_below_it_but_no_line_that_was_not_understood(string level, string rules, int code)
    {
        using var work = new Workspace();
        Outcome outcome = Hnote.Run("check", work.Note(Marlow), "--level", level, "--format", "sarif", "--today", "2026-10-05");
        Assert.Equal((code, rules), (outcome.Code, string.Join(',', ResultsOf(outcome).Select(result => result.GetProperty("ruleId").GetString()!).Order())));
    }

    [Fact]
    public void With_a_baseline_only_what_is_new_is_reported_and_ends_with_1()
    {
        using var work = new Workspace();
        string note = work.Note(Marlow);
        string known = work.PathOf("known.txt");
        Assert.Equal(1, Hnote.Run("check", note, "--write-baseline", known, "--today", "2026-10-05").Code);
        Outcome quiet = Hnote.Run("check", note, "--baseline", known, "--today", "2026-10-05");
        Assert.Equal(0, quiet.Code);
        Assert.DoesNotContain("Every line was", quiet.Output, StringComparison.Ordinal);
        work.Note("# A comment.\n" + Marlow + "  gums pale\n  vomit blood\n");
        Outcome outcome = Hnote.Run("check", note, "--baseline", known, "--format", "github", "--today", "2026-10-05");
        Assert.Equal(1, outcome.Code);
        Assert.Contains("line=10,", outcome.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("line=6,", outcome.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_baseline_never_leaves_out_what_is_urgent()
    {
        using var work = new Workspace();
        string note = work.Note(Marlow.Replace("gums pale", "gums white"));
        string known = work.PathOf("known.txt");
        Hnote.Run("check", note, "--write-baseline", known, "--today", "2026-10-05");
        Outcome outcome = Hnote.Run("check", note, "--baseline", known, "--today", "2026-10-05");
        Assert.Equal(1, outcome.Code);
        Assert.Contains("Phone now", outcome.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_baseline_replaces_no_note_and_another_file_is_no_baseline()
    {
        using var work = new Workspace();
        string note = work.Note(Marlow);
        Assert.Equal(2, Hnote.Run("check", note, "--write-baseline", note).Code);
        Assert.Contains("is not a baseline", Hnote.Run("check", note, "--baseline", note).Errors, StringComparison.Ordinal);
        Assert.Equal(Marlow, File.ReadAllText(note));
    }

    private static string Print(JsonElement result) => result.GetProperty("partialFingerprints").GetProperty("hnote/v1").GetString()!;

    private static JsonElement[] Results(string note) => ResultsOf(Hnote.Run("check", note, "--format", "sarif", "--today", "2026-10-05"));

    private static JsonElement[] ResultsOf(Outcome outcome)
    {
        using var json = JsonDocument.Parse(outcome.Output);
        return [.. json.RootElement.GetProperty("runs")[0].GetProperty("results").EnumerateArray().Select(result => result.Clone())];
    }
}
