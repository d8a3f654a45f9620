using System.Text.Json.Nodes;
using HealthNotes.Protocol.Tests.Support;

namespace HealthNotes.Protocol.Tests;

/// <summary>3.17, Language Features: finding the way in a note, and its shape.</summary>
public class NavigationTests
{
    private const string Note = """
        pet Marlow
        species dog
        med benazepril 5mg every 24h
        2025-11-20 check
          lump L-flank @low 8mm
          gums pink
        2026-11-20 check
          lump L-flank @low 12mm
          photo left-flank.jpg
          > a remark
          > of two lines
        2026-11-23 log
          gave benazepril 5mg
          recheck lump L-flank @low in 2w

        """;

    [Theory]
    [InlineData("-20 check\n  lump L-flank @lo", 4)]
    [InlineData("gave bena", 2)]
    public Task Where_it_was_first_written(string cursor, int line) => Session.RunAsync(Profiles.Sparse, async session =>
    {
        EditedNote note = session.Open(Note).After(cursor);
        JsonNode found = (await note.AskAsync("textDocument/definition"))!;
        JsonNode location = found is JsonArray all ? all[0]! : found;
        Assert.Equal(note.Uri, (string?)location["uri"]);
        Assert.Equal(line, (int)location["range"]!["start"]!["line"]!);
    });

    [Theory]
    [InlineData("gums pink\n2026-11-20 check\n  lump L-flank @lo", new[] { 4, 7, 13 })]
    [InlineData("gave bena", new[] { 2, 12 })]
    public Task Everywhere_it_is_written(string cursor, int[] lines) => Session.RunAsync(Profiles.Rich, async session =>
    {
        EditedNote note = session.Open(Note).After(cursor);
        JsonArray found = (await note.AskAsync("textDocument/references", new JsonObject { ["context"] = new JsonObject { ["includeDeclaration"] = true } }))!.AsArray();
        Assert.Equal(lines, found.Select(one => (int)one!["range"]!["start"]!["line"]!));
        JsonArray lit = (await note.AskAsync("textDocument/documentHighlight"))!.AsArray();
        Assert.Equal(lines, lit.Select(one => (int)one!["range"]!["start"]!["line"]!));
    });

    [Fact]
    public Task A_tag_is_renamed_everywhere() => Session.RunAsync(Profiles.Rich, async session =>
    {
        EditedNote note = session.Open(Note).After("@low 12"[..3]);
        JsonNode prepared = (await note.AskAsync("textDocument/prepareRename"))!;
        Assert.Contains("low", note.TextOf(prepared["range"] ?? prepared), StringComparison.Ordinal);
        JsonNode edit = (await note.AskAsync("textDocument/rename", new JsonObject { ["newName"] = "deep" }))!;
        note.Apply(edit["documentChanges"]![0]!["edits"]!);
        Assert.Equal(3, note.Text.Split("@deep").Length - 1);
        Assert.DoesNotContain("@low", note.Text, StringComparison.Ordinal);
    });

    [Fact]
    public Task A_name_that_is_none_is_refused() => Session.RunAsync(Profiles.Rich, async session =>
    {
        EditedNote note = session.Open(Note).After("@lo");
        LspError refused = await session.Client.RefusalAsync("textDocument/rename", new JsonObject { ["textDocument"] = note.Identifier, ["position"] = note.PositionOf(note.Cursor), ["newName"] = "two words" });
        Assert.NotEqual("", refused.Words);
    });

    [Fact]
    public Task Entries_are_the_outline() => Session.RunAsync(Profiles.Rich, async session =>
    {
        EditedNote note = session.Open(Note);
        JsonArray symbols = (await note.AskAboutAsync("textDocument/documentSymbol"))!.AsArray();
        Assert.Equal(3, symbols.Count(one => ((string)one!["name"]!).StartsWith("202", StringComparison.Ordinal)));
        Assert.All(symbols, one => Assert.Equal(note.TextOf(one!["selectionRange"]!), note.TextOf(one["range"]!).Substring(note.OffsetOf(one["selectionRange"]!["start"]!) - note.OffsetOf(one["range"]!["start"]!), note.TextOf(one["selectionRange"]!).Length)));
    });

    [Fact]
    public Task A_flat_outline_for_those_who_know_no_tree() => Session.RunAsync(Profiles.Sparse, async session =>
    {
        EditedNote note = session.Open(Note);
        JsonArray symbols = (await note.AskAboutAsync("textDocument/documentSymbol"))!.AsArray();
        Assert.All(symbols, one => Assert.Equal(note.Uri, (string?)one!["location"]!["uri"]));
    });

    [Fact]
    public Task Entries_and_remarks_fold() => Session.RunAsync(Profiles.Rich, async session =>
    {
        EditedNote note = session.Open(Note);
        JsonArray ranges = (await note.AskAboutAsync("textDocument/foldingRange"))!.AsArray();
        Assert.Contains(ranges, one => (int)one!["startLine"]! == 3 && (int)one["endLine"]! == 5);
        Assert.Contains(ranges, one => (int)one!["startLine"]! == 6 && (int)one["endLine"]! == 10);
    });

