using System.Text.Json.Nodes;
using HealthNotes.Protocol.Tests.Support;

namespace HealthNotes.Protocol.Tests;

/// <summary>Diagnostics: which are published, and when.</summary>
public class DiagnosticTests
{
    private const string TwoChecks = """
        pet Marlow
        species dog
        born 2017-03
        adult-weight 27kg
        2026-11-01 check
          rr 32 asleep
        2026-11-20 check
          hr 18/15s
          rr 34 asleep

        """;

    [Fact]
    public Task Levels_are_severities_and_rules_are_codes() => Session.RunAsync(Profiles.Rich, async session =>
    {
        EditedNote note = session.Open(TwoChecks + "  gave ibuprofen 200mg\n  gums pale\n  gumz pink\n  tooth 208 tartar\n");
        IReadOnlyList<Shown> shown = await note.PullAsync();
        Assert.Equal(("urgent", 1), Severity(shown, "human-painkiller"));
        Assert.Equal(("error", 2), Severity(shown, "unknown-line"));
        Assert.Equal(("call", 1), Severity(shown, "rr-range"));
        Assert.Equal(("watch", 3), Severity(shown, "sign"));
        Assert.StartsWith("Phone now: ", shown.First(one => one.Rule == "human-painkiller").Message, StringComparison.Ordinal);
        Assert.All(shown, one => Assert.Equal("hnote", (string?)one.Json["source"]));
    });

    [Fact]
    public Task The_lines_that_a_finding_rests_on_are_related_information() => Session.RunAsync(Profiles.Rich, async session =>
    {
        EditedNote note = session.Open(TwoChecks);
        Shown finding = Assert.Single(await note.PullAsync(), shown => shown.Rule == "rr-range" && shown.Line == 8);
        Assert.Equal([5], finding.Evidence);
        JsonNode related = finding.Json["relatedInformation"]![0]!;
        Assert.Equal(note.Uri, (string?)related["location"]!["uri"]);
        Assert.Equal("rr 32 asleep", note.TextOf(related["location"]!["range"]!));
    });

    [Fact]
    public Task A_finding_follows_the_lines_that_it_rests_on() => Session.RunAsync(Profiles.RichPush, async session =>
    {
        EditedNote note = session.Open(TwoChecks);
        await note.HearAsync(shown => LevelAt(shown, 8) == "call");
        note.Replace("rr 32 asleep", "rr 24 asleep");
        await note.HearAsync(shown => LevelAt(shown, 8) == "watch", note.Version);
        note.Replace("  hr 18", "  alert bright\n  hr 18");
        await note.HearAsync(shown => LevelAt(shown, 9) == "watch", note.Version);
        note.Replace("species dog", "species dog\nusual rr 20-36 asleep per vet 2026-01-20");
        await note.HearAsync(shown => shown.All(one => one.Rule != "rr-range"), note.Version);
    });

    [Fact]
    public Task They_are_published_with_their_version_and_only_when_they_differ() => Session.RunAsync(Profiles.RichPush, async session =>
    {
        EditedNote note = session.Open(TwoChecks);
        await note.HearAsync(shown => LevelAt(shown, 8) == "call");
        for (int i = 0; i < 5; i++)
        {
            note.Replace("hr 18/15s", "hr 17/15s");
            await note.PullAsync();
            note.Replace("hr 17/15s", "hr 18/15s");
            await note.PullAsync();
        }

        int unsaid = note.Version;
        note.Replace("rr 34 asleep", "rr 24 asleep");
        await note.HearAsync(shown => LevelAt(shown, 8) is null, note.Version);
        Assert.Equal([1, unsaid + 1], note.Published.Select(said => (int)said["version"]!));
    });

    [Fact]
    public Task A_long_note_first_shows_what_could_not_be_read() => Session.RunAsync(Profiles.RichPush, async session =>
    {
        EditedNote note = session.Open(TwoChecks + "  gumz pink\n" + string.Concat(Enumerable.Repeat("  > quiet day\n", 2_000)));
        IReadOnlyList<Shown> first = await note.HearAsync(_ => true);
        Assert.Equal("unknown-line", Assert.Single(first).Rule);
        IReadOnlyList<Shown> all = await note.HearAsync(shown => LevelAt(shown, 8) == "call");
        Assert.Contains(all, one => one.Rule == "unknown-line");
        Assert.Equal(2, note.Published.Count);
    });

    [Fact]
    public Task They_are_cleared_when_the_note_is_closed() => Session.RunAsync(Profiles.RichPush, async session =>
    {
        EditedNote note = session.Open(TwoChecks);
        await note.HearAsync(shown => shown.Count > 0);
        note.Close();
        await note.HearAsync(shown => shown.Count == 0);
    });

