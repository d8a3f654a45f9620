using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Drawing.Body;


/// <summary>A place on a view: from nose (0) to tail tip (100), and from the top (0) to the bottom (100) of that view.</summary>
internal readonly record struct BodySpot(BodyView View, double X, double Y)
{
    private const double Midline = 50;

    /// <summary>How far behind the front leg the same place of the hind leg lies.</summary>
    private const double HindLeg = 44;

    /// <summary>How far from the midline a side of a broad place lies.</summary>
    private const double OffMidline = 13;

    private const double FrontGland = 39;
    private const double HindGland = 66;

    /// <summary>Where a site lies; empty when no side is written where it needs one, and for teeth.</summary>
    public static IEnumerable<BodySpot> Of(Site site, Species species)
    {
        if (site.Region is not { } region)
        {
            return [];
        }

        bool left = site.Side is Side.L or Side.LF or Side.LH or Side.Both or Side.Front or Side.Hind;
        bool right = site.Side is Side.R or Side.RF or Side.RH or Side.Both or Side.Front or Side.Hind;
        bool hind = region.Sides == SideRule.Four && site.Side is Side.LH or Side.RH or Side.Hind;
        double x = region.Word == "gland" && site.Number is { } number ? GlandX(number, species) : region.X + (hind ? HindLeg : 0);
        (x, double y) = species == Species.Cat && CatEars.TryGetValue(region.Word, out (double X, double Y) ear) ? ear : (x, region.Y);
        return region.Surface switch
        {
            "side" => OnSide(region, site.Side, left, right, x, y),
            "top" => Across(BodyView.Above, x, y, left, right, leftIsDown: true),
            _ => Across(BodyView.Below, x, y, left, right, leftIsDown: false),
        };
    }

    /// <summary>A cat's ears stand up where a dog's hang.</summary>
    private static readonly Dictionary<string, (double X, double Y)> CatEars = new()
    {
        ["ear"] = (14.2, 10),
        ["ear-tip"] = (13.6, 6.5),
        ["ear-base"] = (14.5, 13.5),
        ["ear-canal"] = (14, 14.5),
    };

    private static double GlandX(int number, Species species) => FrontGland + ((number - 1) * (HindGland - FrontGland) / (species == Species.Cat ? 3 : 4));

    private static IEnumerable<BodySpot> OnSide(Region region, Side side, bool left, bool right, double x, double y) => (region.Sides, side) switch
    {
        // the nose and the tail are the same from either side
        (SideRule.Mid, _) => [new BodySpot(BodyView.Left, x, y)],
        (_, Side.Mid) => [new BodySpot(BodyView.Below, x, Midline)],
        _ => Sides(left ? new BodySpot(BodyView.Left, x, y) : null, right ? new BodySpot(BodyView.Right, x, y) : null),
    };

    private static IEnumerable<BodySpot> Across(BodyView view, double x, double y, bool left, bool right, bool leftIsDown)
    {
        if (!left && !right)
        {
            return [new BodySpot(view, x, y)];
        }

        double away = Math.Abs(y - Midline) is > 0 and var off ? off : OffMidline;
        double down = Midline + away;
        double up = Midline - away;
        return Sides(left ? new BodySpot(view, x, leftIsDown ? down : up) : null, right ? new BodySpot(view, x, leftIsDown ? up : down) : null);
    }

    private static IEnumerable<BodySpot> Sides(BodySpot? left, BodySpot? right) => new[] { left, right }.OfType<BodySpot>();
}
