using System.Runtime.InteropServices.JavaScript;
using System.Runtime.Versioning;
using System.Text;
using HealthNotes.LanguageServer.Rpc;
using HealthNotes.LanguageServer.Session;

[assembly: SupportedOSPlatform("browser")]

namespace HealthNotes.Web;

/// <summary>The server in a worker: each message of the page is the body of a message of the protocol.</summary>
internal static partial class Program
{
    private static readonly Server Server = new(new ServerOptions { Version = "web", Today = Day() }, Send, new ServerLog(null), _ => { });

    private static async Task Main() => await Server.Ended.ConfigureAwait(false);

    /// <summary>Takes a message of the page.</summary>
    [JSExport]
    internal static void Receive(string json) => Server.Receive(Encoding.UTF8.GetBytes(json));

    /// <summary>Puts a picture, or another file, where the server finds it beside a note. Files live as long as the worker.</summary>
    [JSExport]
    internal static void Keep(string path, byte[] bytes)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(path) ?? "/");
        File.WriteAllBytes(path, bytes);
    }

    [JSImport("post", "host")]
    private static partial void Post(string json);

    [JSImport("today", "host")]
    private static partial string Today();

    private static void Send(ReadOnlyMemory<byte> body) => Post(Encoding.UTF8.GetString(body.Span));

    /// <summary>The day that a test names; null for the clock's.</summary>
    private static DateOnly? Day() => DateOnly.TryParseExact(Today(), "yyyy-MM-dd", out DateOnly day) ? day : null;
}
