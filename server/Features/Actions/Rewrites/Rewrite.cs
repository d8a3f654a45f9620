using HealthNotes.Features.Actions.Offered;
using HealthNotes.Features.Documents;

namespace HealthNotes.Features.Actions.Rewrites;

/// <summary>Offers that fix nothing.</summary>
internal static class Rewrite
{
    /// <summary>An offer whose edits are worked out.</summary>
    public static ActionOffer Offer(string id, string title, params ReadOnlySpan<DocumentEdit> edits) =>
        new(id, title, ActionKind.Rewrite, [.. edits], IsPreferred: false, Fixes: []);

    /// <summary>An offer whose edits are worked out when it is taken.</summary>
    public static ActionOffer Later(string id, string title, string key) =>
        new(id, title, ActionKind.Rewrite, [], IsPreferred: false, Fixes: [], Key: key);
}
