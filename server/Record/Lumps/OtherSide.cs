using HealthNotes.Grammar.Items;

namespace HealthNotes.Record.Lumps;

/// <summary>Left and right.</summary>
public static class OtherSide
{
    /// <summary>The side across; null for the midline, for both, and where no side is written.</summary>
    public static Side? Of(Side side) => side switch
    {
        Side.L => Side.R,
        Side.R => Side.L,
        Side.LF => Side.RF,
        Side.RF => Side.LF,
        Side.LH => Side.RH,
        Side.RH => Side.LH,
        _ => null,
    };

    /// <summary>True when two sites are the same place on the left and on the right.</summary>
    public static bool AreAcross(Site? one, Site? other) =>
        one is not null && other is not null && Of(one.Side) == other.Side && one.Region == other.Region && one.Number == other.Number;
}
