using System.Globalization;
using System.Xml.Linq;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Drawing.Charts;

/// <summary>Draws one chart as SVG. Classes alone say how a thing looks, so that the page's style holds for screen, dark and paper.</summary>
internal static class ChartDrawing
{
    private const double Width = 340;
    private const double Left = 40;
    private const double Right = 332;
    private const double Top = 8;
    private const double Bottom = 138;
    private const double BarHeight = 12;
    private const double LabelBelow = 15;

    /// <summary>
    /// Points are joined when they lie no further apart than so many times their usual distance: what was not measured is a
    /// gap. Where readings are dense, a pause of a fortnight is still no gap (common practice, no source).
    /// </summary>
    private const double GapTimes = 3;

    private const double NoGapDays = 14;

    /// <summary>Points further apart than this are never joined, however rarely something is measured (common practice, no source).</summary>
    private const double MostJoinedDays = 120;

    /// <summary>The drawing; <paramref name="number"/> makes its names its own on the page.</summary>
    public static XElement Of(Chart chart, ChartSet set, int number)
    {
        var time = new TimeAxis(set.From, set.To);
        ValueAxis axis = ValueAxis.Of(chart);
        MedicineBar[] medicines = [.. set.Medicines];
        double height = Bottom + 24 + (medicines.Length * BarHeight);
        string title = $"chart-{number}-title";
        string words = $"chart-{number}-words";
        var svg = new XElement(
            "svg",
            new XAttribute("class", "chart"), new XAttribute("viewBox", $"0 0 {N(Width)} {N(height)}"), new XAttribute("role", "img"),
            new XAttribute("aria-labelledby", $"{title} {words}"),
            new XElement("title", new XAttribute("id", title), PageWords.ChartTitle(chart.Title, chart.Unit)),
            new XElement("desc", new XAttribute("id", words), chart.Words));
        svg.Add(Bands(chart, axis, time, number));
        svg.Add(Grid(axis, time));
        svg.Add(set.Visits.Select(day => Line("visit", X(time, Noon(day)), Top, X(time, Noon(day)), Bottom + 4)));
        svg.Add(medicines.SelectMany((medicine, row) => Medicine(medicine, time, Bottom + 22 + (row * BarHeight))));
        svg.Add(Joined(chart.Marks).Select(run => new XElement("polyline", Class("joined"), new XAttribute("points", string.Join(' ', run.Select(mark => $"{N(X(time, mark.At))},{N(Y(axis, mark.Value))}"))))));
        svg.Add(chart.Marks.Where(mark => mark is { Low: not null, High: not null }).Select(mark => Line("doubt", X(time, mark.At), Y(axis, mark.Low!.Value), X(time, mark.At), Y(axis, mark.High!.Value))));
        svg.Add(chart.Marks.Select(mark => Draw(mark, X(time, mark.At), Y(axis, mark.Value))));
        return svg;
    }

    /// <summary>The runs of values that are joined by a line.</summary>
    internal static IEnumerable<List<Mark>> Joined(IReadOnlyList<Mark> marks)
    {
        Mark[] values = [.. marks.Where(mark => mark.IsValue)];
        double[] gaps = [.. values.Skip(1).Zip(values, (next, before) => (next.At - before.At).TotalDays).Order()];
        double most = gaps.Length == 0 ? 0 : Math.Min(MostJoinedDays, Math.Max(NoGapDays, GapTimes * gaps[gaps.Length / 2]));
        var run = new List<Mark>();
        foreach (Mark mark in values)
        {
            if (run.Count > 0 && (mark.At - run[^1].At).TotalDays > most)
            {
                yield return run;
                run = [];
            }

            run.Add(mark);
        }

        if (run.Count > 0)
        {
            yield return run;
        }
    }

    private static IEnumerable<XElement> Bands(Chart chart, ValueAxis axis, TimeAxis time, int number)
    {
        foreach (Band band in chart.Normal)
        {
            yield return Box("normal", band, axis, time);
        }

        if (chart.Usual is { } usual)
        {
            string hatch = $"hatch-{number}";
            yield return new XElement(
                "defs",
                new XElement(
                    "pattern", new XAttribute("id", hatch), new XAttribute("width", "6"), new XAttribute("height", "6"), new XAttribute("patternUnits", "userSpaceOnUse"),
                    new XElement("path", Class("hatch"), new XAttribute("d", "M-1 7 7 -1M-1 1 1 -1M5 7 7 5"))));
            XElement box = Box("usual", usual, axis, time);
            box.Add(new XAttribute("fill", $"url(#{hatch})"));
            yield return box;
        }
    }

