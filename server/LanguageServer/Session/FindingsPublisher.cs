using System.Collections.Concurrent;
using HealthNotes.LanguageServer.Convert;
using HealthNotes.LanguageServer.Protocol;
using HealthNotes.LanguageServer.Rpc;
using HealthNotes.LanguageServer.State;

namespace HealthNotes.LanguageServer.Session;

/// <summary>
/// Sends findings to clients that want them pushed, and to those that announce a pull and never make one: a first pull ends the
/// pushing. There is at most one run a document at a time, started at once; a
/// version that has been overtaken while it was looked at publishes nothing, and what is published already is not sent again.
/// </summary>
internal sealed class FindingsPublisher(WorkspaceState state, Connection connection)
{
    /// <summary>A client that pulls does so at once after it opens a note: so long it gets nothing twice.</summary>
    private static readonly TimeSpan Grace = TimeSpan.FromMilliseconds(250);

    /// <summary>So many lines take long enough for what could not be read to be shown before the rules are done.</summary>
    private const int LongNote = 2_000;

    private readonly ConcurrentDictionary<string, Run> runs = new();
    private readonly Lazy<Task> graceOver = new(() => Task.Delay(Grace));
    private volatile bool pulled;

    /// <summary>The client asks by itself: what was pushed so far is taken back, so that nothing is shown twice.</summary>
    public void Pulled()
    {
        if (!pulled && state.Current.Client.PullsDiagnostics)
        {
            pulled = true;
            foreach ((string uri, _) in runs.Where(run => run.Value.Published is not null))
            {
                connection.Tell("textDocument/publishDiagnostics", new PublishDiagnosticsParams(uri, null, []));
            }
        }
    }

    /// <summary>Looks at a document that has changed in any way.</summary>
    public void Look(string uri)
    {
        if (pulled)
        {
            return;
        }

        if (state.Current.Client.PullsDiagnostics && !graceOver.Value.IsCompleted)
        {
            graceOver.Value.ContinueWith(_ => Look(uri), TaskScheduler.Default);
            return;
        }

        Run run = runs.GetOrAdd(uri, _ => new Run());
        if (run.Ask())
        {
            _ = Task.Run(() => LookNow(uri, run));
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

    private void LookNow(string uri, Run run)
    {
        bool rests;
        do
        {
            using var overtaken = new CancellationTokenSource();
            int number = run.Begin(overtaken.Cancel);
            try
            {
                Publish(uri, run, overtaken.Token);
            }
            catch (OperationCanceledException)
            {
                // the newer version is next
            }
            catch (Exception fault) when (fault is not OutOfMemoryException)
            {
                connection.Report("looking at a note", fault);
            }

            rests = run.End(number);
        }
        while (!rests);
    }

    private void Publish(string uri, Run run, CancellationToken overtaken)
    {
        Workspace workspace = state.Current;
        OpenNote? note = workspace.Open.GetValueOrDefault(uri);
        // that nothing is wrong is only shown when the rules are done
        if (note is { IsLost: false } && run.Published is null && note.Document.Syntax.Lines.Length >= LongNote
            && Findings.Unread(note.Document, workspace.Client) is { Length: > 0 } unread)
        {
            Send(unread);
        }

        Send(note is null ? [] : Findings.Of(note, workspace, overtaken));

        void Send(Diagnostic[] diagnostics)
        {
            overtaken.ThrowIfCancellationRequested();
            ulong? print = note is null ? null : Fingerprint.Of(diagnostics);
            if (!pulled && (print is null || print != run.Published))
            {
                run.Published = print;
                connection.Tell("textDocument/publishDiagnostics", new PublishDiagnosticsParams(uri, note?.Document.Version, diagnostics));
            }
        }
    }

    /// <summary>The runs of one document.</summary>
    private sealed class Run
    {
        private readonly Lock gate = new();
        private Action? overtake;
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
                overtake?.Invoke();
                bool first = !busy;
                busy = true;
                return first;
            }
        }

        /// <summary>Starts a look at what is there now; <paramref name="whenOvertaken"/> is called when something newer is.</summary>
        public int Begin(Action whenOvertaken)
        {
            lock (gate)
            {
                overtake = whenOvertaken;
                return wanted;
            }
        }

        /// <summary>Ends a look. True when there is nothing more to look at.</summary>
        public bool End(int number)
        {
            lock (gate)
            {
                overtake = null;
                busy = wanted != number;
                return !busy;
            }
        }
    }
}
