using HealthNotes.Features.Hover;
using HealthNotes.LanguageServer.Convert;
using HealthNotes.LanguageServer.Protocol;
using HealthNotes.LanguageServer.State;

namespace HealthNotes.LanguageServer.Handlers;

/// <summary>3.17, Language Features, Hover Request.</summary>
internal static class HoverHandler
{
    /// <summary>The hover text for the position.</summary>
    public static Hover? At(Workspace workspace, TextDocumentPositionParams parameters, CancellationToken token)
    {
        ClientProfile client = workspace.Client;
        return workspace.Find(parameters.TextDocument.Uri) is { } document
            && HoverFeature.At(document, Places.Of(document, parameters.Position, client.Encoding), workspace.Settings) is { } text
                ? new Hover(Markups.Of(text.Markdown, client.MarkdownInHover), Positions.Of(document, text.Range, client.Encoding))
                : null;
    }
}
