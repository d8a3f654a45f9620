using HealthNotes.Features.Actions.Offered;
using HealthNotes.Features.Documents;
using HealthNotes.LanguageServer.Protocol;
using HealthNotes.LanguageServer.State;

namespace HealthNotes.LanguageServer.Convert;

/// <summary>From offered changes to code actions.</summary>
internal static class Actions
{
    /// <summary>One offer; its edits are left out while they are to be worked out later.</summary>
    public static CodeAction Of(Document document, ActionOffer offer, ClientProfile client) => new(offer.Title)
    {
        Kind = KindOf(offer.Kind),
        IsPreferred = offer.IsPreferred ? true : null,
        Diagnostics = offer.Fixes.IsEmpty ? null : [.. offer.Fixes
            .SelectMany(fixedOne => Findings.At(document, fixedOne.Line).Where(finding => finding.Rule == fixedOne.Rule && finding.Span == fixedOne.Span))
            .Select(finding => Findings.Of(document, finding, client))],
        Edit = offer.Key is null ? Edits.InWorkspace(document, offer.Edits, client) : null,
        Data = offer.Key is null ? null : new CodeActionData(document.Uri, document.Version, offer.Key),
    };

    /// <summary>The protocol's name of a kind.</summary>
    public static string KindOf(ActionKind kind) => kind switch
    {
        ActionKind.QuickFix => CodeActionKind.QuickFix,
        ActionKind.FixAll => CodeActionKind.FixAllHere,
        _ => CodeActionKind.Rewrite,
    };

    /// <summary>True when the client wants this kind: it names the kind, or what the kind is a part of.</summary>
    public static bool Wants(CodeActionContext? context, string kind) => context?.Only is not { Length: > 0 } only
        || only.Any(wanted => wanted.Length == 0 || kind == wanted || kind.StartsWith(wanted + ".", StringComparison.Ordinal));
}
