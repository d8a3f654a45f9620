using HealthNotes.Analysis.Findings;
using HealthNotes.Features.Actions.Lines;
using HealthNotes.Grammar.Notes;
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
        if (SiteIn(at.Line.Item) is not { Region: { } region } site || site.Span != finding.Span)
        {
            return [];
        }

        string number = site.Number?.ToString() ?? "";
        if (region.Sides == SideRule.Mid && site.Side is not (Side.None or Side.Mid))
        {
            string text = region.Word + number;
            return at.Better(finding, [new LineFix("drop-side", $"Write `{text}`, without a side", site.Span, text, Preferred: true, Certain: true)]);
        }

        List<LineFix> sides = [.. at.Better(finding, SidesFor(site).Select(side => Write(site, $"{side}-{region.Word}{number}")))];
        List<LineFix> fixes = sides.Count > 0 ? sides : [.. at.Better(finding, Places(at, region).Select(place => Write(site, Sided(site.Side, place.Word))))];
        return fixes.Count == 1 ? [fixes[0] with { Preferred = true }] : fixes;
    }

    /// <summary>The site of a line, whatever its kind.</summary>
    public static Site? SiteIn(NoteItem? item) => item switch
    {
        Examined examined => examined.Site,
        Finding finding => finding.Site,
        Recheck recheck => recheck.Site,
        Skipped skipped => skipped.Site,
        Reading reading => reading.Site,
        _ => null,
    };

    private static LineFix Write(Site site, string text) => new("other-place", $"Write `{text}`", site.Span, text);

    private static string Sided(Side side, string region) => side == Side.None ? region : $"{(side is Side.Mid or Side.Both ? side.ToString().ToLowerInvariant() : side.ToString())}-{region}";

    /// <summary>A front or hind side on a place with a left and a right keeps its left or right; any other wrong side says nothing.</summary>
    private static string[] SidesFor(Site site) => site.Side switch
    {
        Side.LF or Side.LH => ["L"],
        Side.RF or Side.RH => ["R"],
        _ when site.Region!.Sides == SideRule.Four => ["LF", "RF", "LH", "RH"],
        _ => ["L", "R", "both"],
    };

    /// <summary>The place of the right kind that is named after this one: the node behind a knee is <c>knee-back</c>.</summary>
    private static IEnumerable<Region> Places(LineAt at, Region region)
    {
        string? role = at.Word?.Takes.Select(slot => slot.Kind switch
        {
            SlotKind.Node => "node",
            SlotKind.Joint => "joint",
            SlotKind.Muscle => "muscle",
            _ => null,
        }).FirstOrDefault(kind => kind is not null);
        return role is null ? [] : NoteVocabulary.Default.Regions.Terms.Where(other =>
            other.Roles.Contains(role) && other.Word.StartsWith(region.Word + "-", StringComparison.Ordinal));
    }
}