    [Fact]
    public Task A_selection_grows_from_word_to_note() => Session.RunAsync(Profiles.Rich, async session =>
    {
        EditedNote note = session.Open(Note).After("L-fla");
        JsonNode? range = (await note.AskAboutAsync("textDocument/selectionRange", new JsonObject { ["positions"] = new JsonArray(note.PositionOf(note.Cursor)) }))!.AsArray()[0];
        int steps = 0;
        string inner = "";
        for (; range is not null; range = range["parent"])
        {
            string outer = note.TextOf(range["range"]!);
            Assert.Contains(inner, outer, StringComparison.Ordinal);
            Assert.True(outer.Length > inner.Length);
            inner = outer;
            steps++;
        }

        Assert.True(steps >= 3);
        Assert.Equal(note.Text.TrimEnd(), inner.TrimEnd());
    });

    [Fact]
    public Task Photos_are_links() => Session.RunAsync(Profiles.Rich, async session =>
    {
        EditedNote note = session.Open(Note);
        JsonNode link = Assert.Single((await note.AskAboutAsync("textDocument/documentLink"))!.AsArray())!;
        Assert.Equal("left-flank.jpg", note.TextOf(link["range"]!));
        Assert.Equal("file:///notes/left-flank.jpg", (string?)link["target"]);
    });

    [Fact]
    public Task Every_pet_of_the_folder_is_found() => InFolderAsync(async (folder, session) =>
    {
        await PutAsync(folder, session, "tansy.hnote", "pet Tansy\nspecies cat\n");
        session.Open(Note);
        Assert.Contains(await FindAsync(session, "tansy", 1), one => ((string)one!["name"]!).Contains("Tansy", StringComparison.Ordinal));
        Assert.Contains(await FindAsync(session, "marl", 1), one => ((string)one!["name"]!).Contains("Marlow", StringComparison.Ordinal));
    });

    [Theory]
    [InlineData("left-flank.jpg", "2026/left flank.jpg", "photo 2026/left flank.jpg before the cut")] // moved, and a name with a blank
    [InlineData("left-flank.jpg", "../left-flank.jpg", null)] // out of the note's folder: no line can name it
    [InlineData("left-flank.jpg", "left # flank.jpg", null)] // a name that the line cannot hold
    [InlineData("right-flank.jpg", "other.jpg", null)]
    [InlineData(".", "../elsewhere", null)] // the note moves along
    [InlineData("a.hnote", "inner/a.hnote", null)]
    public Task A_photo_line_follows_its_picture(string from, string to, string? line) => InFolderAsync(async (folder, session) =>
    {
        const string text = "pet Tansy\n2026-11-20\n  photo left-flank.jpg before the cut\n";
        await PutAsync(folder, session, "b.hnote", text);
        EditedNote note = session.Open(text, UriOf(folder, "a.hnote"));
        await FindAsync(session, "tansy", 2);
        JsonNode? edit = await session.Client.AskAsync("workspace/willRenameFiles", new { files = new[] { new { oldUri = UriOf(folder, from), newUri = UriOf(folder, to) } } });
        JsonArray changes = edit?["documentChanges"]?.AsArray() ?? [];
        Assert.Equal(line is null ? [] : new[] { UriOf(folder, "a.hnote"), UriOf(folder, "b.hnote") }, changes.Select(change => (string)change!["textDocument"]!["uri"]!));
        if (line is not null)
        {
            Assert.Equal(1, (int)changes[0]!["textDocument"]!["version"]!);
            Assert.Null(changes[1]!["textDocument"]!["version"]); // not open: the file on disk
            note.Apply(changes[0]!["edits"]!);
            Assert.Contains(line, note.Text, StringComparison.Ordinal);
        }
    });

    [Fact]
    public Task A_rule_is_linked_to_its_help_page() => Session.RunAsync(Profiles.Rich, async session =>
    {
        Shown finding = Assert.Single(await session.Open("pet Marlow\nspecies dog\nadult-weight 27kg\n2026-11-25 check\n  crt 2.5s\n").PullAsync(), shown => shown.Rule == "crt-range");
        string link = (string)finding.Json["codeDescription"]!["href"]!;
        Assert.Contains(link.Split(':')[0], session.Capabilities["workspace"]!["textDocumentContent"]!["schemes"]!.AsArray().Select(scheme => (string)scheme!));
        Assert.StartsWith("# crt-range", (string?)(await session.Client.AskAsync("workspace/textDocumentContent", new { uri = link }))!["text"], StringComparison.Ordinal);
    });

    [Fact]
    public Task A_client_that_cannot_read_the_link_gets_none() => Session.RunAsync(Profiles.Sparse, async session =>
        Assert.All(await session.Open("pet Marlow\nspecies dog\nadult-weight 27kg\n2026-11-25 check\n  crt 2.5s\n").PullAsync(), shown => Assert.Null(shown.Json["codeDescription"])));

