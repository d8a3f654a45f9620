using System.Diagnostics;
using System.Text.Json.Nodes;
using HealthNotes.Protocol.Tests.Support;

namespace HealthNotes.Protocol.Tests;

/// <summary>3.17, Lifecycle Messages: hello, goodbye, and everything out of turn.</summary>
public class LifecycleTests
{
    [Fact]
    public Task Hello_and_goodbye() => Session.RunBareAsync(async session =>
    {
        JsonNode answer = await session.InitializeAsync(Profiles.Rich);
        Assert.Equal("hnote", (string?)answer["serverInfo"]!["name"]);
        Assert.NotEqual("", (string?)answer["serverInfo"]!["version"]);
        Assert.Equal(2, (int)session.Capabilities["textDocumentSync"]!["change"]!);
        Assert.True((bool)session.Capabilities["textDocumentSync"]!["openClose"]!);
        await session.LeaveAsync();
    });

    [Theory]
    [InlineData("utf-16", "utf-16", "utf-8", "utf-32")]
    [InlineData("utf-16")]
    [InlineData("utf-8", "utf-8")]
    [InlineData("utf-32", "utf-32")]
    [InlineData("utf-16", "utf-7")]
    public Task The_two_agree_how_to_count(string expected, params string[] offered) => Session.RunAsync(Profiles.Counting(offered), session =>
    {
        Assert.Equal(expected, session.Units.Name);
        return Task.CompletedTask;
    });

    [Fact]
    public Task Only_a_client_that_asks_for_diagnostics_is_told_to() => Session.RunAsync(Profiles.Sparse, session =>
    {
        Assert.Null(session.Capabilities["diagnosticProvider"]);
        return Task.CompletedTask;
    });

    [Theory]
    [InlineData("nulls.json")]
    [InlineData("unknown-fields.json")]
    [InlineData("bare.json")]
    [InlineData("rich-client.json")]
    public Task Whatever_an_editor_says_of_itself(string payload) => Session.RunAsync(Profiles.Parse(Profiles.Text(payload)), async session =>
    {
        EditedNote note = session.Open("pet Marlow\nspecis dog\n");
        Assert.Equal("unknown-line", Assert.Single(await note.PullAsync(), shown => shown.Line == 1).Rule);
    });

    [Fact]
    public Task Questions_before_hello_are_refused_and_the_rest_is_dropped() => Session.RunBareAsync(async session =>
    {
        Assert.Equal(LspError.ServerNotInitialized, (await session.Client.RefusalAsync("textDocument/diagnostic", new { textDocument = new { uri = "file:///a.hnote" } })).Code);
        Assert.Equal(LspError.ServerNotInitialized, (await session.Client.RefusalAsync("shutdown")).Code);
        session.Client.Tell("textDocument/didOpen", new { textDocument = new { uri = "file:///a.hnote", languageId = "hnote", version = 1, text = "specis dog" } });
        await session.InitializeAsync(Profiles.Rich);
        JsonNode? report = await session.Client.AskAsync("textDocument/diagnostic", new { textDocument = new { uri = "file:///a.hnote" } });
        Assert.Empty(report!["items"]!.AsArray());
        await session.LeaveAsync();
    });

    [Fact]
    public Task Hello_is_said_once() => Session.RunAsync(Profiles.Rich, async session =>
        Assert.Equal(LspError.InvalidRequest, (await session.Client.RefusalAsync("initialize", Profiles.Sparse)).Code));

    [Fact]
    public Task Questions_after_shutdown_are_refused() => Session.RunBareAsync(async session =>
    {
        await session.InitializeAsync(Profiles.Rich);
        await session.Client.AskAsync("shutdown", leaveOut: true);
        Assert.Equal(LspError.InvalidRequest, (await session.Client.RefusalAsync("textDocument/diagnostic", new { textDocument = new { uri = "file:///a.hnote" } })).Code);
        Assert.Equal(LspError.InvalidRequest, (await session.Client.RefusalAsync("shutdown")).Code);
        session.Client.Tell("exit");
        Assert.Equal(0, await session.ExitCodeAsync());
    });

