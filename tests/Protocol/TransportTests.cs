using System.Diagnostics;
using System.Net.Sockets;
using System.Text.Json.Nodes;
using HealthNotes.Protocol.Tests.Support;

namespace HealthNotes.Protocol.Tests;

/// <summary>The other way to the server: a socket file that the client made, where it waits.</summary>
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
    public async Task There_is_no_port()
    {
        using Process process = Hnote.Start("lsp", "--port", "50001");
        process.StandardInput.Close();
        Assert.Contains("--port", await process.StandardError.ReadToEndAsync(), StringComparison.Ordinal);
        await process.WaitForExitAsync();
        Assert.Equal(2, process.ExitCode);
    }

    [SkippableTheory]
    [InlineData(true, "other users may connect")]
    [InlineData(false, "can't reach the client")]
    public async Task A_socket_file_of_everybody_or_of_nobody_is_refused(bool there, string why)
    {
        Skip.If(OperatingSystem.IsWindows(), "there are no socket files on Windows");
        string path = Path.Combine(Path.GetTempPath(), $"hnote-{Guid.NewGuid():n}.sock");
        using var listener = new Socket(AddressFamily.Unix, SocketType.Stream, ProtocolType.Unspecified);
        if (there)
        {
            listener.Bind(new UnixDomainSocketEndPoint(path));
            listener.Listen(1);
            File.SetUnixFileMode(path, (UnixFileMode)0b110_110_110);
        }

        try
        {
            using Process process = Hnote.Start("lsp", "--pipe", path);
            Assert.Contains(why, await process.StandardError.ReadToEndAsync(), StringComparison.Ordinal);
            await process.WaitForExitAsync().WaitAsync(TimeSpan.FromSeconds(60));
            Assert.Equal(1, process.ExitCode);
            Assert.Equal(there, File.Exists(path));
        }
        finally
        {
            File.Delete(path);
        }
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
