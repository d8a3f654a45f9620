using System.Collections.Immutable;
using HealthNotes.Analysis.Findings;
using HealthNotes.Features.Actions.Lines;
using HealthNotes.Features.Documents;

namespace HealthNotes.Features.Actions.Fixes;

/// <summary>Turns the ways to mend what is found in some lines into offers.</summary>
internal static class QuickFixes
{
    /// <summary>More findings than this are not looked at in one request: nobody reads a menu that long.</summary>
    private const int MostFindings = 40;

    /// <summary>The fixes for the findings of the lines of a range; those the range touches come first. What mends two findings in the same way is one offer.</summary>
    public static IEnumerable<ActionOffer> In(Document document, PlaceRange range, FeatureSettings settings) => All(document, range, settings)
        .GroupBy(offer => string.Join('\n', offer.Edits.Select(edit => edit.ToString()).Prepend(offer.Id)))
        .Select(same => same.First() with { Fixes = [.. same.SelectMany(offer => offer.Fixes).Distinct()] });

    private static IEnumerable<ActionOffer> All(Document document, PlaceRange range, FeatureSettings settings)
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
        fix.Id, fix.Title, ActionKind.QuickFix, [new DocumentEdit(PlaceRange.Of(at.Index, fix.Span), fix.Text)], fix.Preferred, Fixed(at, finding, fix));

    /// <summary>The finding itself, and whatever else could not be read in the line before and can be read after.</summary>
    private static ImmutableArray<FixedFinding> Fixed(LineAt at, NoteFinding finding, LineFix fix)
    {
        HashSet<string> left = [.. at.Trial.Read(fix.In(at.Text)).Errors.Select(error => error.Message)];
        return
        [
            NoteFix.Fixed(finding),
            .. Sorted.Between(at.Document.Analysis.Findings, other => other.Line, at.Index, at.Index)
                .Where(other => other != finding && other.Level == FindingLevel.Error && !left.Contains(other.Message) && at.Read.Errors.Any(error => error.Message == other.Message))
                .Select(NoteFix.Fixed),
        ];
    }
}
