using HealthNotes.Grammar.Text;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Grammar.Items;

/// <summary>A side of the body, as seen by the animal.</summary>
public enum Side
{
    /// <summary>No side written.</summary>
    None,

    /// <summary>Left.</summary>
    L,

    /// <summary>Right.</summary>
    R,

    /// <summary>Left front limb.</summary>
    LF,

    /// <summary>Right front limb.</summary>
    RF,

    /// <summary>Left hind limb.</summary>
    LH,

    /// <summary>Right hind limb.</summary>
    RH,

    /// <summary>The midline.</summary>
    Mid,

    /// <summary>Both sides.</summary>
    Both,

    /// <summary>Both front limbs.</summary>
    Front,

    /// <summary>Both hind limbs.</summary>
    Hind,
}

/// <summary>What a side is called and takes in.</summary>
public static class SideWords
{
    /// <summary>The one spelling: <c>LF</c>, <c>both</c>; empty for none.</summary>
    public static string Spelling(this Side side) => side switch { Side.None => "", Side.Mid or Side.Both or Side.Front or Side.Hind => side.ToString().ToLowerInvariant(), _ => side.ToString() };

    /// <summary>True where a finding of this side holds for another: of both for each, without a side for all, of the hind limbs for the left hind.</summary>
    public static bool Covers(this Side wide, Side place) =>
        wide == place || wide is Side.None or Side.Both || (wide == Side.Front && place is Side.LF or Side.RF) || (wide == Side.Hind && place is Side.LH or Side.RH);
}

/// <summary>A place on the body: a side, a region, a numbered gland or tooth.</summary>
/// <param name="Span">Where it stands in its line.</param>
/// <param name="Side">The side, or none.</param>
/// <param name="Region">The region; null for a bare side (<c>ear L</c>) or a tooth.</param>
/// <param name="Number">The gland's number from the front, or the tooth's number; null otherwise.</param>
public sealed record Site(TextSpan Span, Side Side, Region? Region, int? Number)
{
    /// <summary>The one spelling: <c>L-flank</c>, <c>R-gland3</c>, <c>both</c>, <c>208</c>.</summary>
    public string Name
    {
        get
        {
            string region = Region is null ? $"{Number}" : $"{Region.Word}{Number}";
            string side = Side.Spelling();
            return side.Length == 0 ? region : region.Length == 0 ? side : $"{side}-{region}";
        }
    }

    /// <inheritdoc/>
    public override string ToString() => Name;
}
