using HealthNotes.Analysis.Rules;
using HealthNotes.LanguageServer.Protocol;
using HealthNotes.LanguageServer.State;
using HealthNotes.Rendering.Pages;

namespace HealthNotes.LanguageServer.Handlers;

/// <summary>3.18, Workspace Features, Text Document Content Request: texts that are in no file.</summary>
internal static class TextContentHandler
{
    /// <summary>The names that the server can read.</summary>
    public static ServerCapabilities Declare(ServerCapabilities can) =>
        can with { Workspace = can.Workspace with { TextDocumentContent = new TextDocumentContentOptions([ContentUris.Scheme]) } };

    /// <summary>The help page of a rule, or the visit page of an open note, in Markdown.</summary>
    /// <exception cref="RefusedRequestException">There is no such text.</exception>
    public static TextDocumentContentResult Of(Workspace workspace, TextDocumentContentParams parameters, CancellationToken token)
    {
        string? text = !Uri.TryCreate(parameters.Uri, UriKind.Absolute, out Uri? uri) || uri.Scheme != ContentUris.Scheme ? null
            : uri.AbsolutePath == ContentUris.Page ? workspace.Find(Uri.UnescapeDataString(uri.Query.TrimStart('?'))) is { } document ? VisitPage.Markdown(document.AnalysisUnless(token)) : null
            : uri.AbsolutePath.StartsWith(ContentUris.Rules, StringComparison.Ordinal) && uri.AbsolutePath.EndsWith(ContentUris.Ending, StringComparison.Ordinal)
                ? RuleHelp.For(uri.AbsolutePath[ContentUris.Rules.Length..^ContentUris.Ending.Length])
            : null;
        return text is null ? throw new RefusedRequestException(ErrorCodes.InvalidParams, $"there is no text {parameters.Uri}") : new TextDocumentContentResult(text);
    }
}
