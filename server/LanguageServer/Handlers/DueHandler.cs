using HealthNotes.Features.Documents;
using HealthNotes.Files;
using HealthNotes.LanguageServer.Convert;
using HealthNotes.LanguageServer.Protocol;
using HealthNotes.LanguageServer.State;
using HealthNotes.Record.Due;
using HealthNotes.Rendering.Model;

namespace HealthNotes.LanguageServer.Handlers;

/// <summary>Our own request <c>healthNotes/due</c>.</summary>
internal static class DueHandler
{
    /// <summary>The name of the request: a contract with the editors that list what is due.</summary>
    public const string Method = "healthNotes/due";

    /// <summary>What is due by an open note, or by a text, in the order of the visit page; null where there is neither.</summary>
    public static DueResult? Of(Workspace workspace, DueParams parameters, CancellationToken token)
    {
        Document? document = workspace.Find(parameters.Uri)
            ?? (parameters.Text is { } text ? Document.Open(parameters.Uri, 0, new RulesFiles().Read(Uris.PathOf(parameters.Uri), text), workspace.Today) : null);
        return document is null ? null : new DueResult(
            [.. DueList.Of(document.Record).OrderBy(due => due.Rank(document.Today)).Select(due => new DueEntry(due.Line, DueText.Of(due), DueText.When(due.On, document.Today)))]);
    }
}
