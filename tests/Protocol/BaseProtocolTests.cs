using System.Text;
using System.Text.Json.Nodes;
using HealthNotes.Protocol.Tests.Support;

namespace HealthNotes.Protocol.Tests;

/// <summary>3.17, Base Protocol: a broken message is answered and the next is read; a broken header ends the session.</summary>
public class BaseProtocolTests
{
    [Theory]
    [InlineData("{\"jsonrpc\":\"2.0\",\"id\":1,", LspError.ParseError)]
    [InlineData("not JSON at all", LspError.ParseError)]
    [InlineData("\u0000\u0001\u0002", LspError.ParseError)]
    [InlineData("{}", LspError.InvalidRequest)]
    [InlineData("[]", LspError.InvalidRequest)]
    [InlineData("42", LspError.InvalidRequest)]
    [InlineData("{\"id\":1,\"method\":7}", LspError.InvalidRequest)]
    public Task A_broken_message_is_answered_and_the_next_is_read(string body, int code) => SurviveAsync(async session =>
    {
        session.Client.SendRaw(FrameReader.Frame(body));
        Assert.Equal(code, (await session.Client.HearErrorAsync()).Code);
    });

    /// <summary>What a broken header leads to is not searched for messages: it may be a web page's request.</summary>
    [Theory]
    [InlineData("Content-Length: 1\r\n\r\n{}")]
    [InlineData("Content-Length: 0\r\n\r\n")]
    [InlineData("Content-Length: many\r\n\r\n")]
    [InlineData("Content-Length: 99999999999999999999\r\n\r\n")]
    [InlineData("Content-Length:\r\n\r\n")]
    [InlineData("Content-Type: application/vscode-jsonrpc; charset=utf-8\r\n\r\n")]
    [InlineData("\r\n\r\n\r\n")]
    [InlineData("\n\n\n")]
    [InlineData("POST / HTTP/1.1\r\nHost: here\r\nContent-Type: text/plain\r\nContent-Length: 400\r\n\r\n")]
    [InlineData("POST / HTTP/1.1\r\nReferer: x Content-Length: 1\r\n\r\n")]
    [InlineData("this is not a header\r\n")]
    [InlineData("\u0000\u0000\u0000\u0001\r\n")]
    public Task A_broken_header_ends_the_session(string bytes) => Session.RunBareAsync(
        async session =>
        {
            session.Client.SendRaw([.. Encoding.UTF8.GetBytes(bytes), .. FrameReader.Frame("{\"jsonrpc\":\"2.0\",\"id\":77,\"method\":\"initialize\",\"params\":{\"capabilities\":{}}}")]);
            Assert.Equal(1, await session.ExitCodeAsync());
            Assert.DoesNotContain(session.Client.Heard, said => (int?)said["id"] == 77);
        },
        faults: true);

    [Fact]
    public Task Much_rubbish_ends_the_session() => Session.RunBareAsync(
        async session =>
        {
            session.Client.SendRaw(Encoding.UTF8.GetBytes(new string('x', 300_000)));
            Assert.Equal(1, await session.ExitCodeAsync());
        },
        faults: true);

