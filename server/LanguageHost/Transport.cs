using System.IO.Pipes;
using System.Net.Sockets;
using HealthNotes.LanguageServer.Session;

namespace HealthNotes.LanguageHost;

/// <summary>The two ways between the client and us.</summary>
internal sealed record Transport(Stream Input, Stream Output)
{
    /// <summary>Opens what the options name.</summary>
    /// <exception cref="IOException">It can't be opened.</exception>
    public static async Task<Transport> OpenAsync(ServerOptions options)
    {
        try
        {
            return options switch
            {
                { Pipe: { } name } when await OpenPipeAsync(name).ConfigureAwait(false) is var pipe => new Transport(pipe, pipe),
                _ => new Transport(Console.OpenStandardInput(), Console.OpenStandardOutput()),
            };
        }
        catch (Exception problem) when (problem is SocketException or UnauthorizedAccessException or ArgumentException or TimeoutException)
        {
            throw new IOException(problem.Message, problem);
        }
    }

    /// <summary>The client waits for us at a pipe that it made; nobody is ever let in here.</summary>
    private static async Task<Stream> OpenPipeAsync(string name)
    {
        if (OperatingSystem.IsWindows())
        {
            const string Prefix = @"\\.\pipe\";
            string shortName = name.StartsWith(Prefix, StringComparison.OrdinalIgnoreCase) ? name[Prefix.Length..] : name;
            var pipe = new NamedPipeClientStream(".", shortName, PipeDirection.InOut, PipeOptions.Asynchronous | PipeOptions.CurrentUserOnly);
            await pipe.ConnectAsync(10_000).ConfigureAwait(false);
            return pipe;
        }

        const UnixFileMode Others = UnixFileMode.GroupWrite | UnixFileMode.OtherWrite;
        if ((File.GetUnixFileMode(name) & Others) != 0)
        {
            throw new IOException($"other users may connect to {name}; make the socket file with mode 0600");
        }

        var socket = new Socket(AddressFamily.Unix, SocketType.Stream, ProtocolType.Unspecified);
        try
        {
            await socket.ConnectAsync(new UnixDomainSocketEndPoint(name)).ConfigureAwait(false);
            return new NetworkStream(socket, ownsSocket: true);
        }
        catch
        {
            socket.Dispose();
            throw;
        }
    }
}