    [Fact]
    public Task The_page_is_a_text_too() => Session.RunAsync(Profiles.Rich, async session =>
    {
        EditedNote note = session.Open(Note);
        Assert.Contains("# Marlow", (string?)(await session.Client.AskAsync("workspace/textDocumentContent", new { uri = $"hnote:/page.md?{Uri.EscapeDataString(note.Uri)}" }))!["text"], StringComparison.Ordinal);
    });

    [Theory]
    [InlineData("hnote:/rules/no-such-rule.md")]
    [InlineData("hnote:/page.md?file:///not-open.hnote")]
    [InlineData("file:///etc/hostname")]
    [InlineData("hnote:/rules/.md")]
    [InlineData("hnote:/rules/")]
    [InlineData("no uri")]
    public Task There_is_no_such_text(string uri) => Session.RunAsync(Profiles.Rich, async session =>
        Assert.Contains(uri, (await session.Client.RefusalAsync("workspace/textDocumentContent", new { uri })).Words, StringComparison.Ordinal));

    [Fact]
    public Task Saved_rules_are_read_again_and_the_client_is_told() => InFolderAsync(async (folder, session) =>
    {
        var asked = new TaskCompletionSource();
        EditedNote note = session.Open("species dog\n2026-11-25 check\n  weight 38kg\n", UriOf(folder, "inner/a.hnote"));
        Assert.DoesNotContain(await note.PullAsync(), shown => shown.Rule == "call-if");
        session.Answer("workspace/diagnostic/refresh", _ => { asked.TrySetResult(); return null; });
        await File.WriteAllTextAsync(Path.Combine(folder, "our.hnote-rules"), "call-if weight <40kg per vet 2026-01-20\n");
        session.Client.Tell("textDocument/didSave", new { textDocument = new { uri = UriOf(folder, "our.hnote-rules") } });
        await asked.Task.WaitAsync(TimeSpan.FromSeconds(60));
        Assert.Contains(await note.PullAsync(), shown => shown.Rule == "call-if");
    });

    private static string UriOf(string folder, string name) => new Uri(Path.GetFullPath(Path.Combine(folder, name))).AbsoluteUri;

    private static async Task PutAsync(string folder, Session session, string name, string text)
    {
        await File.WriteAllTextAsync(Path.Combine(folder, name), text);
        session.Client.Tell("workspace/didChangeWatchedFiles", new { changes = new[] { new { uri = UriOf(folder, name), type = 1 } } });
    }

    /// <summary>The notes of the folder are read beside the session: asks until as many are found.</summary>
    private static async Task<JsonArray> FindAsync(Session session, string query, int count)
    {
        using var patience = new CancellationTokenSource(TimeSpan.FromSeconds(60));
        JsonArray found = [];
        while (found.Count < count && !patience.IsCancellationRequested)
        {
            found = (await session.Client.AskAsync("workspace/symbol", new { query }))!.AsArray();
        }

        return found;
    }

    private static async Task InFolderAsync(Func<string, Session, Task> test)
    {
        string folder = Directory.CreateTempSubdirectory("hnote-").FullName;
        try
        {
            JsonObject profile = Profiles.Rich;
            profile["workspaceFolders"] = new JsonArray(new JsonObject { ["uri"] = new Uri(folder).AbsoluteUri, ["name"] = "pets" });
            await Session.RunAsync(profile, session => test(folder, session));
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    /// <summary>Our own request: the words are those of the page.</summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public Task What_is_due(bool open) => Session.RunAsync(Profiles.Sparse, async session =>
    {
        const string text = "pet Marlow\nspecies dog\n2026-11-23 log\n  due booster 2027-02-28\n  recheck ear L in 1d\n";
        string uri = open ? session.Open(text).Uri : "file:///not-open.hnote";
        JsonArray due = (await session.Client.AskAsync("healthNotes/due", open ? new { uri } : new { uri, text }))!["due"]!.AsArray();
        Assert.Equal([4, 3], due.Select(one => (int)one!["line"]!).Where(line => line > 2)); // overdue first
        Assert.Contains(due, one => (string?)one!["what"] == "booster" && ((string)one["when"]!).Contains("28 Feb", StringComparison.Ordinal));
        Assert.Null(await session.Client.AskAsync("healthNotes/due", new { uri = "file:///not-open.hnote" }));
    });

    /// <summary>Our own request beside the specification: the page of the text as it stands, with nothing written to disk.</summary>
    [Fact]
    public Task The_page_of_the_note_as_it_stands() => Session.RunAsync(Profiles.Sparse, async session =>
    {
        EditedNote note = session.Open(Note);
        JsonNode page = (await session.Client.AskAsync("healthNotes/page", new JsonObject { ["uri"] = note.Uri }))!;
        Assert.StartsWith("<!doctype html>", (string?)page["html"], StringComparison.Ordinal);
        Assert.Contains("12 mm", (string?)page["html"], StringComparison.Ordinal);
        Assert.Null(await session.Client.AskAsync("healthNotes/page", new JsonObject { ["uri"] = "file:///not-open.hnote" }));
    });
}
