using HealthNotes.LanguageServer.Rpc;
using HealthNotes.LanguageServer.State;

namespace HealthNotes.LanguageServer.Session;

/// <summary>
/// The language server wherever it runs: bodies of messages go in and out, and how they travel is the host's. It starts no process and
/// reads no stream.
/// </summary>
public sealed class Server
{
    private readonly Lifecycle lifecycle = new();
    private readonly Dispatch dispatch;

    /// <summary>Puts the server together.</summary>
    /// <param name="options">How it was started.</param>
    /// <param name="send">Sends the body of one message, from any thread, and does not wait for the client.</param>
    /// <param name="log">Where trouble is reported.</param>
    /// <param name="watchProcess">Called with the process that the server should end with.</param>
    public Server(ServerOptions options, Action<ReadOnlyMemory<byte>> send, ServerLog log, Action<int> watchProcess)
    {
        ArgumentNullException.ThrowIfNull(options);
        var state = new WorkspaceState(new Workspace(options.Today ?? Clock.Today));
        var connection = new Connection(send, log);
        var publisher = new FindingsPublisher(state, connection);
        var client = new Client(connection, state);
        var scan = new FolderScan(state, client, connection, log);
        var events = new ServerEvents(state, connection, client, scan, publisher, log, watchProcess);
        var changes = new Changes(state, lifecycle, publisher, events, options.Version);
        var routes = new Routes(state, lifecycle, changes, publisher, new Commands(client, events), events);
        dispatch = new Dispatch(routes.All, connection, log, () => changes.LoseTrack(null));
        if (options.Today is null)
        {
            _ = new DayWatch(state, events.ReadAgain).WatchAsync(Ended);
        }
    }

    /// <summary>Done when the session is over, with the exit code.</summary>
    public Task<int> Ended => lifecycle.Ended;

    /// <summary>Takes the body of a message, in the order they come in.</summary>
    public void Receive(ReadOnlySpan<byte> message) => dispatch.Receive(message);

    /// <summary>Ends the session: the client is gone.</summary>
    public void End() => lifecycle.End();
}
