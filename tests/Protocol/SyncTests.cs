using System.Text.Json.Nodes;
using HealthNotes.Protocol.Tests.Support;

namespace HealthNotes.Protocol.Tests;

/// <summary>3.17, Text Document Synchronization: the server's text is the editor's, whatever changes it gets and however it counts.</summary>
public class SyncTests
{
    public static TheoryData<string> Encodings => ["utf-16", "utf-8", "utf-32"];

    [Theory]
    [MemberData(nameof(Encodings))]
    public Task Edits_behind_characters_of_every_length(string encoding) => Session.RunAsync(Profiles.Counting(encoding), async session =>
    {
        Assert.Equal(encoding, session.Units.Name);
        EditedNote note = session.Open("pet Märl🐕w e\u0301 狗\nbreed 🐕🐕 x\n2026-11-20 check\n  hr 18/15s # é🐈 gumz\n");
        note.Replace("x\n", "y gumz\n");
        note.Replace("18/15s", "18/15q");
        note.Replace("gumz\n", "🐕\n  gumz pink\n");
        note.Save();
        await AssertSameAsFreshAsync(session, note);
        Shown wrong = Assert.Single(await note.PullAsync(), shown => shown.Rule == "wrong-unit");
        Assert.Equal("q", note.TextOf(wrong.Json["range"]!)[^1..]);
    });

    [Theory]
    [MemberData(nameof(Encodings))]
    public Task A_finding_behind_an_emoji_is_where_the_editor_draws_it(string encoding) => Session.RunAsync(Profiles.Counting(encoding), async session =>
    {
        EditedNote note = session.Open("pet 🐕\nspecies dog\n2026-11-20 check\n  skip temp é🐕狗 e\u0301\n  gave 🐕狗é ibuprofen 200mg\n");
        Shown shown = Assert.Single(await note.PullAsync(), one => one.Rule == "human-painkiller");
        Assert.Contains("ibuprofen", note.TextOf(shown.Json["range"]!), StringComparison.Ordinal);
        Assert.Equal(note.RangeOf(note.TextOf(shown.Json["range"]!)).ToJsonString(), shown.Json["range"]!.ToJsonString());
    });

    [Fact]
    public Task Several_changes_in_one_message_follow_one_another() => Session.RunAsync(Profiles.Rich, async session =>
    {
        EditedNote note = session.Open("pet Marlow\nspecies dog\n2026-11-20 check\n  hr 18/15s\n");
        int at = note.At("  hr");
        note.Edit((at, 0, "  gumz pink\n"), (at, 12, ""), (at, 0, "  rr 8/30s asleep\n"), (0, 4, "pet  "), (note.Text.Length - 1, 0, " chest"));
        note.Save();
        await AssertSameAsFreshAsync(session, note);
    });

    [Fact]
    public Task The_whole_text_anew() => Session.RunAsync(Profiles.Rich, async session =>
    {
        EditedNote note = session.Open("pet Marlow\n");
        note.ReplaceAll("specis dog\n\n\n");
        await AssertSameAsFreshAsync(session, note);
        note.ReplaceAll("");
        await AssertSameAsFreshAsync(session, note);
    });

    [Fact]
    public Task The_whole_text_and_a_part_of_it_in_one_message() => Session.RunAsync(Profiles.Rich, async session =>
    {
        EditedNote note = session.Open("pet Marlow\n");
        note.ChangeByHand("specis dog\n", [new JsonObject { ["text"] = "species dog\n" }, new JsonObject { ["range"] = Range(0, 5, 0, 7), ["text"] = "s" }]);
        note.Save();
        await AssertSameAsFreshAsync(session, note);
    });

    [Theory]
    [InlineData(0, 99, 0, 99, "pet Marlow!\nspecies dog")]
    [InlineData(99, 0, 99, 5, "pet Marlow\nspecies dog!")]
    [InlineData(1, 0, 99, 99, "pet Marlow\n!")]
    [InlineData(1, 99, 1, 2_000_000_000, "pet Marlow\nspecies dog!")]
    public Task Places_that_do_not_exist_are_the_nearest_that_do(int line, int character, int endLine, int endCharacter, string after) => Session.RunAsync(Profiles.Rich, async session =>
    {
        EditedNote note = session.Open("pet Marlow\nspecies dog");
        note.ChangeByHand(after, [new JsonObject { ["range"] = Range(line, character, endLine, endCharacter), ["text"] = "!" }]);
        note.Save();
        await AssertSameAsFreshAsync(session, note);
    });

