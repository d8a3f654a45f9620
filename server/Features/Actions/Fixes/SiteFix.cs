using HealthNotes.Analysis.Findings;
using HealthNotes.Features.Actions.Lines;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Slots;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Features.Actions.Fixes;

/// <summary>
/// A place that cannot be: a side on the midline goes (certain, there is no other way to read it); a side that the place
/// does not have gives way to those it has; a joint where a node is meant gives way to the node there. Which gland or
/// tooth was meant cannot be known, so nothing is offered for those.
/// </summary>
internal static class SiteFix
{
    public static IEnumerable<LineFix> Of(LineAt at, NoteFinding finding)
    {
        if (Read(finding.Span.In(at.Text).ToString()) is not { } place)
        {
            return [];
        }

        (Side side, Region region, string number) = place;
        if (region.Sides == SideRule.Mid && side is not (Side.None or Side.Mid))
        {
            string text = region.Word + number;
            return at.Better(finding, [new LineFix("drop-side", $"Write `{text}`, without a side", finding.Span, text, Preferred: true, Certain: true)]);
        }

        List<LineFix> sides = [.. at.Better(finding, SidesFor(side, region).Select(other => Write(finding, $"{other}-{region.Word}{number}")))];
        List<LineFix> fixes = sides.Count > 0 ? sides : [.. at.Better(finding, Places(at, region).Select(other => Write(finding, Sided(side, other.Word))))];
        return fixes.Count == 1 ? [fixes[0] with { Preferred = true }] : fixes;
    }

    /// <summary>A side and a region, as written: what cannot be is not read as a place of the line.</summary>
    private static (Side Side, Region Region, string Number)? Read(string written)
    {
        NoteVocabulary words = NoteVocabulary.Default;
        string place = written.TrimEnd("0123456789".ToCharArray());
        string number = written[place.Length..];
        if (words.Regions.Find(place) is { } alone)
        {
            return (Side.None, alone, number);
        }

        for (int cut = place.LastIndexOfAny(['-', ' ']); cut > 0; cut = place.LastIndexOfAny(['-', ' '], cut - 1))
        {
            if (words.Sides.Find(place.AsSpan(0, cut)) is { } side && words.Regions.Find(place.AsSpan(cut + 1)) is { } region)
            {
                return (Enum.Parse<Side>(side.Word, ignoreCase: true), region, number);
            }
        }

        return null;
    }

    private static LineFix Write(NoteFinding finding, string text) => new("other-place", $"Write `{text}`", finding.Span, text);

    private static string Sided(Side side, string region) => side == Side.None ? region : $"{side.Spelling()}-{region}";

    /// <summary>A front or hind side on a place with a left and a right keeps its left or right; any other wrong side says nothing.</summary>
    private static string[] SidesFor(Side side, Region region) => side switch
    {
        Side.LF or Side.LH => ["L"],
        Side.RF or Side.RH => ["R"],
        _ when region.Sides == SideRule.Four => ["LF", "RF", "LH", "RH"],
        _ => ["L", "R", "both"],
    };

    /// <summary>The place of the right kind that is named after this one: the node behind a knee is <c>knee-back</c>.</summary>
    private static IEnumerable<Region> Places(LineAt at, Region region) => at.Word is { } word && SlotTable.SiteOf(word) is { } slot and not SlotKind.Site
        ? NoteVocabulary.Default.Regions.Terms.Where(other => SlotTable.Fits(slot, other) && other.Word.StartsWith(region.Word + "-", StringComparison.Ordinal))
        : [];
}
