using System.Diagnostics;
using System.Text.Json.Nodes;
using Xunit.Sdk;

namespace HealthNotes.Protocol.Tests.Support;

/// <summary>
/// One run of the server for one test. When the test fails, the whole exchange is part of the message; a fault inside the
/// server fails every test.
/// </summary>
internal sealed class Session : IDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);
    private static readonly string[] OfMessages = ["hnote lsp: expected a header", "hnote lsp: a message of ", "hnote lsp: the client stopped in the middle"];
    private readonly Process process;
    private readonly Exchange exchange = new();
    private readonly Task<string> errors;

    private Session(string[] arguments)
    {
        process = Hnote.Start(["lsp", "--today", Hnote.Today, .. arguments]);
        errors = process.StandardError.ReadToEndAsync();
        Client = new LspClient(process.StandardInput.BaseStream, process.StandardOutput.BaseStream, exchange);
        Answer("workspace/configuration", asked => new JsonArray([.. asked!["items"]!.AsArray().Select(_ => Settings.DeepClone())]));
        Answer("client/registerCapability", _ => null);
        Answer("window/workDoneProgress/create", _ => null);
        Answer("window/showDocument", _ => new JsonObject { ["success"] = true });
        Answer("workspace/diagnostic/refresh", _ => null);
        Answer("workspace/inlayHint/refresh", _ => null);
        Answer("workspace/codeLens/refresh", _ => null);
        Answer("workspace/semanticTokens/refresh", _ => null);
        Answer("workspace/applyEdit", _ => new JsonObject { ["applied"] = true });
    }

    public LspClient Client { get; }

    /// <summary>What the editor's settings say in our section.</summary>
    public JsonObject Settings { get; set; } = [];

    /// <summary>In which units the two have agreed to count.</summary>
    public Units Units { get; private set; }

    /// <summary>What the server said it can do.</summary>
    public JsonNode Capabilities { get; private set; } = new JsonObject();

    /// <summary>True when faults are what the test is about.</summary>
    public bool ExpectsFaults { get; init; }

    /// <summary>Runs a test with a client that has said hello, and says goodbye.</summary>
    public static Task RunAsync(JsonObject profile, Func<Session, Task> test) => RunAsync(profile, null, test);

    /// <summary>The same, with settings from the start.</summary>
    public static Task RunAsync(JsonObject profile, JsonObject? settings, Func<Session, Task> test) => RunBareAsync(async session =>
    {
        session.Settings = settings ?? [];
        await session.InitializeAsync(profile);
        await test(session);
        await session.LeaveAsync();
    });

    /// <summary>Runs a test from the very first byte.</summary>
    public static async Task RunBareAsync(Func<Session, Task> test, bool faults = false, params string[] arguments)
    {
        using var session = new Session(arguments) { ExpectsFaults = faults };
        try
        {
            await test(session);
            await session.CheckErrorsAsync();
        }
        catch (Exception failure)
        {
            session.process.Kill();
            throw new XunitException($"{failure.GetType().Name}: {failure.Message}\n\nstandard error:\n{await session.errors}\nexchange:\n{session.exchange}\n", failure);
        }
    }

    /// <summary>Says hello.</summary>
    public async Task<JsonNode> InitializeAsync(JsonObject profile)
    {
        JsonNode result = (await Client.AskAsync("initialize", profile))!;
        Capabilities = result["capabilities"]!;
        Units = new Units((string?)Capabilities["positionEncoding"] ?? "utf-16");
        Client.Tell("initialized", new JsonObject());
        return result;
    }

    /// <summary>Says goodbye; nothing may be wrong.</summary>
    public async Task LeaveAsync()
    {
        await Client.AskAsync("shutdown", leaveOut: true);
        Client.Tell("exit");
        Assert.Equal(0, await ExitCodeAsync());
    }

    /// <summary>Waits for the end of the program; what it said to the end must be the protocol.</summary>
    public async Task<int> ExitCodeAsync()
    {
        await process.WaitForExitAsync().WaitAsync(Patience);
        await Client.Ended.WaitAsync(Patience);
        Assert.DoesNotContain("   at ", exchange.ToString(), StringComparison.Ordinal);
        return process.ExitCode;
    }

    /// <summary>Standard error is empty, however the session ended; where the test is about faults, it says of the messages what was wrong with them, and no more.</summary>
    private async Task CheckErrorsAsync()
    {
        if (!process.HasExited)
        {
            process.Kill();
        }

        string[] said = (await errors).Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.DoesNotContain(said, line => !(ExpectsFaults && OfMessages.Any(start => line.StartsWith(start, StringComparison.Ordinal))));
    }

    /// <summary>Closes the pipe to the server.</summary>
    public void CloseInput() => process.StandardInput.Close();

    /// <summary>Opens a note.</summary>
    public EditedNote Open(string text, string? uri = null) => EditedNote.Open(this, text, uri);

    /// <summary>Answers one of the server's requests.</summary>
    public void Answer(string method, Func<JsonNode?, JsonNode?> answer) => Client.Answers[method] = answer;

    public void Dispose()
    {
        if (!process.HasExited)
        {
            process.Kill();
        }

        process.Dispose();
    }
}