    [Fact]
    public Task A_client_that_asks_is_not_told_besides() => Session.RunAsync(Profiles.Rich, async session =>
    {
        EditedNote note = session.Open(TwoChecks);
        note.Replace("rr 34", "rr 24");
        await note.PullAsync();
        note.Close();
        await session.Client.AskAsync("workspace/diagnostic", new { previousResultIds = Array.Empty<string>() });
        Assert.Empty(note.Published);
    });

    /// <summary>Some clients announce that they ask, and never do: without this they would show nothing.</summary>
    [Fact]
    public Task A_client_that_never_asks_is_told_until_it_does() => Session.RunAsync(Profiles.Rich, async session =>
    {
        EditedNote note = session.Open(TwoChecks);
        await note.HearAsync(shown => shown.Count > 0);
        await note.PullAsync();
        await note.HearAsync(shown => shown.Count == 0);
        note.Replace("rr 34", "rr 64");
        await note.PullAsync();
        await Task.Delay(500);
        Assert.Equal(2, note.Published.Count);
    });

    [Fact]
    public Task What_the_client_has_already_is_not_sent_again() => Session.RunAsync(Profiles.Rich, async session =>
    {
        EditedNote note = session.Open(TwoChecks);
        JsonNode first = (await note.AskAboutAsync("textDocument/diagnostic"))!;
        string had = (string)first["resultId"]!;
        note.Replace("hr 18", "hr 17");
        JsonNode same = (await note.AskAboutAsync("textDocument/diagnostic", new JsonObject { ["previousResultId"] = had }))!;
        Assert.Equal("unchanged", (string?)same["kind"]);
        note.Replace("rr 34 asleep", "rr 24 asleep");
        JsonNode other = (await note.AskAboutAsync("textDocument/diagnostic", new JsonObject { ["previousResultId"] = had }))!;
        Assert.Equal("full", (string?)other["kind"]);
        Assert.NotEqual(had, (string?)other["resultId"]);
    });

    [Theory]
    [InlineData("gum", "s pink\n")]
    [InlineData("  hr 7", "2\n")]
    [InlineData("  hr 18/15", "s\n")]
    [InlineData("  weight 27", "kg\n")]
    [InlineData("  lump L-fl", "ank 8mm\n")]
    [InlineData("2026-11-2", "1 check\n")]
    [InlineData("  gums pin", "k\n")]
    public Task A_half_typed_line_is_not_scolded(string half, string rest) => Session.RunAsync(Profiles.Rich, async session =>
    {
        EditedNote note = session.Open("pet Marlow\nspecies dog\nborn 2017-03\nadult-weight 27kg\n2026-11-20 check\n");
        note.TypeSlowly(half);
        Assert.DoesNotContain(await note.PullAsync(), shown => shown.Line == 5);
        note.TypeSlowly(rest);
        Assert.DoesNotContain(await note.PullAsync(), shown => shown.Line == 5 && shown.Level == "error");
    });

    [Theory]
    [InlineData("  gumz", "unknown-line")]
    [InlineData("  hr 18/15q", "wrong-unit")]
    public Task What_no_character_can_mend_is_said_at_once(string typed, string rule) => Session.RunAsync(Profiles.Rich, async session =>
    {
        EditedNote note = session.Open("pet Marlow\nspecies dog\n2026-11-20 check\n");
        note.TypeSlowly(typed);
        Assert.Contains(await note.PullAsync(), shown => shown.Line == 3 && shown.Rule == rule);
    });

    [Fact]
    public Task What_was_held_back_is_said_when_the_note_is_saved_or_another_line_is_edited() => Session.RunAsync(Profiles.Rich, async session =>
    {
        EditedNote note = session.Open("pet Marlow\nspecies dog\n2026-11-20 check\n");
        note.TypeSlowly("  gum");
        Assert.DoesNotContain(await note.PullAsync(), shown => shown.Line == 3);
        note.Save();
        Assert.Contains(await note.PullAsync(), shown => shown.Line == 3);
        note.Type("z");
        note.Replace("gumz", "gum");
        Assert.DoesNotContain(await note.PullAsync(), shown => shown.Line == 3);
        note.Replace("Marlow", "Tansy");
        Assert.Contains(await note.PullAsync(), shown => shown.Line == 3);
    });

