using HealthNotes.LanguageServer.Rpc;
using HealthNotes.LanguageServer.Session;

namespace HealthNotes.LanguageHost;

/// <summary>Runs the server over streams until the client is done.</summary>
public static class LanguageServerHost
{
    private const int Chunk = 64 * 1024;
    private static readonly TimeSpan Moment = TimeSpan.FromMilliseconds(100);
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(1);

    /// <summary>Runs the server; the result is the exit code.</summary>
    public static async Task<int> RunAsync(ServerOptions options)
    {
        ArgumentNullException.ThrowIfNull(options);
        var log = new ServerLog(options.Log);
        log.Check();
        Transport transport;
        try
        {
            transport = await Transport.OpenAsync(options).ConfigureAwait(false);
        }
        catch (IOException problem)
        {
            log.Fault($"can't reach the client: {problem.Message}");
            return 1;
        }

        return await RunAsync(options, transport, log).ConfigureAwait(false);
    }

    private static async Task<int> RunAsync(ServerOptions options, Transport transport, ServerLog log)
    {
        var frames = new FrameWriter(new BufferedStream(transport.Output, Chunk), log.Note);
        Server? server = null;
        void Watch(int process) => ParentWatch.Start(process, server!, log);
        server = new Server(options, frames.Send, log, Watch);
        if (options.ClientProcessId is { } process)
        {
            Watch(process);
        }

        // a read that waits can't be taken back: it must neither keep the program from ending nor hold one of the few threads that answer
        new Thread(() => Listen(transport.Input, server, log)) { IsBackground = true, Name = "input" }.Start();
        int code = await server.Ended.ConfigureAwait(false);
        frames.Flush(Patience);
        return code;
    }

    private static void Listen(Stream input, Server server, ServerLog log)
    {
        try
        {
            var frames = new FrameReader(new BufferedStream(input, Chunk), log.Fault);
            while (frames.Next() is { } message)
            {
                server.Receive(message);
            }

            // a client in the middle of sending would be told of a broken pipe, not of the end
            _ = Task.Delay(Moment).ContinueWith(_ => server.End(), TaskScheduler.Default);
            input.CopyTo(Stream.Null);
        }
        catch (IOException broken)
        {
            log.Fault($"the connection broke: {broken.Message}");
        }

        server.End();
    }
}
