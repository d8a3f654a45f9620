using HealthNotes.Features.Links;
using HealthNotes.LanguageServer.Convert;
using HealthNotes.LanguageServer.Protocol;
using HealthNotes.LanguageServer.State;

namespace HealthNotes.LanguageServer.Handlers;

/// <summary>3.17, Language Features, Document Link Request.</summary>
internal static class DocumentLinkHandler
{
    /// <summary>The photos of a note. One that is not there says so.</summary>
    public static DocumentLink[] In(Workspace workspace, TextDocumentParams parameters, CancellationToken token)
    {
        if (workspace.Find(parameters.TextDocument.Uri) is not { } document || Uris.PathOf(document.Uri) is not { } note)
        {
            return [];
        }

        string folder = Path.GetDirectoryName(note) ?? "";
        return [.. LinkFeature.In(document, path => File.Exists(Path.Combine(folder, path))).Select(link => new DocumentLink(
            Positions.Of(document, link.Range, workspace.Client.Encoding),
            Uris.Of(Path.Combine(folder, link.Path)),
            !workspace.Client.LinkTooltips ? null : link.IsMissing ? $"{link.Path} is not beside the note" : "Open the photo"))];
    }
}
