using HealthNotes.LanguageServer.State;
using StreamJsonRpc;

namespace HealthNotes.LanguageServer.Host;

/// <summary>Puts the server together and runs it until the client is done.</summary>
public static class LanguageServerHost
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(3);

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
        var lifecycle = new Lifecycle();
        var state = new WorkspaceState(new Workspace(options.Today ?? Clock.Today));
        var handler = new MessageHandler(transport, ProtocolFormatter.Create(), log);
        using var connection = new Connection(handler, log);
        var publisher = new FindingsPublisher(state, connection);
        var client = new Client(connection, state);
        var scan = new FolderScan(state, client, connection, log);
        var events = new ServerEvents(state, lifecycle, connection, client, scan, publisher, log);
        var changes = new Changes(state, lifecycle, publisher, events, options.Version);
        handler.Unread = () => changes.LoseTrack(null);
        connection.AddLocalRpcTarget(RpcTargetMetadata.FromShape<IChanges>(), changes, null);
        connection.AddLocalRpcTarget(RpcTargetMetadata.FromShape<IReads>(), new Reads(state, lifecycle, new Commands(client, events)), null);
        if (options.Today is null)
        {
            _ = new DayWatch(state, events.DayChanged).WatchAsync(lifecycle.Ended);
        }

        if (options.ClientProcessId is { } process)
        {
            ParentWatch.Start(process, lifecycle, log);
        }

        connection.StartListening();
        _ = connection.Completion.ContinueWith(
            done =>
            {
                if (done.Exception is { } broken)
                {
                    log.Fault($"the connection broke: {broken.InnerException?.Message}");
                }

                lifecycle.End();
            },
            TaskScheduler.Default);
        _ = EndAfterAsync(transport.Closed, lifecycle);
        return await lifecycle.Ended.ConfigureAwait(false);
    }

    /// <summary>A client that has gone away may have left an output that nobody reads: what is still to be said there is waited for, and not for ever.</summary>
    private static async Task EndAfterAsync(Task closed, Lifecycle lifecycle)
    {
        await closed.ConfigureAwait(false);
        await Task.Delay(Patience).ConfigureAwait(false);
        lifecycle.End();
    }
}
