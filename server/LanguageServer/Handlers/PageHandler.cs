using HealthNotes.LanguageServer.Host;
using HealthNotes.LanguageServer.Protocol;
using HealthNotes.LanguageServer.State;
using HealthNotes.Rendering;

namespace HealthNotes.LanguageServer.Handlers;

/// <summary>Our own request <c>healthNotes/page</c>.</summary>
internal static class PageHandler
{
    /// <summary>The name of the request: a contract with the editors that show a page beside the note.</summary>
    public const string Method = "healthNotes/page";

    /// <summary>The page of a note as it stands in the editor.</summary>
    public static PageResult? Of(Workspace workspace, PageParams parameters, CancellationToken token) =>
        workspace.Find(parameters.Uri) is { } document
            ? new PageResult(VisitPage.Html(document.AnalysisUnless(token), PageFile.OptionsFor(document.Uri)))
            : null;
}
