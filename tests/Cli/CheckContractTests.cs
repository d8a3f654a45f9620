using System.Text.Json;

namespace HealthNotes.Cli.Tests;

/// <summary>The JSON of <c>check</c>, which other programs read: names, order and meaning are fixed.</summary>
public class CheckContractTests
{
    [Fact]
    public void Every_member_is_there_with_lines_and_columns_from_1()
    {
        using var work = new Workspace();
        string path = work.Note("pet Marlow\nspecies dog\nborn 2017-03\n2026-10-04 check\n  rr 31 asleep\n2026-10-05 log\n  rr 8/15s asleep\n  gums bleu\n");
        Outcome outcome = Hnote.Run("check", "--json", "--today", "2026-10-05", path);
        Assert.Equal(1, outcome.Code);
        using var json = JsonDocument.Parse(outcome.Output);
        JsonElement file = json.RootElement.GetProperty("files")[0];
        Assert.Equal(path, file.GetProperty("path").GetString());
        JsonElement[] problems = [.. file.GetProperty("problems").EnumerateArray()];
        Assert.Equal(["rr-range watch 5:6-5:8", "rr-range call 7:6-7:11", "unknown-word error 8:8-8:12"], problems.Select(Show));
        Assert.Equal([5, 7], problems[1].GetProperty("evidence").EnumerateArray().Select(line => line.GetInt32()));
        Assert.All(problems, problem => Assert.Equal(
            ["rule", "level", "line", "column", "endLine", "endColumn", "message", "source", "evidence", "shown", "open"],
            problem.EnumerateObject().Select(member => member.Name)));
        Assert.Contains("Did you mean `blue`?", problems[2].GetProperty("message").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Columns_count_UTF16_units()
    {
        using var work = new Workspace();
        string path = work.Note("pet 🐕\nspecies dog\nborn 2020\n2026-10-04 check\n  gums 🐕 pimk\n  ear L wax\n");
        using var json = JsonDocument.Parse(Hnote.Run("check", "--json", "--today", Hnote.Today, path).Output);
        JsonElement[] problems = [.. json.RootElement.GetProperty("files")[0].GetProperty("problems").EnumerateArray()];
        Assert.Contains(problems, p => Show(p).EndsWith("5:11-5:15", StringComparison.Ordinal)); // the dog is two units wide
        Assert.Contains(problems, p => Show(p) == "sign watch 6:9-6:12");
    }

    [Theory]
    [InlineData("  gums pink", 0)]
    [InlineData("  ear L wax", 0)] // watch
    [InlineData("  gums pale", 1)] // call
    [InlineData("  gums white", 1)] // urgent
    [InlineData("  gumz pink", 1)] // unreadable
    public void Exit_code_is_1_from_call_up_or_when_something_is_unreadable(string line, int code)
    {
        using var work = new Workspace();
        string path = work.Note($"pet Marlow\nspecies dog\nborn 2020-01-01\n2026-10-04 check\n{line}\n");
        Assert.Equal(code, Hnote.Run("check", "--today", Hnote.Today, path).Code);
        Assert.Equal(code, Hnote.Run("check", "--json", "--today", Hnote.Today, path).Code);
    }

    [Fact]
    public void A_folder_is_searched_and_files_come_in_the_order_of_their_names()
    {
        using var work = new Workspace();
        work.Note("pet B\nspecies dog\nborn 2020\n", "b.hnote");
        work.Note("pet A\nspecies dog\nborn 2020\n", "a.hnote");
        work.Note("pet C\nspecies dog\nborn 2020\n", "more/c.hnote");
        work.Note("not a note", "d.txt");
        Outcome outcome = Hnote.Run("check", "--json", work.Folder);
        using var json = JsonDocument.Parse(outcome.Output);
        Assert.Equal(["a.hnote", "b.hnote", "c.hnote"], json.RootElement.GetProperty("files").EnumerateArray().Select(f => Path.GetFileName(f.GetProperty("path").GetString())));
        Assert.Equal(0, outcome.Code);
    }

    /// <summary>What the plain output shows without <c>--all</c>, and nothing else, is marked as shown.</summary>
    [Fact]
    public void Shown_says_what_the_plain_output_shows()
    {
        using var work = new Workspace();
        string path = work.Note("pet Marlow\nspecies dog\nborn 2020-01-01\n2025-09-04 check\n  ear L wax\n2026-10-04 check\n  gums pale\n  lump L-flnak 12 sfot\n");
        using var json = JsonDocument.Parse(Hnote.Run("check", "--json", "--today", "2026-10-05", path).Output);
        JsonElement[] problems = [.. json.RootElement.GetProperty("files")[0].GetProperty("problems").EnumerateArray()];
        string plain = Hnote.Run("check", "--today", "2026-10-05", path).Output;
        Assert.Contains(problems, problem => !problem.GetProperty("shown").GetBoolean());
        Assert.All(problems, problem => Assert.True(problem.GetProperty("shown").GetBoolean() || !problem.GetProperty("open").GetBoolean()));
        Assert.Equal(plain.Split('\n').Count(line => line.StartsWith("    about: ", StringComparison.Ordinal)), problems.Count(problem => problem.GetProperty("shown").GetBoolean()));
        Assert.All(problems, problem => Assert.Equal(problem.GetProperty("shown").GetBoolean(), plain.Contains(": " + problem.GetProperty("message").GetString(), StringComparison.Ordinal)));
    }

    /// <summary>What the clinic has seen, or a later look has ended, is in the JSON, and does not make exit code 1.</summary>
    [Theory]
    [InlineData("2026-10-01 log\n  gait LH lame\n", 1, true)]
    [InlineData("2026-10-01 log\n  gait LH lame\n2026-10-03 check\n  gait ok\n", 0, false)]
    [InlineData("2026-10-01 log\n  gait LH lame\n2026-10-03 visit\n  weight 20kg\n", 0, false)]
    [InlineData("2025-06-01 log\n  nail RF torn bleeding\n2026-10-03 check\n  gums pink\n", 0, false)]
    public void Only_what_is_open_ends_with_a_reason_to_phone(string entries, int code, bool open)
    {
        using var work = new Workspace();
        string path = work.Note("pet Marlow\nspecies dog\nborn 2020-01-01\n" + entries);
        Outcome outcome = Hnote.Run("check", "--json", "--today", "2026-10-05", path);
        using var json = JsonDocument.Parse(outcome.Output);
        JsonElement found = json.RootElement.GetProperty("files")[0].GetProperty("problems").EnumerateArray().First(problem => problem.GetProperty("level").GetString() == "call");
        Assert.Equal((code, open), (outcome.Code, found.GetProperty("open").GetBoolean()));
    }

    private static string Show(JsonElement p) =>
        $"{p.GetProperty("rule").GetString()} {p.GetProperty("level").GetString()} {p.GetProperty("line")}:{p.GetProperty("column")}-{p.GetProperty("endLine")}:{p.GetProperty("endColumn")}";
}
