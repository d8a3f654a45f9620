using HealthNotes.Analysis.Findings;
using HealthNotes.Features.Actions.Lines;
using HealthNotes.Features.Actions.Offered;
using HealthNotes.Features.Documents;

namespace HealthNotes.Features.Actions.Fixes;

/// <summary>Turns the ways to fix what is found in some lines into offers.</summary>
internal static class QuickFixes
{
    /// <summary>More findings than this are not looked at in one request: nobody reads a menu that long.</summary>
    private const int MostFindings = 40;

    /// <summary>The fixes for the findings of the lines of a range; those the range touches come first.</summary>
    public static IEnumerable<ActionOffer> In(Document document, PlaceRange range, FeatureSettings settings)
    {
        LineAt? at = null;
        foreach (NoteFinding finding in Sorted.Between(document.Analysis.Findings, finding => finding.Line, range.Start.Line, range.End.Line)
            .Where(finding => FixBook.Has(finding.Rule)).Take(MostFindings).OrderByDescending(finding => range.Touches(PlaceRange.Of(finding.Line, finding.Span))))
        {
            at = at?.Index == finding.Line ? at : LineAt.Of(document, finding.Line, settings);
            foreach (LineFix fix in FixBook.InLine(at, finding))
            {
                yield return Offer(at, finding, fix);
            }

            foreach (ActionOffer offer in FixBook.InNote(at, finding))
            {
                yield return offer;
            }
        }
    }

    private static ActionOffer Offer(LineAt at, NoteFinding finding, LineFix fix) => new(
        fix.Id, fix.Title, ActionKind.QuickFix, [new DocumentEdit(PlaceRange.Of(at.Index, fix.Span), fix.Text)], fix.Preferred, [NoteFix.Fixed(finding)]);
}
