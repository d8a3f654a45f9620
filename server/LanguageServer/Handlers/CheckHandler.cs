using HealthNotes.Features.Checks;
using HealthNotes.LanguageServer.Protocol;
using HealthNotes.LanguageServer.State;

namespace HealthNotes.LanguageServer.Handlers;

/// <summary>Our own request <c>healthNotes/check</c>.</summary>
internal static class CheckHandler
{
    /// <summary>The name of the request: a contract with the editors that lead through a check.</summary>
    public const string Method = "healthNotes/check";

    /// <summary>The steps of today's check; null when no such note is open.</summary>
    public static CheckStepsResult? StepsOf(Workspace workspace, TextDocumentParams parameters, CancellationToken token) =>
        workspace.Find(parameters.TextDocument.Uri) is { } document ? new CheckStepsResult(CheckWalk.HeadOf(document), [.. CheckWalk.Of(document)]) : null;
}
