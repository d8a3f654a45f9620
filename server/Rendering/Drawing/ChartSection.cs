using System.Text;
using System.Xml.Linq;
using HealthNotes.Rendering.Blocks;
using HealthNotes.Rendering.Drawing.Charts;
using HealthNotes.Rendering.Html;
using HealthNotes.Rendering.Model;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Drawing;

/// <summary>How the pet's values went over time, one small chart a value, all on one time axis.</summary>
internal static class ChartSection
{
    public static Section? Write(PageModel model)
    {
        if (model.Charts is not { } set)
        {
            return null;
        }

        var html = new StringBuilder("<div class=\"small-multiples\">\n");
        for (int index = 0; index < set.Charts.Count; index++)
        {
            Chart chart = set.Charts[index];
            html.Append("<figure>\n<figcaption><strong><bdi>").Append(HtmlText.Escape(chart.Title)).Append("</bdi></strong>, ").Append(HtmlText.Escape(chart.Unit))
                .Append("<br>").Append(HtmlText.Escape(PageWords.ChartCaption(chart))).Append("</figcaption>\n")
                .Append(ChartDrawing.Of(chart, set, index + 1).ToString(SaveOptions.DisableFormatting)).Append("\n</figure>\n");
        }

        html.Append("</div>\n");
        return Section.Of(
            "charts", PageWords.OverTime,
            new Figure(html.ToString(), Block.List(set.Charts.Select(chart => (Prose)chart.Title + $": {chart.Words}"))),
            new Figure(Key(set)),
            Block.Paragraph(Prose.Small(PageWords.ChartSpan(set))),
            Block.List(set.Medicines.Select(medicine => Prose.Strong(medicine.Letter) + ": " + medicine.Name)),
            Block.Paragraph(set.MedicinesLeftOut == 0 ? "" : Prose.Small(PageWords.MedicinesLeftOut(set.MedicinesLeftOut))),
            Block.Paragraph(set.LeftOut == 0 ? "" : Prose.Small(PageWords.ChartsLeftOut(set.LeftOut))));
    }

    /// <summary>What the marks mean; only those that are on a chart.</summary>
    private static string Key(ChartSet set)
    {
        Mark[] marks = [.. set.Charts.SelectMany(chart => chart.Marks)];
        (bool IsThere, string Sign, string Words)[] all =
        [
            (true, "<circle class=\"point\" cx=\"9\" cy=\"7\" r=\"2.6\"/>", PageWords.KeyPoint),
            (marks.Any(mark => mark.Low is not null), "<line class=\"doubt\" x1=\"9\" y1=\"1\" x2=\"9\" y2=\"13\"/><circle class=\"point\" cx=\"9\" cy=\"7\" r=\"2.6\"/>", PageWords.KeyDoubt),
            (marks.Any(mark => mark.Kind == MarkKind.About), "<circle class=\"about\" cx=\"9\" cy=\"7\" r=\"2.8\"/>", PageWords.KeyAbout),
            (marks.Any(mark => !mark.IsValue), "<path class=\"about\" d=\"M5.5 4h7l-3.5 6z\"/>", PageWords.KeyBound),
            (set.Charts.Any(chart => chart.Normal.Count > 0), "<rect class=\"normal\" x=\"1\" y=\"2\" width=\"16\" height=\"10\"/>", PageWords.KeyNormal),
            (set.Charts.Any(chart => chart.Usual is not null), "<rect class=\"usual\" x=\"1\" y=\"2\" width=\"16\" height=\"10\"/><path class=\"hatch\" d=\"M1 8 7 2M1 12 11 2M7 12 17 2M13 12 17 8\"/>", PageWords.KeyUsual),
            (set.Visits.Count > 0, "<line class=\"visit\" x1=\"9\" y1=\"0\" x2=\"9\" y2=\"14\"/>", PageWords.KeyVisit),
            (set.Medicines.Count > 0, "<rect class=\"medicine\" x=\"1\" y=\"5\" width=\"16\" height=\"5\"/>", PageWords.KeyMedicine),
        ];
        IEnumerable<string> rows = all.Where(row => row.IsThere)
            .Select(row => $"<li><svg class=\"chart key\" viewBox=\"0 0 18 14\" aria-hidden=\"true\">{row.Sign}</svg> {HtmlText.Escape(row.Words)}</li>\n");
        return $"<ul class=\"chart-key\">\n{string.Concat(rows)}</ul>\n";
    }
}
