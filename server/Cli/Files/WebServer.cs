using System.Collections.Frozen;
using System.Net;
using System.Security.Cryptography;
using System.Text;
using HealthNotes.Files;

namespace HealthNotes.Cli.Files;

/// <summary>
/// Gives the files of the web editor to this computer's browser and to nobody else: it listens on the loopback, and answers only who came
/// by the address with the token. It holds no note and takes none.
/// </summary>
/// <param name="files">Where each file lies, by its path in the address.</param>
/// <param name="port">The port: the browser keeps notes by it, so it is the same each time.</param>
internal sealed class WebServer(IReadOnlyDictionary<string, string> files, int port)
{
    private static readonly FrozenDictionary<string, string> Types = new Dictionary<string, string>
    {
        [".html"] = "text/html; charset=utf-8",
        [".js"] = "text/javascript; charset=utf-8",
        [".css"] = "text/css; charset=utf-8",
        [".wasm"] = "application/wasm",
        [".json"] = "application/json",
        [".png"] = "image/png",
        [".webmanifest"] = "application/manifest+json",
    }.ToFrozenDictionary();

    private readonly string token = Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(16));

    private string Origin => $"http://127.0.0.1:{port}";

    /// <summary>Where the user's browser starts.</summary>
    public string Address => $"{Origin}/{token}";

    /// <summary>Answers until it is stopped.</summary>
    /// <param name="ready">Called when the address can be opened.</param>
    /// <param name="stop">Ends it.</param>
    /// <exception cref="RefusedException">The port can't be listened on.</exception>
    public async Task RunAsync(Action ready, CancellationToken stop)
    {
        using var listener = new HttpListener();
        listener.Prefixes.Add(Origin + "/");
        try
        {
            listener.Start();
        }
        catch (HttpListenerException)
        {
            throw new RefusedException($"port {port} is in use; name another one with --port (a browser keeps the notes of each port apart)");
        }

        using CancellationTokenRegistration end = stop.Register(listener.Stop);
        ready();
        while (!stop.IsCancellationRequested)
        {
            try
            {
                HttpListenerContext context = await listener.GetContextAsync().ConfigureAwait(false);
                _ = Task.Run(() => Answer(context), CancellationToken.None);
            }
            catch (Exception ended) when (ended is HttpListenerException or ObjectDisposedException or InvalidOperationException)
            {
                // stopped, or one request that broke off
            }
        }
    }

    private void Answer(HttpListenerContext context)
    {
        try
        {
            using HttpListenerResponse response = context.Response;
            response.Headers["X-Content-Type-Options"] = "nosniff";
            response.Headers["Cross-Origin-Resource-Policy"] = "same-origin";
            response.Headers["Referrer-Policy"] = "no-referrer";
            response.Headers["Cache-Control"] = "no-cache";
            Answer(context.Request, response);
        }
        catch (Exception gone) when (gone is HttpListenerException or IOException or ObjectDisposedException or InvalidOperationException)
        {
            // the browser did not wait
        }
    }

    private void Answer(HttpListenerRequest request, HttpListenerResponse response)
    {
        string path = request.Url?.AbsolutePath ?? "";
        bool own = request.UserHostName == $"127.0.0.1:{port}"
            && (request.Headers["Origin"] ?? Origin) == Origin
            && request.Headers["Sec-Fetch-Site"] is null or "same-origin" or "none";
        if (request.HttpMethod is not ("GET" or "HEAD") || !own)
        {
            Say(response, HttpStatusCode.Forbidden, "Refused.");
        }
        else if (Same(path, "/" + token))
        {
            response.Headers["Set-Cookie"] = $"hnote-{port}={token}; Path=/; HttpOnly; SameSite=Strict";
            response.Redirect("/");
        }
        else if (!Same(request.Cookies[$"hnote-{port}"]?.Value ?? "", token))
        {
            Say(response, HttpStatusCode.Forbidden, "Open the address that hnote printed.");
        }
        else if (files.TryGetValue(path == "/" ? "index.html" : path[1..], out string? file))
        {
            byte[] bytes = File.ReadAllBytes(file);
            response.ContentType = Types.GetValueOrDefault(Path.GetExtension(file), "application/octet-stream");
            response.ContentLength64 = bytes.Length;
            if (request.HttpMethod == "GET")
            {
                response.OutputStream.Write(bytes);
            }
        }
        else
        {
            Say(response, HttpStatusCode.NotFound, "There is no such file.");
        }
    }

    private static bool Same(string given, string wanted) => CryptographicOperations.FixedTimeEquals(Encoding.UTF8.GetBytes(given), Encoding.UTF8.GetBytes(wanted));

    private static void Say(HttpListenerResponse response, HttpStatusCode code, string text)
    {
        byte[] bytes = Encoding.UTF8.GetBytes(text);
        response.StatusCode = (int)code;
        response.ContentType = "text/plain; charset=utf-8";
        response.ContentLength64 = bytes.Length;
        response.OutputStream.Write(bytes);
    }
}
