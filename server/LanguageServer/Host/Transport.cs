using System.IO.Pipelines;
using System.IO.Pipes;
using System.Net;
using System.Net.Sockets;

namespace HealthNotes.LanguageServer.Host;

/// <summary>The two ways between the client and us.</summary>
internal sealed record Transport(PipeReader Input, PipeWriter Output)
{
    private const int Chunk = 16 * 1024;

    /// <summary>Opens what the options name.</summary>
    /// <exception cref="IOException">It can't be opened.</exception>
    public static async Task<Transport> OpenAsync(ServerOptions options)
    {
        try
        {
            return options switch
            {
                { Pipe: { } name } => Over(await OpenPipeAsync(name).ConfigureAwait(false)),
                { Port: { } port } => Over(await OpenSocketAsync(new IPEndPoint(IPAddress.Loopback, port)).ConfigureAwait(false)),
                _ => Standard(),
            };
        }
        catch (Exception problem) when (problem is SocketException or UnauthorizedAccessException or ArgumentException or TimeoutException)
        {
            throw new IOException(problem.Message, problem);
        }
    }

    private static Transport Over(Stream stream) => new(PipeReader.Create(stream), PipeWriter.Create(stream));

    /// <summary>
    /// Standard input is read by a thread of its own: a read that waits can't be taken back, and must neither keep the
    /// program from ending nor hold one of the few threads that answer.
    /// </summary>
    private static Transport Standard()
    {
        var pipe = new Pipe(new System.IO.Pipelines.PipeOptions(readerScheduler: PipeScheduler.Inline, writerScheduler: PipeScheduler.Inline, pauseWriterThreshold: 0, useSynchronizationContext: false));
        var thread = new Thread(() => Copy(Console.OpenStandardInput(), pipe.Writer)) { IsBackground = true, Name = "standard input" };
        thread.Start();
        return new Transport(pipe.Reader, PipeWriter.Create(new DirectStream(Console.OpenStandardOutput())));
    }

    private static void Copy(Stream input, PipeWriter writer)
    {
        Exception? problem = null;
        try
        {
            while (true)
            {
                int read = input.Read(writer.GetSpan(Chunk));
                if (read == 0)
                {
                    break;
                }

                writer.Advance(read);
                ValueTask<FlushResult> flushed = writer.FlushAsync();
                if ((flushed.IsCompleted ? flushed.Result : flushed.AsTask().GetAwaiter().GetResult()).IsCompleted)
                {
                    break;
                }
            }
        }
        catch (IOException broken)
        {
            problem = broken;
        }

        writer.Complete(problem);
    }

    /// <summary>Some clients wait for us at the socket, others expect us to wait for them: whoever is there first waits.</summary>
    private static async Task<Stream> OpenSocketAsync(EndPoint place)
    {
        var socket = NewSocket(place);
        try
        {
            await socket.ConnectAsync(place).ConfigureAwait(false);
            if (place is IPEndPoint && Equals(socket.LocalEndPoint, socket.RemoteEndPoint))
            {
                // where nobody listens, a port of the passing kind can end up connected to itself
                throw new SocketException((int)SocketError.ConnectionRefused);
            }
        }
        catch (SocketException)
        {
            socket.Dispose();
            using Socket waiting = NewSocket(place);
            waiting.Bind(place);
            waiting.Listen(1);
            socket = await waiting.AcceptAsync().ConfigureAwait(false);
        }

        if (place is IPEndPoint)
        {
            socket.NoDelay = true;
        }

        return new NetworkStream(socket, ownsSocket: true);
    }

    private static Socket NewSocket(EndPoint place) =>
        new(place.AddressFamily, SocketType.Stream, place is IPEndPoint ? ProtocolType.Tcp : ProtocolType.Unspecified);

    private static async Task<Stream> OpenPipeAsync(string name)
    {
        if (!OperatingSystem.IsWindows())
        {
            return await OpenSocketAsync(new UnixDomainSocketEndPoint(name)).ConfigureAwait(false);
        }

        const string Prefix = @"\\.\pipe\";
        string shortName = name.StartsWith(Prefix, StringComparison.OrdinalIgnoreCase) ? name[Prefix.Length..] : name;
        var pipe = new NamedPipeClientStream(".", shortName, PipeDirection.InOut, System.IO.Pipes.PipeOptions.Asynchronous);
        await pipe.ConnectAsync(10_000).ConfigureAwait(false);
        return pipe;
    }
}
