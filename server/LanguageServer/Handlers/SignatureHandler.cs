using HealthNotes.Features.Signatures;
using HealthNotes.LanguageServer.Convert;
using HealthNotes.LanguageServer.Protocol;
using HealthNotes.LanguageServer.State;

namespace HealthNotes.LanguageServer.Handlers;

/// <summary>3.17, Language Features, Signature Help Request.</summary>
internal static class SignatureHandler
{
    /// <summary>What the line takes. Unless the user asks for it, only while something is missing: it must not cover a line that is complete.</summary>
    public static SignatureHelp? At(Workspace workspace, SignatureHelpParams parameters, CancellationToken token)
    {
        bool asked = parameters.Context is null or { TriggerKind: SignatureHelpTriggerKind.Invoked };
        return workspace.Find(parameters.TextDocument.Uri) is { } document
            && SignatureFeature.At(document, Places.Of(document, parameters.Position, workspace.Client.Encoding), workspace.Settings) is { } found
            && (asked || found.Missing is not null)
                ? new SignatureHelp(
                    [new SignatureInformation(found.Label, Markups.Of(found.Markdown, workspace.Client.MarkdownInSignature), [.. found.Parts.Select(part => new ParameterInformation(part))])],
                    ActiveSignature: 0,
                    found.Missing)
                : null;
    }
}
