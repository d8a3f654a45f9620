using System.Globalization;
using System.Text;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Drawing.Body;

/// <summary>
/// Our own line drawing of a dog and a cat, as points along their outlines: from nose (0) to tail tip (100), from the top (0)
/// to the ground (100). The curve runs smoothly through them; corners are points written twice.
/// </summary>
internal sealed record Outline(IReadOnlyList<Outline.Shape> Shapes)
{
    /// <summary>One closed line of the drawing.</summary>
    /// <param name="Kind">Its class: body, far (the legs behind), ear, mark.</param>
    /// <param name="Points">Its points.</param>
    internal sealed record Shape(string Kind, (double X, double Y)[] Points);

    private static readonly Outline DogSide = new(
    [
        new("far", Points("36 54 40 57 40 66 38.7 76 38.6 86 38.9 95 38.4 97.6 33.6 97.9 32.6 96 34 90 34.5 78 34 66")),
        new("far", Points("66 52 70.5 58 70 66 73.2 73 72.6 79 71.6 87 71.8 94.5 71.2 97.6 66.2 97.9 65.2 96 67 90 67.6 82 66.5 74 62 66 61 58")),
        new("body", Points("0.3 25 1.6 22.6 4.6 20.8 7.6 18 10 13.8 13 11.6 16.2 12 19.5 15.2 24.5 19.2 30 21.8 38 23.8 48 24.6 58 24.4 66 24.8 72 26.6 76 29.6 82 28.6 89 30 95.5 34.4 100 42 100 42 95.3 39 89 35.6 82 34.2 78.6 36.2 78.6 42 78 49 76 56 75 62.5 76.6 69 78.8 73.6 77.6 78.4 76.6 85 77 91 77 96 76 99 70 99.3 68.6 97 70.4 93.5 72.6 89 72.8 82 71.4 76.6 68 70 64.4 64 61.4 59 60.8 54 59 49.6 53 52.4 46 54.4 40 56 37 58 35.7 62 34.9 69 34.2 76 34.5 83 34.1 90 34.6 96 33.8 99 28.2 99.3 26.8 97 28.4 93.4 29.6 88 29.2 80 28.8 73 28.4 64 27.2 56 25 50 22.8 44.5 20.6 38.6 18 33.6 14.6 32.2 10.8 32.4 7 31.6 3.2 31.2 1.2 29 0.6 27")),
        new("ear", Points("13.4 13.2 16.6 13.4 18.8 17.4 18.6 22.4 16.8 24.8 14.6 21.8 13 17.4")),
        new("mark", Points("8.2 19.8 8.8 19.1 9.5 19.6 8.9 20.4")),
        new("nose", Points("0.3 25 1.2 23.2 2.6 23.4 2.2 25.2 1 26")),
    ]);

    private static readonly Outline CatSide = new(
    [
        new("far", Points("36 53 40 56.5 39.6 66 38.4 76 38.4 87 38.7 95.4 38.2 97.6 34 97.9 33 96.2 34.4 90 34.6 78 34 66")),
        new("far", Points("66 54 70 59 69.6 66 72.8 73 72.2 80 71.4 88 71.6 95 71 97.6 66.4 97.9 65.4 96.2 67 91 67.4 82 66 74 62.4 67 61.4 60")),
        new("body", Points("0.8 25 1.8 22.4 4.4 18.4 7.6 15 10.8 13 14 12 17.4 13 19.6 16.4 23.4 20.4 29.4 23 36 24.6 48 25 58 24.6 67 25 73 27.4 77 30.6 83 31.2 90 32 96 35.4 100 42 100 42 95.2 39.2 89.6 36 82.6 35.4 78.8 37 78.8 43.4 78.2 50 76.4 57 75.8 63 77.2 69 78.8 73.6 77.8 79 76.6 86 77 93 76.8 97.4 75.8 99 70.8 99.2 69.6 97.4 71 94.6 73 90 72.8 83 71.2 76 67.6 70 63.6 65 61 60.4 60.4 55.4 58.4 52.4 52 53.8 45 54.8 39.6 55.8 37 57.8 35.7 61.4 34.8 69 34.2 77 34.4 85 34.2 93 34.5 97.4 33.6 99 28.7 99.2 27.5 97.4 28.8 94.6 29.7 90 29.4 82 28.9 74 28.2 65 26.9 57 24.8 51 22.4 45 20 39.4 17.4 34.6 14 33 10 33 6 32.2 3 30.4 1.2 28")),
        new("ear", Points("10.6 13.6 10.6 13.6 13.4 4.6 13.4 4.6 17.8 13.6 17.8 13.6 14.2 15.4")),
        new("mark", Points("7.2 20.4 8.2 19.2 9.5 19.7 8.5 21")),
        new("nose", Points("0.8 24.6 2.2 23.8 2.6 25.2 1.6 26")),
        new("whisker", Points("4 27.5 4 27.5 10.5 26 10.5 26")),
        new("whisker", Points("4 28.4 4 28.4 10.5 29 10.5 29")),
    ]);

    private static readonly Outline DogFlat = new(
    [
        new("body", Mirrored("0 50 0.6 46.4 3 43.6 6.4 42 9.4 38 12.6 36.2 16.4 37 20 37.6 25 34.6 30 30.6 37 28.4 45 27.8 53 30 60 32.4 66 31.4 71 31.4 75 35 77.6 43 79.4 46.4 86 47.2 94 48.2 100 50")),
        new("ear", Points("13 36.6 16.6 37.4 18.6 33 17.6 28.2 15 29.2 13 32.8")),
        new("ear", Points("13 63.4 16.6 62.6 18.6 67 17.6 71.8 15 70.8 13 67.2")),
        new("nose", Points("0 50 0.8 47.4 2.4 48.4 2.4 51.6 0.8 52.6")),
    ]);

