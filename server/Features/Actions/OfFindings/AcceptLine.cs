using HealthNotes.Analysis.Findings;
using HealthNotes.Features.Documents;
using HealthNotes.Grammar.Items;

namespace HealthNotes.Features.Actions.OfFindings;

/// <summary>How a line that accepts a finding names it.</summary>
internal static class AcceptLine
{
    /// <summary>The rule, and the part with its place where the finding's line names a place or is about a part: <c>lump-growth lump L-flank</c>.</summary>
    public static string Start(Document document, NoteFinding finding)
    {
        NoteItem? item = document.Note.EntryAt(finding.Line)?.ItemAt(finding.Line);
        string[] part = item is Examined or Finding or { Site: not null } ? [item.Word.Word, item.Site?.Name ?? "", item.Tag is { } tag ? "@" + tag.Name : ""] : [];
        return string.Join(' ', [finding.Rule, .. part.Where(word => word.Length > 0)]);
    }
}