    [Fact]
    public Task A_length_that_old_editors_send_is_not_needed() => Session.RunAsync(Profiles.Rich, async session =>
    {
        EditedNote note = session.Open("pet Marlow\nspecies dog\n");
        note.ChangeByHand("pet Marlow\nspecis dog\n", [new JsonObject { ["range"] = Range(1, 5, 1, 7), ["rangeLength"] = 77, ["text"] = "s" }]);
        note.Save();
        await AssertSameAsFreshAsync(session, note);
    });

    [Theory]
    [InlineData("pet Marlow\r\nspecis dog\r\n")]
    [InlineData("pet Marlow\rspecis dog\r")]
    [InlineData("\ufeffpet Marlow\r\nspecis dog\n")]
    public Task Every_line_break(string text) => Session.RunAsync(Profiles.Rich, async session =>
    {
        EditedNote note = session.Open(text);
        note.Replace("specis", "2026-11-20 check\r\n  gumz pink\r\nspecis");
        note.Replace("\r", "");
        note.Save();
        await AssertSameAsFreshAsync(session, note);
    });

    [Fact]
    public Task A_document_that_was_never_opened() => Session.RunAsync(Profiles.Rich, async session =>
    {
        var never = new { uri = "file:///never.hnote" };
        session.Client.Tell("textDocument/didChange", new { textDocument = new { uri = never.uri, version = 2 }, contentChanges = new[] { new { text = "specis dog" } } });
        session.Client.Tell("textDocument/didSave", new { textDocument = never });
        session.Client.Tell("textDocument/didClose", new { textDocument = never });
        Assert.Empty((await session.Client.AskAsync("textDocument/diagnostic", new { textDocument = never }))!["items"]!.AsArray());
        JsonNode? offers = await session.Client.AskAsync("textDocument/completion", new { textDocument = never, position = new { line = 0, character = 0 } });
        Assert.True(offers is null || offers["items"]!.AsArray().Count == 0);
    });

    [Fact]
    public Task Closed_and_opened_again_is_new() => Session.RunAsync(Profiles.RichPush, async session =>
    {
        const string Uri = "file:///again.hnote";
        EditedNote first = session.Open("specis dog\n", Uri);
        await first.HearAsync(shown => shown.Any(one => one.Rule == "unknown-line"));
        first.Close();
        await session.Client.HearAsync("textDocument/publishDiagnostics", said => said!["diagnostics"]!.AsArray().Count == 0);
        EditedNote second = session.Open("pet Marlow\ngumz\n", Uri);
        IReadOnlyList<Shown> shown = await second.HearAsync(all => all.Any(one => one.Rule == "unknown-line" && one.Line == 1));
        Assert.DoesNotContain(shown, one => one.Rule == "unknown-line" && one.Line == 0);
        await AssertSameAsFreshAsync(session, second);
    });

    [Fact]
    public Task Opened_twice_the_last_text_counts() => Session.RunAsync(Profiles.Rich, async session =>
    {
        EditedNote first = session.Open("specis dog\n", "file:///twice.hnote");
        await first.PullAsync();
        EditedNote second = session.Open("pet Marlow\n", "file:///twice.hnote");
        await AssertSameAsFreshAsync(session, second);
    });

    [Fact]
    public Task Two_notes_do_not_mix() => Session.RunAsync(Profiles.Rich, async session =>
    {
        EditedNote dog = session.Open("pet Marlow\nspecies dog\nborn 2017-03\nadult-weight 27kg\n2026-11-20 check\n  hr 45/15s\n");
        EditedNote cat = session.Open("pet Tansy\nspecies cat\nborn 2017-03\n2026-11-20 check\n  hr 45/15s\n");
        dog.Edit(dog.Text.Length, 0, "  gumz pink\n");
        Assert.Contains(await dog.PullAsync(), shown => shown.Rule == "hr-range");
        Assert.DoesNotContain(await cat.PullAsync(), shown => shown.Rule is "hr-range" or "unknown-line");
    });