    [Fact]
    public Task Initialize_and_commands_are_requests() => Session.RunBareAsync(async session =>
    {
        session.Client.Tell("initialize", Profiles.Rich);
        await session.InitializeAsync(Profiles.Rich);
        string folder = Directory.CreateTempSubdirectory("hnote-test-").FullName;
        try
        {
            EditedNote note = session.Open("pet Marlow\n", new Uri(Path.Combine(folder, "a.hnote")).AbsoluteUri);
            session.Client.Tell("workspace/executeCommand", new { command = "hnote.openPage", arguments = new[] { note.Uri } });
            await note.PullAsync();
            await Task.Delay(500);
            Assert.Empty(Directory.GetFiles(folder));
            await session.LeaveAsync();
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    });

    [Theory]
    [InlineData("content-length: {0}\r\n\r\n")]
    [InlineData("CONTENT-LENGTH:{0}\r\n\r\n")]
    [InlineData("Content-Type: application/vscode-jsonrpc; charset=utf-8\r\nContent-Length: {0}\r\n\r\n")]
    [InlineData("Content-Length: {0}\r\nContent-Type: application/vscode-jsonrpc; charset=utf8\r\n\r\n")]
    public Task Every_header_the_specification_allows(string header) => Session.RunAsync(Profiles.Rich, async session =>
    {
        const string Body = "{\"jsonrpc\":\"2.0\",\"id\":900,\"method\":\"workspace/diagnostic\",\"params\":{\"previousResultIds\":[]}}";
        Task<JsonObject> answer = session.Client.Expect(900);
        session.Client.SendRaw(Encoding.UTF8.GetBytes(string.Format(System.Globalization.CultureInfo.InvariantCulture, header, Body.Length) + Body));
        Assert.NotNull(LspClient.ResultOf(await answer));
    });

    [Fact]
    public Task A_message_in_single_bytes() => Session.RunAsync(Profiles.Sparse, async session =>
    {
        // the sparse client is asked nothing, so no answer of its own can fall between the bytes
        Task<JsonObject> answer = session.Client.Expect(901);
        foreach (byte one in FrameReader.Frame("{\"jsonrpc\":\"2.0\",\"id\":901,\"method\":\"workspace/symbol\",\"params\":{\"query\":\"é🐕\"}}"))
        {
            session.Client.SendRaw(one);
        }

        Assert.NotNull(LspClient.ResultOf(await answer));
    });

    [Fact]
    public Task Many_messages_in_one_piece() => Session.RunAsync(Profiles.Rich, async session =>
    {
        Task<JsonObject>[] answers = [.. Enumerable.Range(1000, 50).Select(session.Client.Expect)];
        session.Client.SendRaw([.. Enumerable.Range(1000, 50).SelectMany(id =>
            FrameReader.Frame($"{{\"jsonrpc\":\"2.0\",\"id\":{id},\"method\":\"workspace/diagnostic\",\"params\":{{\"previousResultIds\":[]}}}}"))]);
        Assert.All(await Task.WhenAll(answers), answer => Assert.NotNull(LspClient.ResultOf(answer)));
    });

    [Fact]
    public Task Ids_may_be_words() => Session.RunAsync(Profiles.Rich, async session =>
    {
        session.Client.SendRaw(FrameReader.Frame("{\"jsonrpc\":\"2.0\",\"id\":\"a-1\",\"method\":\"nobody/knows\"}"));
        JsonNode? answer = await session.Client.AskAsync("workspace/diagnostic", new { previousResultIds = Array.Empty<string>() });
        Assert.NotNull(answer);
        Assert.Contains(session.Client.Heard, said => said["id"] is JsonValue id && id.TryGetValue(out string? word) && word == "a-1" && said["error"] is not null);
    });

    [Theory]
    [InlineData("nobody/knows")]
    [InlineData("$/question")]
    [InlineData("textDocument/typeDefinition")]
    public Task An_unknown_question_is_refused(string method) => SurviveAsync(async session =>
        Assert.Equal(LspError.MethodNotFound, (await session.Client.RefusalAsync(method, new { a = 1 })).Code));

    [Theory]
    [InlineData("nobody/knows")]
    [InlineData("$/whatever")]
    [InlineData("textDocument/willSave")]
    [InlineData("workspace/didRenameFiles")]
    public Task An_unknown_notification_is_passed_over(string method) => SurviveAsync(session =>
    {
        session.Client.Tell(method, new { a = 1 });
        return Task.CompletedTask;
    });

    [Theory]
    [InlineData("textDocument/completion", "{}")]
    [InlineData("textDocument/completion", "null")]
    [InlineData("textDocument/completion", "[1, 2]")]
    [InlineData("textDocument/diagnostic", "{\"textDocument\":7}")]
    [InlineData("textDocument/codeAction", "{\"textDocument\":{\"uri\":\"file:///a\"},\"range\":\"all of it\"}")]
    public Task Parameters_that_do_not_fit_are_refused(string method, string parameters) => SurviveAsync(async session =>
        Assert.Equal(LspError.InvalidParams, (await session.Client.RefusalAsync(method, JsonNode.Parse(parameters))).Code));

    [Fact]
    public Task A_cancelled_question_is_answered_all_the_same() => Session.RunAsync(Profiles.Rich, async session =>
    {
        session.Open(string.Concat(Enumerable.Range(0, 3000).Select(i => $"{1990 + (i % 30)}-01-02 check\n  hr {i % 60}/15s\n")));
        for (int i = 0; i < 20; i++)
        {
            (int id, Task<JsonObject> answer) = session.Client.Send("workspace/diagnostic", new { previousResultIds = Array.Empty<string>() });
            session.Client.Tell("$/cancelRequest", new { id });
            JsonObject said = await answer;
            Assert.True(said["result"] is not null || (int?)said["error"]!["code"] == LspError.RequestCancelled, said.ToJsonString());
        }
    });

    [Fact]
    public Task Cancelling_what_nobody_asked_is_passed_over() => SurviveAsync(session =>
    {
        session.Client.Tell("$/cancelRequest", new { id = 4711 });
        session.Client.Tell("$/cancelRequest", new { id = "nothing" });
        session.Client.Tell("$/cancelRequest", new { });
        return Task.CompletedTask;
    });

    [Fact]
    public Task An_answer_that_nobody_waits_for_is_passed_over() => SurviveAsync(session =>
    {
        session.Client.SendRaw(FrameReader.Frame("{\"jsonrpc\":\"2.0\",\"id\":\"nothing\",\"result\":null}"));
        session.Client.SendRaw(FrameReader.Frame("{\"jsonrpc\":\"2.0\",\"id\":99999,\"error\":{\"code\":1,\"message\":\"no\"}}"));
        return Task.CompletedTask;
    });

    /// <summary>After whatever happens, a note is still read along, and the goodbye is as usual.</summary>
    private static Task SurviveAsync(Func<Session, Task> test) => Session.RunBareAsync(
        async session =>
        {
            await session.InitializeAsync(Profiles.Rich);
            await test(session);
            EditedNote note = session.Open("pet Marlow\nspecis dog\n");
            Assert.Equal("unknown-line", Assert.Single(await note.PullAsync(), shown => shown.Line == 1).Rule);
            await session.LeaveAsync();
        },
        faults: true);
}
