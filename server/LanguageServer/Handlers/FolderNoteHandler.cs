using HealthNotes.Features.Documents;
using HealthNotes.Files;
using HealthNotes.LanguageServer.Convert;
using HealthNotes.LanguageServer.State;

namespace HealthNotes.LanguageServer.Handlers;

/// <summary>What is kept of a note that is not open.</summary>
internal static class FolderNoteHandler
{
    /// <summary>Reads the text and lets go of its tree.</summary>
    public static FolderNote Read(string uri, string text, Workspace workspace)
    {
        var document = Document.Open(uri, 0, new RulesFiles().Read(Uris.PathOf(uri), text), workspace.Today);
        return new FolderNote(uri, workspace.Client.PullsDiagnostics ? Findings.Of(document, null, workspace) : []);
    }
}
