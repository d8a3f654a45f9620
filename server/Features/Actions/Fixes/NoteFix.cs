using HealthNotes.Analysis.Findings;
using HealthNotes.Features.Actions.Offered;
using HealthNotes.Features.Documents;

namespace HealthNotes.Features.Actions.Fixes;

/// <summary>A fix that takes more than one line.</summary>
internal static class NoteFix
{
    /// <summary>An offer that does away with one finding.</summary>
    public static ActionOffer Offer(string id, string title, NoteFinding finding, bool preferred, params ReadOnlySpan<DocumentEdit> edits) =>
        new(id, title, ActionKind.QuickFix, [.. edits], preferred, [Fixed(finding)]);

    /// <summary>What tells a finding from the others.</summary>
    public static FixedFinding Fixed(NoteFinding finding) => new(finding.Rule, finding.Line, finding.Span);
}
