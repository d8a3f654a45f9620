using System.Diagnostics;
using System.Text.Json;
using HealthNotes.EndToEnd.Support;
using HealthNotes.Protocol.Tests.Support;
using HealthNotes.Tests.Support;
using Microsoft.Playwright;

namespace HealthNotes.EndToEnd.Web;

/// <summary>One server: what it answers in a browser's worker is what the program answers, to the last byte.</summary>
public class SameAnswersTests(Browser browser) : IClassFixture<Browser>
{
    private const string Uri = "file:///notes/a.hnote";

    /// <summary>Sends messages to a worker of its own and gives back what it says, until the last request is answered.</summary>
    private const string Ask =
        """
        ([today, messages]) => new Promise((resolve) => {
          const said = [];
          const worker = new Worker('worker.js', { type: 'module', name: today });
          worker.onmessage = (event) => {
            said.push(event.data);
            const { id, method } = JSON.parse(event.data);
            if (id === 9 && method === undefined) {
              worker.terminate();
              resolve(said);
            }
          };
          messages.forEach((message) => worker.postMessage(message));
        })
        """;

    public static TheoryData<string> Notes => [.. NotePages.Notes];

    [SkippableTheory]
    [MemberData(nameof(Notes))]
    public async Task Findings_hints_and_page_are_the_same(string note)
    {
        using WebEditor editor = await WebEditor.StartAsync();
        await using IBrowserContext context = await (await browser.OpenAsync()).NewContextAsync();
        IPage page = await context.NewPageAsync();
        await page.GotoAsync(editor.Address);
        string[] messages = Messages(await File.ReadAllTextAsync(Repository.PathOf(note)));
        string[] inBrowser = await page.EvaluateAsync<string[]>(Ask, new object[] { "2026-11-25", messages });
        string[] native = await NativeAsync(messages);
        foreach (int id in new[] { 2, 3, 4, 9 })
        {
            string expected = ResultOf(native, id);
            Assert.NotEqual("", expected);
            Assert.Equal(expected, ResultOf(inBrowser, id));
        }
    }

    private static string[] Messages(string text)
    {
        string[] messages =
        [
            """{"jsonrpc":"2.0","id":1,"method":"initialize","params":{"capabilities":{"textDocument":{"diagnostic":{},"publishDiagnostics":{"relatedInformation":true}}}}}""",
            """{"jsonrpc":"2.0","method":"initialized","params":{}}""",
            """{"jsonrpc":"2.0","method":"textDocument/didOpen","params":{"textDocument":{"uri":"URI","languageId":"hnote","version":1,"text":TEXT}}}""",
            """{"jsonrpc":"2.0","id":2,"method":"textDocument/diagnostic","params":{"textDocument":{"uri":"URI"}}}""",
            """{"jsonrpc":"2.0","id":3,"method":"textDocument/inlayHint","params":{"textDocument":{"uri":"URI"},"range":{"start":{"line":0,"character":0},"end":{"line":9999,"character":0}}}}""",
            """{"jsonrpc":"2.0","id":4,"method":"textDocument/semanticTokens/full","params":{"textDocument":{"uri":"URI"}}}""",
            """{"jsonrpc":"2.0","id":9,"method":"healthNotes/page","params":{"uri":"URI"}}""",
        ];
        return [.. messages.Select(message => message.Replace("URI", Uri, StringComparison.Ordinal).Replace("TEXT", JsonSerializer.Serialize(text), StringComparison.Ordinal))];
    }

    private static string ResultOf(string[] said, int id)
    {
        foreach (string message in said)
        {
            using var document = JsonDocument.Parse(message);
            if (document.RootElement.TryGetProperty("id", out JsonElement found) && found.ValueKind == JsonValueKind.Number && found.GetInt32() == id && document.RootElement.TryGetProperty("result", out JsonElement result))
            {
                return result.GetRawText();
            }
        }

        return "";
    }

    private static async Task<string[]> NativeAsync(string[] messages)
    {
        using Process process = Process.Start(new ProcessStartInfo(BuiltServer.Command[0], BuiltServer.Command.Skip(1)) { RedirectStandardInput = true, RedirectStandardOutput = true })!;
        try
        {
            foreach (string message in messages)
            {
                process.StandardInput.BaseStream.Write(FrameReader.Frame(message));
            }

            process.StandardInput.BaseStream.Flush();
            var frames = new FrameReader(process.StandardOutput.BaseStream);
            List<string> said = [];
            while (!new[] { 2, 3, 4, 9 }.All(id => ResultOf([.. said], id).Length > 0))
            {
                said.Add(await frames.ReadAsync().WaitAsync(TimeSpan.FromSeconds(60)) ?? throw new EndOfStreamException());
            }

            return [.. said];
        }
        finally
        {
            process.Kill();
        }
    }
}
