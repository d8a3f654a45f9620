using System.Diagnostics;
using System.Net;
using System.Net.Sockets;
using HealthNotes.EndToEnd.Support;

namespace HealthNotes.EndToEnd.Web;

/// <summary>The program that gives the web editor to this computer's browser, as a user starts it.</summary>
internal sealed class WebEditor : IDisposable
{
    private readonly Process process;

    private WebEditor(Process process, string address, int port)
    {
        this.process = process;
        Address = address;
        Origin = $"http://127.0.0.1:{port}";
    }

    /// <summary>The address that it printed, with its token.</summary>
    public string Address { get; }

    public string Origin { get; }

    public static async Task<WebEditor> StartAsync()
    {
        string[] program = [.. BuiltServer.Command.TakeWhile(part => part != "lsp")];
        string beside = Path.Combine(Path.GetDirectoryName(program[^1])!, "web", "index.html");
        ExternalTool.Need(File.Exists(beside), $"the web editor is not beside {program[^1]}: bash editor-client/web/build.sh, then build again");
        int port = FreePort();
        var start = new ProcessStartInfo(program[0], [.. program.Skip(1), "web", "--port", $"{port}"]) { RedirectStandardOutput = true };
        Process process = Process.Start(start)!;
        string line = await process.StandardOutput.ReadLineAsync().WaitAsync(TimeSpan.FromSeconds(60)) ?? "";
        return new WebEditor(process, line.Split(' ').Single(word => word.StartsWith("http", StringComparison.Ordinal)), port);
    }

    public void Dispose()
    {
        process.Kill();
        process.Dispose();
    }

    private static int FreePort()
    {
        using var socket = new TcpListener(IPAddress.Loopback, 0);
        socket.Start();
        return ((IPEndPoint)socket.LocalEndpoint).Port;
    }
}
