using HealthNotes.Analysis.Findings;
using HealthNotes.Features.Actions.Offered;
using HealthNotes.Features.Documents;
using HealthNotes.Features.Merging;

namespace HealthNotes.Features.Actions.Fixes;

/// <summary>Two versions of some lines become one note with the lines of both.</summary>
internal static class ConflictFix
{
    public static IEnumerable<ActionOffer> Of(Document document, NoteFinding finding) =>
        NoteMerge.OfMarked(document.Syntax.Print()) is not { } merged ? []
            : [NoteFix.Offer("keep-both", "Keep the lines of both versions, joined by day", finding, preferred: true, new DocumentEdit(PlaceRange.Whole(document), merged.Text.TrimStart('\ufeff')))];
}
