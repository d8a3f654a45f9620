using System.Globalization;
using System.Xml.Linq;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Drawing.Charts;

/// <summary>Draws one chart as SVG. Classes alone say how a thing looks, so that the page's style holds for screen, dark and paper.</summary>
internal static class ChartDrawing
{
    private const double Width = 340;
    private const double Left = 40;
    private const double Right = 326;
    private const double Top = 8;
    private const double Bottom = 138;
    private const double BarHeight = 20;
    private const double LabelHeight = 11;
    private const double LetterWidth = 6;
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
        double height = Bottom + 24 + (set.Medicines.Count * BarHeight);
        string title = $"chart-{number}-title";
        string words = $"chart-{number}-words";
        var svg = new XElement(
            "svg",
            Class("chart"), new XAttribute("viewBox", $"0 0 {N(Width)} {N(height)}"), new XAttribute("role", "img"),
            new XAttribute("aria-labelledby", $"{title} {words}"),
            new XElement("title", new XAttribute("id", title), PageWords.ChartTitle(chart.Title, chart.Unit)),
            new XElement("desc", new XAttribute("id", words), chart.Words));
        svg.Add(Bands(chart, axis, time, number));
        svg.Add(Grid(axis, time));
        svg.Add(Events(set.Events, time));
        svg.Add(set.Medicines.SelectMany((medicine, row) => Medicine(medicine, time, Bottom + 20 + (row * BarHeight))));
        foreach (Series series in chart.Series)
        {
            foreach (IGrouping<bool, Mark> scale in series.Marks.GroupBy(mark => mark.AtClinic))
            {
                svg.Add(Joined([.. scale]).Select(run => new XElement("polyline", Class("joined"), new XAttribute("points", string.Join(' ', run.Select(mark => $"{N(X(time, mark.At))},{N(Y(axis, mark.Value))}"))))));
            }

            svg.Add(series.Marks.Where(mark => mark is { Low: not null, High: not null }).Select(mark => Line("doubt", X(time, mark.At), Y(axis, mark.Low!.Value), X(time, mark.At), Y(axis, mark.High!.Value))));
            svg.Add(series.Marks.Select(mark => Draw(mark, X(time, mark.At), Y(axis, mark.Value))));
        }