    /// <summary>Every way in which JSON can say a number or a text is understood, even one that only an editor would say.</summary>
    [Theory]
    [InlineData("""{"start":{"line":1.0,"character":5},"end":{"line":1,"character":7e0}}""", "\"s\"", "\"pet Marlow\\nspecis dog\\n\"")]
    [InlineData("""{"start":{"line":4294967295,"character":4294967295},"end":{"line":99999999999999999999,"character":0}}""", "\"gumz\"", "\"pet Marlow\\nspecies dog\\ngumz\"")]
    [InlineData("""{"start":{"line":0,"character":4},"end":{"line":0,"character":10}}""", "\"\\ud83dMarlow \\n\\\"\\/\\udc36\"", "\"pet \\ud83dMarlow \\n\\\"/\\udc36\\nspecies dog\\n\"")]
    public Task Whatever_JSON_allows_is_taken(string range, string text, string after) => Session.RunAsync(Profiles.Rich, async session =>
    {
        EditedNote note = session.Open("pet Marlow\nspecies dog\n");
        session.Client.SendRaw(FrameReader.Frame($$$"""{"jsonrpc":"2.0","method":"textDocument/didChange","params":{"textDocument":{"uri":"{{{note.Uri}}}","version":2.0},"contentChanges":[{"range":{{{range}}},"text":{{{text}}}}]}}"""));
        IReadOnlyList<Shown> shown = await note.PullAsync();
        EditedNote fresh = session.Open("");
        session.Client.SendRaw(FrameReader.Frame($$$"""{"jsonrpc":"2.0","method":"textDocument/didChange","params":{"textDocument":{"uri":"{{{fresh.Uri}}}","version":2},"contentChanges":[{"text":{{{after}}}}]}}"""));
        session.Client.Tell("textDocument/didSave", new { textDocument = new { uri = fresh.Uri } });
        session.Client.Tell("textDocument/didSave", new { textDocument = new { uri = note.Uri } });
        Assert.Equal(await DiagnosticsAsync(fresh), await DiagnosticsAsync(note));
        Assert.DoesNotContain(shown, one => one.Rule == "not-checked");
    });

    /// <summary>After a change that can't be read the two texts differ: the note has no findings until it comes whole.</summary>
    [Theory]
    [InlineData("""{"textDocument":{"uri":"URI","version":2},"contentChanges":[{"range":{"start":{"line":"one","character":0},"end":{"line":0,"character":0}},"text":"x"}]}""")]
    [InlineData("""{"textDocument":{"uri":"URI","version":2},"contentChanges":[{"range":{"start":{"line":0.5,"character":0},"end":{"line":0,"character":0}},"text":"x"}]}""")]
    [InlineData("""{"textDocument":{"uri":"URI","version":2},"contentChanges":[{"text":7}]}""")]
    [InlineData("""{"textDocument":{"uri":"URI","version":2},"contentChanges":{}}""")]
    [InlineData("""{"textDocument":{"version":2},"contentChanges":[]}""")]
    [InlineData("""{"textDocument":{"uri":"file:///\ud83d","version":2},"contentChanges":[]}""")]
    [InlineData("7")]
    public Task A_change_that_cannot_be_read_is_told(string change) => Session.RunBareAsync(
        async session =>
        {
            await session.InitializeAsync(Profiles.Rich);
            EditedNote note = session.Open("pet Marlow\nspecis dog\n");
            Assert.Contains(await note.PullAsync(), shown => shown.Rule == "unknown-line");
            session.Client.SendRaw(FrameReader.Frame($$$"""{"jsonrpc":"2.0","method":"textDocument/didChange","params":{{{change.Replace("URI", note.Uri, StringComparison.Ordinal)}}}}"""));
            await AssertNotCheckedAsync(note);
            JsonNode told = (await session.Client.HearAsync("window/showMessage"))!;
            Assert.Contains("not checked", (string)told["message"]!, StringComparison.Ordinal);

            // a part of the text does not help, and no edit of the old text is offered
            note.Edit(0, 0, "#");
            await AssertNotCheckedAsync(note);
            Assert.Empty((await note.AskAboutAsync("textDocument/formatting", new JsonObject { ["options"] = new JsonObject { ["tabSize"] = 2, ["insertSpaces"] = true } }))?.AsArray() ?? []);
            note.ReplaceAll("pet Marlow\ngumz dog\n");
            Assert.Contains(await note.PullAsync(), shown => shown.Rule == "unknown-line");
            note.Save();
            await AssertSameAsFreshAsync(session, note);
            await session.LeaveAsync();
        },
        faults: change == "7");

    private static async Task AssertNotCheckedAsync(EditedNote note) => Assert.Equal("not-checked", Assert.Single(await note.PullAsync()).Rule);

    private static async Task AssertSameAsFreshAsync(Session session, EditedNote note)
    {
        EditedNote fresh = session.Open(note.Text);
        Assert.Equal(await DiagnosticsAsync(fresh), await DiagnosticsAsync(note));
    }

    private static async Task<string> DiagnosticsAsync(EditedNote note) =>
        string.Join('\n', (await note.PullAsync()).Select(shown => $"{shown.Line}:{shown.Start}-{shown.End} {shown.Rule} {shown.Message} [{string.Join(' ', shown.Evidence)}]"));

    private static JsonObject Range(int line, int character, int endLine, int endCharacter) => new()
    {
        ["start"] = new JsonObject { ["line"] = line, ["character"] = character },
        ["end"] = new JsonObject { ["line"] = endLine, ["character"] = endCharacter },
    };
}