    [Fact]
    public Task A_burst_of_200_edits_ends_in_what_the_last_one_left() => Session.RunAsync(Profiles.RichPush, async session =>
    {
        string text = await File.ReadAllTextAsync(Hnote.PathOf("samples/marlow.hnote"));
        EditedNote note = session.Open(text);
        await note.HearAsync(shown => shown.Count > 0);
        note.Edit(note.Text.Length, 0, "\n2026-11-25 log\n");
        note.TypeSlowly(string.Concat(Enumerable.Repeat("  rr 3", 33)));
        note.Replace("2026-11-25 log\n", "2026-11-25 log\n  gumz pink\n");
        Assert.True(note.Version > 200);
        IReadOnlyList<Shown> shown = await note.HearAsync(all => all.Any(one => one.Rule == "unknown-line"), note.Version);
        Assert.Equal((await note.PullAsync()).Select(one => one.Json.ToJsonString()), shown.Select(one => one.Json.ToJsonString()));
        int[] versions = [.. note.Published.Select(said => (int)said["version"]!)];
        Assert.Equal(versions.Distinct().Order(), versions);
    });

    [Fact]
    public Task Findings_of_the_past_are_shown_to_those_who_want_them() => Session.RunAsync(Profiles.Rich, async session =>
    {
        EditedNote note = session.Open(await File.ReadAllTextAsync(Hnote.PathOf("samples/tansy.hnote")));
        int now = (await note.PullAsync()).Count;
        session.Settings = new JsonObject { ["pastFindings"] = true };
        session.Client.Tell("workspace/didChangeConfiguration", new { settings = (object?)null });
        await session.Client.HearAsync("workspace/diagnostic/refresh");
        Assert.True((await note.PullAsync()).Count > now);
    });

    [Fact]
    public async Task Every_note_of_a_folder_is_looked_at()
    {
        string folder = Directory.CreateTempSubdirectory("hnote-").FullName;
        try
        {
            await File.WriteAllTextAsync(Path.Combine(folder, "a.hnote"), "specis dog\n");
            await File.WriteAllTextAsync(Path.Combine(folder, "b.txt"), "specis dog\n");
            JsonObject profile = Profiles.Rich;
            profile["workspaceFolders"] = new JsonArray(new JsonObject { ["uri"] = new Uri(folder).AbsoluteUri, ["name"] = "pets" });
            await Session.RunAsync(profile, async session =>
            {
                JsonNode a = await UntilReportedAsync(session, "a.hnote", report => report["items"] is JsonArray { Count: > 0 });
                Assert.Equal("unknown-line", (string?)a["items"]!.AsArray()[^1]!["code"]);
                await File.WriteAllTextAsync(Path.Combine(folder, "c.hnote"), "gumz\n");
                session.Client.Tell("workspace/didChangeWatchedFiles", new { changes = new[] { new { uri = new Uri(Path.Combine(folder, "c.hnote")).AbsoluteUri, type = 1 } } });
                await UntilReportedAsync(session, "c.hnote", report => report["items"] is JsonArray { Count: > 0 });
                JsonArray reports = (await session.Client.AskAsync("workspace/diagnostic", new { previousResultIds = Array.Empty<string>() }))!["items"]!.AsArray();
                Assert.DoesNotContain(reports, report => ((string)report!["uri"]!).EndsWith("b.txt", StringComparison.Ordinal));
            });
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    [Fact]
    public async Task The_files_to_watch_are_registered_where_the_client_can()
    {
        await Session.RunAsync(Profiles.Rich, async session =>
        {
            JsonNode asked = (await session.Client.HearAsync("client/registerCapability"))!;
            Assert.Contains(asked["registrations"]!.AsArray(), one => (string?)one!["method"] == "workspace/didChangeWatchedFiles");
        });
        await Session.RunAsync(Profiles.Sparse, async session =>
        {
            await session.Open("pet Marlow\n").PullAsync();
            Assert.DoesNotContain(session.Client.Heard, said => said.ContainsKey("id"));
        });
    }

    /// <summary>Asks again until a file is reported so: the folder is read beside.</summary>
    private static async Task<JsonNode> UntilReportedAsync(Session session, string file, Func<JsonNode, bool> fits)
    {
        using var patience = new CancellationTokenSource(TimeSpan.FromSeconds(60));
        while (!patience.IsCancellationRequested)
        {
            JsonNode answer = (await session.Client.AskAsync("workspace/diagnostic", new { previousResultIds = Array.Empty<string>() }))!;
            if (answer["items"]!.AsArray().FirstOrDefault(report => ((string)report!["uri"]!).EndsWith(file, StringComparison.Ordinal) && fits(report)) is { } found)
            {
                return found;
            }
        }

        throw new TimeoutException($"{file} was not reported");
    }

    private static (string Level, int Severity) Severity(IReadOnlyList<Shown> shown, string rule)
    {
        Shown one = shown.First(one => one.Rule == rule);
        return (one.Level, one.Severity);
    }

    private static string? LevelAt(IReadOnlyList<Shown> shown, int line) => shown.FirstOrDefault(one => one.Line == line && one.Rule == "rr-range")?.Level;
}
