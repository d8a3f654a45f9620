using HealthNotes.Features.Hints;
using HealthNotes.LanguageServer.Convert;
using HealthNotes.LanguageServer.Protocol;
using HealthNotes.LanguageServer.State;

namespace HealthNotes.LanguageServer.Handlers;

/// <summary>3.17, Language Features, Inlay Hint Request.</summary>
internal static class InlayHintHandler
{
    /// <summary>The computed values of the range.</summary>
    public static InlayHint[] In(Workspace workspace, InlayHintParams parameters, CancellationToken token)
    {
        if (workspace.Find(parameters.TextDocument.Uri) is not { } document)
        {
            return [];
        }

        PositionEncoding encoding = workspace.Client.Encoding;
        return [.. HintFeature.In(document, Places.Of(document, parameters.Range, encoding), workspace.Settings).Select(hint =>
            new InlayHint(Positions.Of(document, hint.Place, encoding), hint.Label)
            {
                Tooltip = new MarkupContent(MarkupKind.PlainText, hint.Tooltip),
                PaddingLeft = true,
            })];
    }
}