    [Fact]
    public Task Leaving_without_goodbye_ends_with_1() => Session.RunBareAsync(async session =>
    {
        await session.InitializeAsync(Profiles.Rich);
        session.Client.Tell("exit");
        Assert.Equal(1, await session.ExitCodeAsync());
    });

    [Fact]
    public Task Leaving_before_hello_ends_with_1() => Session.RunBareAsync(async session =>
    {
        session.Client.Tell("exit");
        Assert.Equal(1, await session.ExitCodeAsync());
    });

    [Fact]
    public Task A_pipe_that_closes_ends_the_server() => Session.RunBareAsync(async session =>
    {
        await session.InitializeAsync(Profiles.Rich);
        session.CloseInput();
        Assert.Equal(1, await session.ExitCodeAsync());
    });

    /// <summary>An editor that is stopped in the middle reads nothing any more, and closes what it writes to.</summary>
    [Fact]
    public async Task An_output_that_nobody_reads_does_not_keep_the_server()
    {
        using Process process = Hnote.Start("lsp", "--today", Hnote.Today);
        Stream input = process.StandardInput.BaseStream;
        input.Write(FrameReader.Frame("{\"jsonrpc\":\"2.0\",\"id\":1,\"method\":\"initialize\",\"params\":{\"capabilities\":{}}}"));
        string text = string.Concat(Enumerable.Repeat("gumz pink\\n", 3_000));
        input.Write(FrameReader.Frame($"{{\"jsonrpc\":\"2.0\",\"method\":\"textDocument/didOpen\",\"params\":{{\"textDocument\":{{\"uri\":\"file:///a.hnote\",\"languageId\":\"hnote\",\"version\":1,\"text\":\"{text}\"}}}}}}"));
        for (int id = 2; id < 30; id++)
        {
            input.Write(FrameReader.Frame($"{{\"jsonrpc\":\"2.0\",\"id\":{id},\"method\":\"textDocument/semanticTokens/full\",\"params\":{{\"textDocument\":{{\"uri\":\"file:///a.hnote\"}}}}}}"));
        }

        input.Flush();
        process.StandardInput.Close();
        await process.WaitForExitAsync().WaitAsync(TimeSpan.FromSeconds(60));
        Assert.Equal(1, process.ExitCode);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task A_client_that_dies_takes_the_server_with_it(bool byOption)
    {
        using Process parent = Process.Start(new ProcessStartInfo("sleep", "600"))!;
        string[] option = byOption ? [$"--clientProcessId={parent.Id}"] : [];
        try
        {
            await Session.RunBareAsync(
                async session =>
                {
                    JsonObject profile = Profiles.Rich;
                    profile["processId"] = byOption ? null : parent.Id;
                    await session.InitializeAsync(profile);
                    EditedNote note = session.Open("pet Marlow\n");
                    await note.PullAsync();
                    parent.Kill();
                    Assert.Equal(1, await session.ExitCodeAsync());
                },
                faults: false,
                option);
        }
        finally
        {
            parent.Kill();
        }
    }

    [Fact]
    public Task Tracing_says_what_was_received() => Session.RunAsync(Profiles.Rich, async session =>
    {
        session.Client.Tell("$/setTrace", new { value = "verbose" });
        EditedNote note = session.Open("pet Marlow\n");
        await note.PullAsync();
        await note.PullAsync();
        JsonNode trace = (await session.Client.HearAsync("$/logTrace", said => ((string)said!["message"]!).Contains("textDocument/diagnostic", StringComparison.Ordinal)))!;
        Assert.Contains("ms", (string)trace["verbose"]!, StringComparison.Ordinal);
        session.Client.Tell("$/setTrace", new { value = "off" });
        await note.PullAsync();
        int before = session.Client.Heard.Count;
        await note.PullAsync();
        Assert.Equal(before, session.Client.Heard.Count);
    });
}
