using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Grammar.Slots;

/// <summary>Refuses a place that cannot exist, or is not of the kind that a line takes: a side that a region lacks, a sixth gland.</summary>
internal static class SiteCheck
{
    public static void Check(Cursor at, Site found, SlotKind kind)
    {
        if (found.Region is not { } region)
        {
            return;
        }

        bool fits = region.Sides switch
        {
            SideRule.Mid => found.Side is Side.None or Side.Mid,
            SideRule.Pair => found.Side is Side.None or Side.L or Side.R or Side.Both,
            SideRule.Four => found.Side is not Side.Mid,
            SideRule.Front => found.Side is not (Side.Mid or Side.LH or Side.RH or Side.Hind),
            SideRule.Hind => found.Side is not (Side.Mid or Side.LF or Side.RF or Side.Front),
            _ => found.Side is Side.None or Side.L or Side.R or Side.Both or Side.Mid,
        };
        string written = found.Span.In(at.Line).ToString();
        string? role = SiteSlots.RoleOf(kind);
        string? message = !fits ? $"`{written}`: there is no such {region.Word}. {SidesOf(region.Sides)}"
            : found.Number is < 1 or > 5 ? $"`{written}`: mammary glands are numbered 1 to 5 from the front (1 to 4 in a cat)."
            : role is not null && !region.Roles.Contains(role)
                ? $"`{region.Word}` is not a {role} I know. Known: {string.Join(", ", at.Vocabulary.Regions.Terms.Where(r => r.Roles.Contains(role)).Select(r => r.Word).Order(StringComparer.Ordinal))}."
            : kind == SlotKind.Tooth ? $"`{written}`: name a tooth by its number, such as 208, or by its side."
            : kind == SlotKind.Gland && region.Word != "gland" ? $"`{written}`: name a mammary gland by its side and number, such as R-gland3."
            : null;
        if (message is not null)
        {
            at.Report(new Problem(ProblemRules.ImpossibleSite, found.Span, message));
        }
    }

    private static string SidesOf(SideRule rule) => rule switch
    {
        SideRule.Mid => "It lies on the midline: write no side.",
        SideRule.Four => "Write LF, RF, LH or RH.",
        SideRule.Front => "Write L, R or both (or LF, RF).",
        SideRule.Hind => "Write L, R or both (or LH, RH).",
        SideRule.Pair => "Write L, R or both.",
        _ => "Write L, R, mid or both.",
    };
}
