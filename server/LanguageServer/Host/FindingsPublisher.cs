using System.Collections.Concurrent;
using HealthNotes.LanguageServer.Convert;
using HealthNotes.LanguageServer.Protocol;
using HealthNotes.LanguageServer.State;

namespace HealthNotes.LanguageServer.Host;

/// <summary>
/// Sends findings to clients that want them pushed. There is at most one run a document at a time, started at once; a
/// version that has been overtaken while it was looked at publishes nothing, and what is published already is not sent again.
/// </summary>
internal sealed class FindingsPublisher(WorkspaceState state, Connection connection)
{
    private readonly ConcurrentDictionary<string, Run> runs = new();

    /// <summary>Looks at a document that has changed in any way.</summary>
    public void Look(string uri)
    {
        if (state.Current.Client.PullsDiagnostics)
        {
            return;
        }

        Run run = runs.GetOrAdd(uri, _ => new Run());
        if (run.Ask())
        {
            _ = Task.Run(() => LookAsync(uri, run));
        }
    }

    /// <summary>Looks at every open document again.</summary>
    public void LookAtAll()
    {
        foreach (string uri in state.Current.Open.Keys)
        {
            Look(uri);
        }
    }

    private async Task LookAsync(string uri, Run run)
    {
        int done;
        do
        {
            (done, CancellationToken overtaken) = run.Begin();
            try
            {
                await PublishAsync(uri, run, overtaken).ConfigureAwait(false);
            }
            catch (OperationCanceledException)
            {
                // the newer version is next
            }
            catch (Exception fault) when (fault is not OutOfMemoryException)
            {
                connection.Report("looking at a note", fault);
            }
        }
        while (!run.Rest(done));
    }

    private async Task PublishAsync(string uri, Run run, CancellationToken overtaken)
    {
        Workspace workspace = state.Current;
        OpenNote? note = workspace.Open.GetValueOrDefault(uri);
        Diagnostic[] diagnostics = note is null ? [] : Findings.Of(note, workspace, overtaken);
        overtaken.ThrowIfCancellationRequested();

        ulong? print = note is null ? null : Fingerprint.Of(diagnostics);
        if (print is not null && print == run.Published)
        {
            return;
        }

        run.Published = print;
        await connection.TellAsync("textDocument/publishDiagnostics", new PublishDiagnosticsParams(uri, note?.Document.Version, diagnostics)).ConfigureAwait(false);
    }

    /// <summary>The runs of one document.</summary>
    private sealed class Run
    {
        private readonly Lock gate = new();
        private CancellationTokenSource? current;
        private int wanted;
        private bool busy;

        /// <summary>What was sent last; null when nothing, or after the document was closed. Only the one that looks touches it.</summary>
        public ulong? Published { get; set; }

        /// <summary>Asks for a look. True when nobody looks yet; else the look that runs has been overtaken, and another follows.</summary>
        public bool Ask()
        {
            lock (gate)
            {
                wanted++;
                current?.Cancel();
                bool first = !busy;
                busy = true;
                return first;
            }
        }

        /// <summary>Starts a look at what is there now.</summary>
        public (int Number, CancellationToken Overtaken) Begin()
        {
            lock (gate)
            {
                current?.Dispose();
                current = new CancellationTokenSource();
                return (wanted, current.Token);
            }
        }

        /// <summary>Ends the run, unless there is more to look at.</summary>
        public bool Rest(int done)
        {
            lock (gate)
            {
                busy = wanted != done;
                if (!busy)
                {
                    current?.Dispose();
                    current = null;
                }

                return !busy;
            }
        }
    }
}
