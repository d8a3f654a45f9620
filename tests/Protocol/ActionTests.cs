using System.Text.Json.Nodes;
using HealthNotes.Protocol.Tests.Support;

namespace HealthNotes.Protocol.Tests;

/// <summary>3.17, Code Action Request and Execute a command.</summary>
public class ActionTests
{
    private const string Opening = "pet Marlow\nspecies dog\nborn 2017-03\nadult-weight 27kg\n";

    [Theory]
    [InlineData("  g‹›umss pink\n", "unknown-line", "  gums pink\n")]
    [InlineData("  gums pin‹›kk\n", "unknown-word", "  gums pink\n")]
    public Task A_problem_is_fixed_with_one_key(string line, string rule, string corrected) => Session.RunAsync(Profiles.Rich, async session =>
    {
        EditedNote note = session.Open(Opening + "2026-11-25 check\n" + line);
        Shown wrong = Assert.Single(await note.PullAsync(), shown => shown.Line == 5 && shown.Rule == rule);
        JsonArray actions = await ActionsAsync(note, "quickfix", wrong);
        JsonNode fix = actions.FirstOrDefault(action => (bool?)action!["isPreferred"] == true) ?? actions[0]!;
        Assert.Equal("quickfix", (string?)fix["kind"]);
        await ApplyAsync(session, note, fix);
        Assert.EndsWith(corrected, note.Text, StringComparison.Ordinal);
        Assert.DoesNotContain(await note.PullAsync(), shown => shown.Line == 5 && shown.Rule == rule);
    });

    [Fact]
    public Task All_at_once() => Session.RunAsync(Profiles.Rich, async session =>
    {
        EditedNote note = session.Open(Opening + "2026-11-25 check\n  ‹›gums pinkk\n  coat glosssy\n");
        JsonArray actions = await ActionsAsync(note, "source.fixAll");
        await ApplyAsync(session, note, Assert.Single(actions)!);
        Assert.EndsWith("  gums pink\n  coat glossy\n", note.Text, StringComparison.Ordinal);
    });

    [Theory]
    [InlineData("refactor.rewrite")]
    [InlineData("refactor")]
    public Task Rewrites_are_offered_where_nothing_is_wrong(string kind) => Session.RunAsync(Profiles.Rich, async session =>
    {
        EditedNote note = session.Open(Opening + "2026-11-25 check\n  weight 27‹›kg\n");
        JsonArray actions = await ActionsAsync(note, kind);
        Assert.NotEmpty(actions);
        Assert.All(actions, action => Assert.StartsWith("refactor", (string?)action!["kind"], StringComparison.Ordinal));
        foreach (JsonNode? action in actions)
        {
            EditedNote fresh = session.Open(Opening + "2026-11-25 check\n  weight 27‹›kg\n");
            JsonNode own = (await ActionsAsync(fresh, kind)).First(one => (string?)one!["title"] == (string?)action!["title"])!;
            string before = fresh.Text;
            await ApplyAsync(session, fresh, own);
            Assert.NotEqual(before, fresh.Text);
        }
    });

    [Fact]
    public Task A_client_without_literals_is_offered_none() => Session.RunAsync(Profiles.Sparse, async session =>
    {
        EditedNote note = session.Open("spe‹›cis dog\n");
        Assert.Empty(await ActionsAsync(note, null));
    });

    [Fact]
    public Task An_action_of_an_older_version_is_refused() => Session.RunAsync(Profiles.Rich, async session =>
    {
        EditedNote note = session.Open(Opening + "2026-11-25 check\n  ‹›gums pinkk\n");
        JsonNode? later = (await ActionsAsync(note, null)).FirstOrDefault(action => action!["data"] is not null);
        Assert.NotNull(later);
        note.Edit(0, 0, "\n");
        Assert.Equal(LspError.ContentModified, (await session.Client.RefusalAsync("codeAction/resolve", later)).Code);
    });

    [Fact]
    public Task A_check_for_today_is_added_and_the_cursor_stands_in_it() => Session.RunAsync(Profiles.Rich, async session =>
    {
        EditedNote note = session.Open(Opening + "2026-11-20 check\n  gums pink\n");
        session.Answer("workspace/applyEdit", asked =>
        {
            note.Apply(asked!["edit"]!["documentChanges"]![0]!["edits"]!);
            return new JsonObject { ["applied"] = true };
        });
        await session.Client.AskAsync("workspace/executeCommand", new { command = "hnote.addCheckToday", arguments = new[] { note.Uri } });
        Assert.Contains("2026-11-25", note.Text, StringComparison.Ordinal);
        JsonNode shown = (await session.Client.HearAsync("window/showDocument"))!;
        Assert.Equal(note.Uri, (string?)shown["uri"]);
        Assert.Empty(await note.PullAsync());
    });

    [Fact]
    public async Task The_page_is_made_and_shown()
    {
        string folder = Directory.CreateTempSubdirectory("hnote-").FullName;
        try
        {
            await Session.RunAsync(Profiles.Rich, async session =>
            {
                EditedNote note = session.Open(Opening + "2026-11-20 check\n  gums pink\n", new Uri(Path.Combine(folder, "marlow.hnote")).AbsoluteUri);
                JsonNode? made = await session.Client.AskAsync("workspace/executeCommand", new { command = "hnote.openPage", arguments = new[] { note.Uri } });
                Assert.Contains("<h1", await File.ReadAllTextAsync(new Uri((string)made!).LocalPath), StringComparison.Ordinal);
                JsonNode shown = (await session.Client.HearAsync("window/showDocument"))!;
                Assert.True((bool?)shown["external"]);
                File.Delete(new Uri((string)made!).LocalPath);
            });
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    [Fact]
    public Task A_command_that_is_none_is_refused() => Session.RunAsync(Profiles.Rich, async session =>
    {
        await session.Client.RefusalAsync("workspace/executeCommand", new { command = "hnote.dance" });
        await session.Client.RefusalAsync("workspace/executeCommand", new { command = "hnote.openPage", arguments = new[] { "file:///never.hnote" } });
        await session.Client.RefusalAsync("workspace/executeCommand", new { command = "hnote.openPage", arguments = new object?[] { 7, null } });
    });

    private static async Task<JsonArray> ActionsAsync(EditedNote note, string? kind, params Shown[] diagnostics)
    {
        var context = new JsonObject { ["diagnostics"] = new JsonArray([.. diagnostics.Select(one => one.Json.DeepClone())]), ["triggerKind"] = 1 };
        if (kind is not null)
        {
            context["only"] = new JsonArray(kind);
        }

        return (await note.AskAboutAsync("textDocument/codeAction", new JsonObject { ["range"] = note.Selected, ["context"] = context }))?.AsArray() ?? [];
    }

    private static async Task ApplyAsync(Session session, EditedNote note, JsonNode action)
    {
        JsonNode whole = action["edit"] is null ? (await session.Client.AskAsync("codeAction/resolve", action))! : action;
        JsonNode change = whole["edit"]!["documentChanges"]![0]!;
        Assert.Equal(note.Version, (int?)change["textDocument"]!["version"]);
        note.Apply(change["edits"]!);
        note.Save();
    }
}
