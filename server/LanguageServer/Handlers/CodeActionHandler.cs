using System.Collections.Immutable;
using HealthNotes.Features.Actions;
using HealthNotes.Features.Actions.Offered;
using HealthNotes.Features.Documents;
using HealthNotes.LanguageServer.Convert;
using HealthNotes.LanguageServer.Protocol;
using HealthNotes.LanguageServer.State;

namespace HealthNotes.LanguageServer.Handlers;

/// <summary>3.17, Language Features, Code Action Request and Code Action Resolve Request.</summary>
internal static class CodeActionHandler
{
    /// <summary>Names the one action that is ours to put together, not the feature's.</summary>
    private const string FixAllKey = "fix-all";

    /// <summary>The kinds of action there are.</summary>
    public static CodeActionOptions Options { get; } = new([CodeActionKind.QuickFix, CodeActionKind.Rewrite, CodeActionKind.FixAllHere], ResolveProvider: true);

    /// <summary>What can be done at the range.</summary>
    public static CodeAction[] At(Workspace workspace, CodeActionParams parameters, CancellationToken token)
    {
        if (workspace.Find(parameters.TextDocument.Uri) is not { } document || !workspace.Client.CodeActionLiterals)
        {
            return [];
        }

        PlaceRange range = Places.Of(document, parameters.Range, workspace.Client.Encoding);
        IEnumerable<ActionOffer> offers = ActionFeature.In(document, range, workspace.Settings)
            .Select(offer => offer.Key is { } key && !workspace.Client.CodeActionsResolveEdits ? offer with { Edits = ActionFeature.Resolve(document, key), Key = null } : offer)
            .Where(offer => offer.Key is not null || !offer.Edits.IsEmpty);
        return [.. offers.Concat(FixAll(document, parameters.Context, workspace.Client))
            .Where(offer => Actions.Wants(parameters.Context, Actions.KindOf(offer.Kind)))
            .Select(offer => Actions.Of(document, offer, workspace.Client))];
    }

    /// <summary>The action with its edits.</summary>
    public static CodeAction Resolve(Workspace workspace, CodeAction action, CancellationToken token)
    {
        if (action.Data is not { } data)
        {
            return action;
        }

        Document? document = workspace.Find(data.Uri);
        if (document?.Version != data.Version)
        {
            throw new RefusedRequestException(ErrorCodes.ContentModified, "the note has changed since");
        }

        ImmutableArray<DocumentEdit> edits = data.Key == FixAllKey ? ActionFeature.FixAll(document) : ActionFeature.Resolve(document, data.Key);
        return action with { Edit = Edits.InWorkspace(document, edits, workspace.Client) };
    }

    /// <summary>Fixing everything looks at the whole note: it is offered only to those who ask for it by name, or can wait for its edits.</summary>
    private static ActionOffer[] FixAll(Document document, CodeActionContext? context, ClientProfile client)
    {
        bool byName = context?.Only is { Length: > 0 } && Actions.Wants(context, CodeActionKind.FixAllHere);
        bool later = client.CodeActionsResolveEdits && context?.TriggerKind != CodeActionTriggerKind.Automatic;
        if (!byName && !later)
        {
            return [];
        }

        ImmutableArray<DocumentEdit> edits = later ? [] : ActionFeature.FixAll(document);
        return later || !edits.IsEmpty
            ? [new ActionOffer(FixAllKey, "Fix all problems that have a single fix", ActionKind.FixAll, edits, IsPreferred: false, [], later ? FixAllKey : null)]
            : [];
    }
}
