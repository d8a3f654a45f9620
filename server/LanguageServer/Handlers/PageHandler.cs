using HealthNotes.Analysis;
using HealthNotes.Grammar.Notes;
using HealthNotes.LanguageServer.Protocol;
using HealthNotes.LanguageServer.State;
using HealthNotes.Rendering;
using HealthNotes.Rendering.Pages;
using HealthNotes.Rendering.Photos;
using HealthNotes.Rendering.Sharing;
using HealthNotes.Rendering.Sheet;

namespace HealthNotes.LanguageServer.Handlers;

/// <summary>Our own request <c>healthNotes/page</c>. A page that is asked for while the one before is made ends that one.</summary>
internal sealed class PageHandler
{
    /// <summary>The name of the request: a contract with the editors that show a page beside the note.</summary>
    public const string Method = "healthNotes/page";

    private readonly PhotoCache photos = new();
    private Action stopLatest = () => { };

    /// <summary>The page of a note as it stands in the editor.</summary>
    /// <exception cref="OperationCanceledException">The client, or a newer request, ended it.</exception>
    public PageResult? Of(Workspace workspace, PageParams parameters, CancellationToken token)
    {
        using var mine = CancellationTokenSource.CreateLinkedTokenSource(token);
        Action stop = Interlocked.Exchange(ref stopLatest, mine.Cancel);
        try
        {
            stop();
        }
        catch (ObjectDisposedException)
        {
            // it was done
        }

        return workspace.Find(parameters.Uri) is not { } document ? null : new PageResult(parameters.View switch
        {
            "sheet" => CheckSheet.Html(document.Analysis, document.Record.Pet.ShowUsUnits ? Paper.Letter : Paper.A4),
            "share" => VisitPage.Html(NoteAnalysis.Of(Note.Read(SharedNote.Of(document.Note, [])), workspace.Today), new PageOptions { For = Audience.Share }),
            "owner" => VisitPage.Html(document.AnalysisUnless(mine.Token), PageFile.OptionsFor(document.Uri) with { For = Audience.Owner, Cache = photos, Stop = mine.Token }),
            _ => VisitPage.Html(document.AnalysisUnless(mine.Token), PageFile.OptionsFor(document.Uri) with { Cache = photos, Stop = mine.Token }),
        });
    }
}
