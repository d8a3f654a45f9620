using HealthNotes.Grammar.Vocabulary;
using HealthNotes.LanguageServer.Protocol;

namespace HealthNotes.LanguageServer.Host;

/// <summary>What changes set going outside of the documents.</summary>
internal sealed class ServerEvents(ServerLog log, Lifecycle lifecycle, string version)
{
    /// <summary>The version of <c>hnote</c>.</summary>
    public string Version => version;

    /// <summary>The client has said what it can do.</summary>
    public void Initialized(InitializeParams parameters)
    {
        if (parameters.ProcessId is { } client)
        {
            ParentWatch.Start(client, lifecycle, log);
        }

        // The answer goes out first; the tables are read while the client is still busy with it.
        _ = Task.Run(() => NoteVocabulary.Default);
    }

    /// <summary>The client is ready to be asked.</summary>
    public void Ready() => log.Note("the client is ready");

    public void SetTrace(string? value) => log.Note($"trace: {value}");

    public void Note(string line) => log.Note(line);

    public void Failed(string method, Exception fault) => log.Fault($"a fault in {method}, the session ends: {fault}");
}