    private static XElement Box(string kind, Band band, ValueAxis axis, TimeAxis time)
    {
        double left = X(time, band.From);
        double top = Y(axis, Math.Min(band.High ?? axis.High, axis.High));
        double bottom = Y(axis, Math.Max(band.Low ?? axis.Low, axis.Low));
        return new XElement(
            "rect", Class(kind), new XAttribute("x", N(left)), new XAttribute("y", N(top)),
            new XAttribute("width", N(Math.Max(0, X(time, band.To) - left))), new XAttribute("height", N(Math.Max(0, bottom - top))));
    }

    private static IEnumerable<XElement> Grid(ValueAxis axis, TimeAxis time)
    {
        foreach (double tick in axis.Ticks)
        {
            yield return Line("grid", Left, Y(axis, tick), Right, Y(axis, tick));
            yield return Text("y", Left - 5, Y(axis, tick) + 4, tick.ToString("F" + axis.Decimals, CultureInfo.InvariantCulture));
        }

        yield return Line("axis", Left, Bottom, Right, Bottom);
        double free = 0;
        foreach ((DateTime at, string words) in time.Ticks())
        {
            double x = X(time, at);
            yield return Line("axis", x, Bottom, x, Bottom + 4);
            double half = words.Length * 3.4;
            if (x - half >= free && x + half <= Width)
            {
                yield return Text("x", x, Bottom + LabelBelow, words);
                free = x + half + 6;
            }
        }
    }

    private static IEnumerable<XElement> Medicine(MedicineBar medicine, TimeAxis time, double y)
    {
        double from = X(time, Noon(medicine.From));
        double to = Math.Max(from + 3, X(time, medicine.To is { } last ? Noon(last) : time.To));
        yield return new XElement("rect", Class("medicine"), new XAttribute("x", N(from)), new XAttribute("y", N(y)), new XAttribute("width", N(to - from)), new XAttribute("height", "5"));
        yield return Text("y", Left - 5, y + 6, medicine.Letter);
    }

    private static XElement Draw(Mark mark, double x, double y) => mark.Kind switch
    {
        MarkKind.Point => new XElement("circle", Class("point"), new XAttribute("cx", N(x)), new XAttribute("cy", N(y)), new XAttribute("r", "2.6")),
        MarkKind.About => new XElement("circle", Class("about"), new XAttribute("cx", N(x)), new XAttribute("cy", N(y)), new XAttribute("r", "2.8")),
        MarkKind.Below => new XElement("path", Class("about"), new XAttribute("d", $"M{N(x - 3.5)} {N(y)}h7l-3.5 6z")),
        _ => new XElement("path", Class("about"), new XAttribute("d", $"M{N(x - 3.5)} {N(y)}h7l-3.5 -6z")),
    };

    private static XElement Line(string kind, double x1, double y1, double x2, double y2) => new(
        "line", Class(kind), new XAttribute("x1", N(x1)), new XAttribute("y1", N(y1)), new XAttribute("x2", N(x2)), new XAttribute("y2", N(y2)));

    private static XElement Text(string kind, double x, double y, string words) => new("text", Class(kind), new XAttribute("x", N(x)), new XAttribute("y", N(y)), words);

    private static XAttribute Class(string name) => new("class", name);

    private static double X(TimeAxis time, DateTime at) => Left + (time.At(at) * (Right - Left));

    private static double Y(ValueAxis axis, double value) => Bottom - ((Math.Clamp(value, axis.Low, axis.High) - axis.Low) / (axis.High - axis.Low) * (Bottom - Top));

    private static DateTime Noon(DateOnly day) => day.ToDateTime(new TimeOnly(12, 0));

    private static string N(double number) => Math.Round(number, 1).ToString(CultureInfo.InvariantCulture);
}
