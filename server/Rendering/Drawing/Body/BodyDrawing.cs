using System.Globalization;
using System.Xml.Linq;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Drawing.Body;

/// <summary>Draws one view of the animal with its numbered marks. Classes alone say how it looks.</summary>
internal static class BodyDrawing
{
    private const double Width = 300;
    private const double Pad = 12;

    /// <summary>How high a side view is; a view from above or below is a strip of the same length.</summary>
    private const double SideHeight = 180;

    private const double FlatHeight = 150;
    private const double Size = 8;
    private const double Apart = 18.5;
    private const int Rings = 8;
    private const int Directions = 12;
    private static readonly double[] TeatRows = [41, 59];

    /// <summary>The drawing of a view.</summary>
    /// <param name="species">The animal.</param>
    /// <param name="view">From where it is seen.</param>
    /// <param name="marks">All marks; those that lie on this view are drawn.</param>
    /// <param name="id">Makes its names its own on the page.</param>
    public static XElement Of(Species species, BodyView view, IReadOnlyList<BodyMark> marks, string id)
    {
        double height = view is BodyView.Left or BodyView.Right ? SideHeight : FlatHeight;
        (BodyMark Mark, BodySpot Spot)[] here = [.. marks.SelectMany(mark => mark.Spots.Where(spot => spot.View == view), (mark, spot) => (mark, spot))];
        var svg = new XElement(
            "svg",
            new XAttribute("class", "body-map"), new XAttribute("viewBox", $"0 0 {N(Width + (2 * Pad))} {N(height + (2 * Pad))}"), new XAttribute("role", "img"),
            new XAttribute("aria-labelledby", $"{id}-title {id}-words"),
            new XElement("title", new XAttribute("id", $"{id}-title"), PageWords.NameOf(species, view)),
            new XElement("desc", new XAttribute("id", $"{id}-words"), here.Length == 0 ? PageWords.NothingMarked : string.Join("; ", here.Select(one => one.Mark.Words)) + "."));
        svg.Add(Outline.Of(species, view).Shapes.Select(shape => new XElement("path", new XAttribute("class", shape.Kind), new XAttribute("d", Outline.Path(shape, (x, y) => Place(view, height, x, y))))));
        if (view == BodyView.Below)
        {
            svg.Add(Teats(species, height));
        }

        svg.Add(new XElement("text", new XAttribute("class", "side"), new XAttribute("x", N(Pad)), new XAttribute("y", "11"), view is BodyView.Above ? PageWords.RightSide : view is BodyView.Below ? PageWords.LeftSide : ""));
        svg.Add(new XElement("text", new XAttribute("class", "side"), new XAttribute("x", N(Pad)), new XAttribute("y", N(height + Pad + 8)), view is BodyView.Above ? PageWords.LeftSide : view is BodyView.Below ? PageWords.RightSide : ""));
        var taken = new List<(double X, double Y)>();
        var signs = new List<XElement>();
        foreach ((BodyMark mark, BodySpot spot) in here)
        {
            (double x, double y) = Place(view, height, spot.X, spot.Y);
            (double toX, double toY) = Free(taken, x, y, height);
            taken.Add((toX, toY));
            svg.Add(Lead(x, y, toX, toY));
            signs.AddRange(Sign(mark, toX, toY));
        }

        svg.Add(signs);

        return svg;
    }

    /// <summary>The nearest place to where it lies that no other mark covers.</summary>
    private static (double X, double Y) Free(List<(double X, double Y)> taken, double x, double y, double height)
    {
        for (int ring = 0; ring <= Rings; ring++)
        {
            for (int direction = 0; direction < (ring == 0 ? 1 : Directions); direction++)
            {
                double angle = 2 * Math.PI * direction / Directions;
                (double X, double Y) tried = (x + (ring * Apart * Math.Cos(angle)), y + (ring * Apart * Math.Sin(angle)));
                bool isIn = tried.X > Size && tried.X < Width + (2 * Pad) - Size && tried.Y > Size && tried.Y < height + (2 * Pad) - Size;
                if (isIn && taken.All(other => Math.Max(Math.Abs(other.X - tried.X), Math.Abs(other.Y - tried.Y)) >= Apart - 0.5 || Distance(other, tried) >= Apart - 0.5))
                {
                    return tried;
                }
            }
        }

        return (x, y);
    }

    private static IEnumerable<XElement> Lead(double x, double y, double toX, double toY)
    {
        if (Distance((x, y), (toX, toY)) > 1)
        {
            yield return new XElement("line", new XAttribute("class", "lead"), new XAttribute("x1", N(x)), new XAttribute("y1", N(y)), new XAttribute("x2", N(toX)), new XAttribute("y2", N(toY)));
            yield return new XElement("circle", new XAttribute("class", "lead"), new XAttribute("cx", N(x)), new XAttribute("cy", N(y)), new XAttribute("r", "1.6"));
        }
    }

    private static IEnumerable<XElement> Sign(BodyMark mark, double x, double y) =>
    [
        Shape(mark.Kind, x, y),
        new XElement("text", new XAttribute("class", "number"), new XAttribute("x", N(x)), new XAttribute("y", N(y + 3.6)), mark.Number.ToString(CultureInfo.InvariantCulture)),
    ];

    /// <summary>The shape that stands for a kind: a lump is round, a node square, a wound a square on its corner, a sore place a triangle.</summary>
    public static XElement Shape(string kind, double x, double y) => kind switch
    {
        "node" => Path(kind, $"M{N(x - 7.4)} {N(y - 7.4)}h14.8v14.8h-14.8z"),
        "wound" => Path(kind, $"M{N(x)} {N(y - 10)}l10 10l-10 10l-10 -10z"),
        "pain-site" => Path(kind, $"M{N(x)} {N(y - 11)}l10.6 17.4h-21.2z"),
        _ => new XElement("circle", new XAttribute("class", "mark-lump"), new XAttribute("cx", N(x)), new XAttribute("cy", N(y)), new XAttribute("r", N(Size))),
    };

    private static XElement Path(string kind, string path) => new("path", new XAttribute("class", $"mark-{kind}"), new XAttribute("d", path));

    private static IEnumerable<XElement> Teats(Species species, double height) =>
        from number in Enumerable.Range(1, species == Species.Cat ? 4 : 5)
        from y in TeatRows
        let place = Place(BodyView.Below, height, 39 + ((number - 1) * 27.0 / (species == Species.Cat ? 3 : 4)), y)
        select new XElement("circle", new XAttribute("class", "teat"), new XAttribute("cx", N(place.X)), new XAttribute("cy", N(place.Y)), new XAttribute("r", "1.3"));

    /// <summary>From the coordinates of the vocabulary to those of the drawing; seen from its right side the animal faces right.</summary>
    private static (double X, double Y) Place(BodyView view, double height, double x, double y) =>
        (Pad + ((view == BodyView.Right ? 100 - x : x) * Width / 100), Pad + (y * height / 100));

    private static double Distance((double X, double Y) one, (double X, double Y) other) => Math.Sqrt(Math.Pow(one.X - other.X, 2) + Math.Pow(one.Y - other.Y, 2));

    private static string N(double number) => Math.Round(number, 1).ToString(CultureInfo.InvariantCulture);
}
