using System.Text;
using System.Xml.Linq;
using HealthNotes.Rendering.Drawing.Charts;
using HealthNotes.Rendering.Html;
using HealthNotes.Rendering.Markdown;
using HealthNotes.Rendering.Model;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Drawing;

/// <summary>How the pet's values went over time, one small chart a value, all on one time axis.</summary>
internal static class ChartSection
{
    public static PageSection? Write(PageModel model)
    {
        if (model.Charts is not { } set)
        {
            return null;
        }

        var html = new StringBuilder("<div class=\"small-multiples\">\n");
        var markdown = new StringBuilder();
        for (int index = 0; index < set.Charts.Count; index++)
        {
            Chart chart = set.Charts[index];
            html.Append("<figure>\n<figcaption><strong><bdi>").Append(HtmlText.Escape(chart.Title)).Append("</bdi></strong>, ").Append(HtmlText.Escape(chart.Unit))
                .Append("<br>").Append(HtmlText.Escape(PageWords.ChartCaption(chart))).Append("</figcaption>\n")
                .Append(ChartDrawing.Of(chart, set, index + 1).ToString(SaveOptions.DisableFormatting)).Append("\n</figure>\n");
            markdown.Append("- ").Append(Md.Text(chart.Title)).Append(": ").Append(Md.Text(chart.Words)).Append('\n');
        }

        html.Append("</div>\n");
        SectionBuilder section = new();
        section.Figure(html.ToString(), markdown.ToString());
        section.Figure(Key(set));
        section.Paragraph(Md.Small(PageWords.ChartSpan(set)));
        section.List(set.Medicines.Select(medicine => $"{Md.Strong(medicine.Letter)}: {Md.Text(medicine.Name)}"));
        section.Paragraph(set.MedicinesLeftOut == 0 ? "" : Md.Small(PageWords.MedicinesLeftOut(set.MedicinesLeftOut)));
        section.Paragraph(set.LeftOut == 0 ? "" : Md.Small(PageWords.ChartsLeftOut(set.LeftOut)));
        return section.Build("charts", PageWords.OverTime);
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
