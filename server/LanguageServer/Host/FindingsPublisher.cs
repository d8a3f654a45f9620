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
        lock (run)
        {
            run.Wanted++;
            if (run.Busy)
            {
                return;
            }

            run.Busy = true;
        }

        _ = Task.Run(() => LookAsync(uri, run));
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
            done = run.Read();
            try
            {
                await PublishAsync(uri, run, done).ConfigureAwait(false);
            }
            catch (Exception fault) when (fault is not OutOfMemoryException)
            {
                connection.Report("looking at a note", fault);
            }
        }
        while (!run.Rest(done));
    }

    private async Task PublishAsync(string uri, Run run, int wanted)
    {
        Workspace workspace = state.Current;
        OpenNote? note = workspace.Open.GetValueOrDefault(uri);
        Diagnostic[] diagnostics = note is null ? [] : Findings.Of(note, workspace);
        if (run.Read() != wanted)
        {
            return;
        }

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
        /// <summary>How often it was asked to look.</summary>
        public int Wanted { get; set; }

        /// <summary>True while somebody looks.</summary>
        public bool Busy { get; set; }

        /// <summary>What was sent last; null when nothing, or after the document was closed. Only the one that looks touches it.</summary>
        public ulong? Published { get; set; }

        public int Read()
        {
            lock (this)
            {
                return Wanted;
            }
        }

        /// <summary>Ends the run, unless there is more to look at.</summary>
        public bool Rest(int done)
        {
            lock (this)
            {
                Busy = Wanted != done;
                return !Busy;
            }
        }
    }
}
