using System.IO.Pipelines;
using System.IO.Pipes;
using System.Net.Sockets;

namespace HealthNotes.LanguageServer.Host;

/// <summary>The two ways between the client and us.</summary>
internal sealed record Transport(PipeReader Input, PipeWriter Output)
{
    /// <summary>Done when the client has closed standard input.</summary>
    public Task Closed { get; init; } = new TaskCompletionSource().Task;

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
        var closed = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        void Read()
        {
            Copy(Console.OpenStandardInput(), pipe.Writer);
            closed.SetResult();
        }

        var thread = new Thread(Read) { IsBackground = true, Name = "standard input" };
        thread.Start();
        return new Transport(pipe.Reader, PipeWriter.Create(new DirectStream(Console.OpenStandardOutput()))) { Closed = closed.Task };
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

    /// <summary>The client waits for us at a pipe that it made; nobody is ever let in here.</summary>
    private static async Task<Stream> OpenPipeAsync(string name)
    {
        if (OperatingSystem.IsWindows())
        {
            const string Prefix = @"\\.\pipe\";
            string shortName = name.StartsWith(Prefix, StringComparison.OrdinalIgnoreCase) ? name[Prefix.Length..] : name;
            var pipe = new NamedPipeClientStream(".", shortName, PipeDirection.InOut, System.IO.Pipes.PipeOptions.Asynchronous | System.IO.Pipes.PipeOptions.CurrentUserOnly);
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
