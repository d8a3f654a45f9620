using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Net.Sockets;
using System.Text.Json.Nodes;
using HealthNotes.Protocol.Tests.Support;

namespace HealthNotes.Protocol.Tests;

/// <summary>The other ways to the server: a socket file and a port of this machine, where the client waits for it.</summary>
public class TransportTests
{
    [Fact]
    public async Task Over_a_socket_file()
    {
        string path = Path.Combine(Path.GetTempPath(), $"hnote-{Guid.NewGuid():n}.sock");
        using var listener = new Socket(AddressFamily.Unix, SocketType.Stream, ProtocolType.Unspecified);
        listener.Bind(new UnixDomainSocketEndPoint(path));
        try
        {
            await TalkAsync(listener, "--pipe", path);
        }
        finally
        {
            File.Delete(path);
        }
    }

    [Fact]
    public async Task Over_a_port()
    {
        using var listener = new Socket(AddressFamily.InterNetwork, SocketType.Stream, ProtocolType.Tcp);
        listener.Bind(new IPEndPoint(IPAddress.Loopback, 0));
        await TalkAsync(listener, "--port", ((IPEndPoint)listener.LocalEndPoint!).Port.ToString(CultureInfo.InvariantCulture));
    }

    private static async Task TalkAsync(Socket listener, params string[] options)
    {
        listener.Listen(1);
        using Process process = Hnote.Start(["lsp", "--today", Hnote.Today, .. options]);
        Task<string> output = process.StandardOutput.ReadToEndAsync();
        Task<string> errors = process.StandardError.ReadToEndAsync();
        try
        {
            using Socket connection = await listener.AcceptAsync().WaitAsync(TimeSpan.FromSeconds(60));
            await using var stream = new NetworkStream(connection);
            var client = new LspClient(stream, stream, new Exchange());
            JsonNode hello = (await client.AskAsync("initialize", Profiles.Sparse))!;
            Assert.Equal("hnote", (string?)hello["serverInfo"]!["name"]);
            client.Tell("initialized", new JsonObject());
            client.Tell("textDocument/didOpen", new { textDocument = new { uri = "file:///a.hnote", languageId = "hnote", version = 1, text = "specis dog\n" } });
            await client.HearAsync("textDocument/publishDiagnostics", said => said!["diagnostics"]!.AsArray().Count > 0);
            await client.AskAsync("shutdown", leaveOut: true);
            client.Tell("exit");
            await process.WaitForExitAsync().WaitAsync(TimeSpan.FromSeconds(60));
            Assert.Equal(0, process.ExitCode);
            Assert.Equal("", await output);
            Assert.Equal("", await errors);
        }
        finally
        {
            if (!process.HasExited)
            {
                process.Kill();
            }
        }
    }
}