        svg.Add(Labels(chart, axis, time));
        svg.Add(chart.Limits.SelectMany(limit => Limit(limit, axis, time)));
        return svg;
    }

    /// <summary>A sign of the key, drawn as on a chart.</summary>
    internal static XElement Sign(params ReadOnlySpan<XElement> drawn) => new("svg", Class("chart key"), new XAttribute("viewBox", "0 0 18 14"), new XAttribute("aria-hidden", "true"), drawn.ToArray());

    /// <summary>A mark at a place.</summary>
    internal static XElement Draw(Mark mark, double x, double y) => mark.Kind switch
    {
        MarkKind.Below => new XElement("path", Class("about"), new XAttribute("d", $"M{N(x - 3.5)} {N(y)}h7l-3.5 6z")),
        MarkKind.Above => new XElement("path", Class("about"), new XAttribute("d", $"M{N(x - 3.5)} {N(y)}h7l-3.5 -6z")),
        _ when mark.AtClinic => new XElement("rect", Class(mark.Kind == MarkKind.About ? "about" : "clinic"), new XAttribute("x", N(x - 3)), new XAttribute("y", N(y - 3)), new XAttribute("width", "6"), new XAttribute("height", "6")),
        MarkKind.About => new XElement("circle", Class("about"), new XAttribute("cx", N(x)), new XAttribute("cy", N(y)), new XAttribute("r", "2.8")),
        _ => new XElement("circle", Class("point"), new XAttribute("cx", N(x)), new XAttribute("cy", N(y)), new XAttribute("r", "2.6")),
    };

    /// <summary>A straight line.</summary>
    internal static XElement Line(string kind, double x1, double y1, double x2, double y2) => new(
        "line", Class(kind), new XAttribute("x1", N(x1)), new XAttribute("y1", N(y1)), new XAttribute("x2", N(x2)), new XAttribute("y2", N(y2)));

    /// <summary>A box.</summary>
    internal static XElement Rect(string kind, double x, double y, double width, double height) => new(
        "rect", Class(kind), new XAttribute("x", N(x)), new XAttribute("y", N(y)), new XAttribute("width", N(Math.Max(0, width))), new XAttribute("height", N(Math.Max(0, height))));

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
        return Rect(kind, left, top, X(time, band.To) - left, Y(axis, Math.Max(band.Low ?? axis.Low, axis.Low)) - top);
    }

    /// <summary>The clinic's line, as far as it holds, with its words; one beyond the axis has its words at the edge.</summary>
    private static IEnumerable<XElement> Limit(LimitLine limit, ValueAxis axis, TimeAxis time)
    {
        bool shown = limit.Value >= axis.Low && limit.Value <= axis.High;
        double y = Y(axis, limit.Value);
        if (shown)
        {
            yield return Line("limit", X(time, limit.From), y, Right, y);
        }

        bool fits = X(time, limit.From) + (limit.Words.Length * LetterWidth) < Right;
        XElement words = Text("limit", fits ? X(time, limit.From) + 4 : Right, shown == limit.Above && y - Top > 14 ? y - 4 : y + 12, limit.Words);
        words.Add(fits ? null : new XAttribute("text-anchor", "end"));
        yield return words;
    }

    /// <summary>The names of several series at their ends, pushed apart where they would lie on each other.</summary>
    private static IEnumerable<XElement> Labels(Chart chart, ValueAxis axis, TimeAxis time)
    {
        double free = double.MaxValue;
        foreach (Series series in chart.Series.Where(series => series.Label.Length > 0).OrderBy(series => series.Marks[^1].Value))
        {
            double y = Math.Min(free, Y(axis, series.Marks[^1].Value));
            yield return Text("series", X(time, series.Marks[^1].At) + 6, y + 4, series.Label);
            free = y - LabelHeight;
        }
    }

    private static IEnumerable<XElement> Events(IReadOnlyList<ChartEvent> events, TimeAxis time)
    {
        double free = double.MinValue;
        foreach (ChartEvent one in events)
        {
            double x = X(time, Noon(one.Day));
            yield return Line("visit", x, Top, x, Bottom + 4);
            if (x >= free)
            {
                // beside the axis the words stand on the other side of the line, clear of its numbers
                double at = x < Left + LabelHeight ? x + LabelHeight - 2 : x - 2;
                XElement text = Text("event", at, Top, one.Words);
                text.Add(new XAttribute("transform", $"rotate(-90 {N(at)} {N(Top)})"));
                yield return text;
                free = x + LabelHeight;
            }
        }
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

    /// <summary>A medicine's doses one behind the other, each with its amount written above it: the more of it the more room there is.</summary>
    private static IEnumerable<XElement> Medicine(MedicineBar medicine, TimeAxis time, double y)
    {
        double free = Left;
        for (int index = 0; index < medicine.Doses.Count; index++)
        {
            DoseBar dose = medicine.Doses[index];
            bool isLast = index + 1 == medicine.Doses.Count;
            double from = X(time, dose.From.ToDateTime(TimeOnly.MinValue));
            double to = Math.Max(from + 3, X(time, dose.To is { } last ? Noon(last) : time.To));
            yield return Rect("medicine", from, y + 12, to - from - (isLast ? 0 : 1.5), 5);
            string name = index == 0 ? medicine.Name + " " : "";
            double end = isLast ? double.MaxValue : to;
            string words = new[] { name + dose.Words, name + dose.Amount }.FirstOrDefault(one => Math.Max(free, from) + (one.Length * LetterWidth) <= Math.Min(end, Right)) ?? (isLast || index == 0 ? name + (isLast ? dose.Words : dose.Amount) : "");
            double x = Math.Max(Left, Math.Min(Math.Max(free, from), Right - (words.Length * LetterWidth)));
            if (words.Length > 0 && x >= free)
            {
                yield return Text("dose", x, y + 9, words);
                free = x + ((words.Length + 1) * LetterWidth);
            }
        }
    }

    private static XElement Text(string kind, double x, double y, string words) => new("text", Class(kind), new XAttribute("x", N(x)), new XAttribute("y", N(y)), words);

    private static XAttribute Class(string name) => new("class", name);

    private static double X(TimeAxis time, DateTime at) => Left + (time.At(at) * (Right - Left));

    private static double Y(ValueAxis axis, double value) => Bottom - ((Math.Clamp(value, axis.Low, axis.High) - axis.Low) / (axis.High - axis.Low) * (Bottom - Top));

    private static DateTime Noon(DateOnly day) => day.ToDateTime(new TimeOnly(12, 0));

    private static string N(double number) => Math.Round(number, 1).ToString(CultureInfo.InvariantCulture);
}
