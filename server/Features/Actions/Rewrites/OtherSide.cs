using HealthNotes.Features.Actions.Lines;
using HealthNotes.Features.Actions.Offered;
using HealthNotes.Features.Documents;
using HealthNotes.Grammar.Items;

namespace HealthNotes.Features.Actions.Rewrites;

/// <summary>On a place: the other side, or the sides it may have where none is written. Only sides that exist there are offered.</summary>
internal static class OtherSide
{
    public static IEnumerable<ActionOffer> At(LineAt at, PlaceRange range)
    {
        if (at.Line.Items.Select(item => item.Site).FirstOrDefault(place => place is not null && PlaceRange.Of(at.Index, place.Span).Touches(range)) is not { } site
            || !IsWrittenOut(site, at.Text))
        {
            yield break;
        }

        foreach (Side side in Others(site))
        {
            string text = (site with { Side = side }).Name;
            string line = at.Text.Remove(site.Span.Start, site.Span.Length).Insert(site.Span.Start, text);
            if (at.Trial.Read(line).Errors.Length <= at.Read.Errors.Length)
            {
                yield return Rewrite.Offer(site.Side == Side.None ? "which-side" : "other-side", $"Write `{text}`", new DocumentEdit(PlaceRange.Of(at.Index, site.Span), text));
            }
        }
    }

    /// <summary>False for a side that an abbreviation at the start of the line stands for: <c>OS clear</c>.</summary>
    private static bool IsWrittenOut(Site site, string text) => site.Region is not null || (site.Side != Side.None && site.Span.In(text).Equals(site.Side.ToString(), StringComparison.OrdinalIgnoreCase));

    private static Side[] Others(Site site) => site.Side switch
    {
        Side.None when site.Region is { } region => region.Sides switch
        {
            Grammar.Vocabulary.SideRule.Four => [Side.LF, Side.RF, Side.LH, Side.RH],
            Grammar.Vocabulary.SideRule.Mid => [],
            Grammar.Vocabulary.SideRule.Any => [Side.L, Side.R],
            _ => [Side.L, Side.R, Side.Both],
        },
        Side.L => [Side.R],
        Side.R => [Side.L],
        Side.LF => [Side.RF],
        Side.RF => [Side.LF],
        Side.LH => [Side.RH],
        Side.RH => [Side.LH],
        _ => [],
    };
}