    private static readonly Outline CatFlat = new(
    [
        new("body", Mirrored("0.8 50 1.2 46.6 3.4 42.6 6.6 38.6 10.4 36 14 36 17.4 38.6 20.6 39.6 25.6 36.6 30 33.4 37 31.8 46 31 54 31.4 61 32.6 67 32 72 33 75.4 37 77.4 44 79.4 46.8 87 47.2 95 47.8 100 50")),
        new("ear", Points("10 37.4 10 37.4 13.4 29.4 13.4 29.4 16.6 38.6 16.6 38.6")),
        new("ear", Points("10 62.6 10 62.6 13.4 70.6 13.4 70.6 16.6 61.4 16.6 61.4")),
        new("nose", Points("0.8 50 1.8 48.2 2.8 50 1.8 51.8")),
    ]);

    /// <summary>Legs and teats, seen as it lies on its back.</summary>
    private static readonly Shape[] LegsBelow =
    [
        .. BothHalves("leg", "30.6 35 28.4 27 25.6 18 23.6 10 24 6.6 27 5.6 29 8.6 31 16 33.6 24 36 31.4"),
        .. BothHalves("leg", "66.4 34.6 65.4 27 67.4 18 68.6 10 70 6.8 73 6.6 74.2 9.6 73.2 17 73.6 25 73.4 34"),
    ];

    /// <summary>The drawing of an animal from a side, in the colours of no breed. An animal that is not said is drawn as a dog.</summary>
    public static Outline Of(Species species, BodyView view) => (species, view) switch
    {
        (Species.Cat, BodyView.Left or BodyView.Right) => CatSide,
        (_, BodyView.Left or BodyView.Right) => DogSide,
        (Species.Cat, BodyView.Above) => CatFlat,
        (_, BodyView.Above) => DogFlat,
        (Species.Cat, _) => FromBelow(CatFlat),
        _ => FromBelow(DogFlat),
    };

    /// <summary>True when a point lies inside one of the shapes (even-odd rule on their points).</summary>
    public bool Holds(double x, double y) => Shapes.Any(shape => IsInside(shape.Points, x, y));

    /// <summary>The path of a shape: a Catmull-Rom curve through its points, as cubic Béziers.</summary>
    public static string Path(Shape shape, Func<double, double, (double X, double Y)> place)
    {
        (double X, double Y)[] points = [.. shape.Points.Select(point => place(point.X, point.Y))];
        int count = points.Length;
        var path = new StringBuilder($"M{N(points[0].X)} {N(points[0].Y)}");
        for (int i = 0; i < count; i++)
        {
            (double X, double Y) from = points[i];
            (double X, double Y) to = points[(i + 1) % count];
            (double X, double Y) leaving = Tangent(points, i);
            (double X, double Y) arriving = Tangent(points, (i + 1) % count);
            path.Append(CultureInfo.InvariantCulture, $"C{N(from.X + leaving.X)} {N(from.Y + leaving.Y)} {N(to.X - arriving.X)} {N(to.Y - arriving.Y)} {N(to.X)} {N(to.Y)}");
        }

        return path.Append('Z').ToString();
    }

    /// <summary>A sixth of the way from the point before to the point after; none at a corner.</summary>
    private static (double X, double Y) Tangent((double X, double Y)[] points, int at)
    {
        (double X, double Y) before = points[(at + points.Length - 1) % points.Length];
        (double X, double Y) after = points[(at + 1) % points.Length];
        return before == points[at] || after == points[at] ? (0, 0) : ((after.X - before.X) / 6, (after.Y - before.Y) / 6);
    }

    private static Outline FromBelow(Outline above) => new([.. LegsBelow, .. above.Shapes.Where(shape => shape.Kind != "ear")]);

    private static bool IsInside((double X, double Y)[] points, double x, double y)
    {
        bool inside = false;
        for (int i = 0, j = points.Length - 1; i < points.Length; j = i++)
        {
            inside ^= points[i].Y > y != points[j].Y > y && x < ((points[j].X - points[i].X) * (y - points[i].Y) / (points[j].Y - points[i].Y)) + points[i].X;
        }

        return inside;
    }

    private static (double X, double Y)[] Points(string numbers)
    {
        double[] all = [.. numbers.Split(' ').Select(number => double.Parse(number, CultureInfo.InvariantCulture))];
        return [.. all.Chunk(2).Select(pair => (pair[0], pair[1]))];
    }

    /// <summary>A shape that is the same on both sides of the midline, from one half of its points.</summary>
    private static (double X, double Y)[] Mirrored(string half)
    {
        (double X, double Y)[] points = Points(half);
        return [.. points, .. points[1..^1].Reverse().Select(Flipped)];
    }

    private static IEnumerable<Shape> BothHalves(string kind, string points) => [new(kind, Points(points)), new(kind, [.. Points(points).Select(Flipped)])];

    private static (double X, double Y) Flipped((double X, double Y) point) => (point.X, 100 - point.Y);

    private static string N(double number) => Math.Round(number, 1).ToString(CultureInfo.InvariantCulture);
}
