using System.Text;
using System.Xml.Linq;
using HealthNotes.Rendering.Blocks;
using HealthNotes.Rendering.Drawing.Charts;
using HealthNotes.Rendering.Html;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Sections;

/// <summary>How the pet's values went over time, one small chart a value with its key beside it, all on one time axis.</summary>
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
                .Append(chart.Caption.Length == 0 ? "" : $"<br><bdi>{HtmlText.Escape(chart.Caption)}</bdi>").Append("</figcaption>\n")
                .Append(ChartDrawing.Of(chart, set, index + 1).ToString(SaveOptions.DisableFormatting)).Append('\n').Append(Key(chart)).Append("</figure>\n");
        }

        IEnumerable<string> words = set.Charts.Select(chart => $"{chart.Title}: {chart.Words}");
        return Section.Of(
            "charts", PageWords.OverTime,
            new Figure(html.Append("</div>\n<p><small>").Append(HtmlText.Escape(ChartText.Span(set))).Append("</small></p>\n").ToString(), Block.List(words.Concat(set.Medicines.Where(medicine => medicine.Doses.Count > 1).Select(ChartText.Of)).Select(line => (Prose)line))),
            Block.Paragraph(set.LeftOut == 0 ? "" : Prose.Small(PageWords.ChartsLeftOut(set.LeftOut))));
    }

    /// <summary>What the signs of one chart mean; a lone dot needs no words.</summary>
    private static string Key(Chart chart)
    {
        Mark[] marks = [.. chart.Marks];
        var point = new Mark(default, 0, null, null, MarkKind.Point);
        bool both = marks.Any(mark => mark is { AtClinic: true, IsValue: true }) && marks.Any(mark => mark is { AtClinic: false, IsValue: true });
        (bool IsThere, XElement[] Sign, string Words)[] all =
        [
            (both, [ChartDrawing.Draw(point, 9, 7)], PageWords.KeyHome),
            (marks.Any(mark => mark.AtClinic), [ChartDrawing.Draw(point with { AtClinic = true }, 9, 7)], PageWords.KeyClinic),
            (marks.Any(mark => mark.Low is not null), [ChartDrawing.Line("doubt", 9, 1, 9, 13), ChartDrawing.Draw(point, 9, 7)], chart.Doubt),
            (marks.Any(mark => mark.Kind == MarkKind.About), [ChartDrawing.Draw(point with { Kind = MarkKind.About }, 9, 7)], PageWords.KeyAbout),
            (marks.Any(mark => !mark.IsValue), [ChartDrawing.Draw(point with { Kind = MarkKind.Below }, 9, 4)], PageWords.KeyBound),
            (chart.Normal.Count > 0, [ChartDrawing.Rect("normal", 1, 2, 16, 10)], PageWords.KeyNormal),
            (chart.Usual is not null, [ChartDrawing.Rect("usual", 1, 2, 16, 10), new XElement("path", new XAttribute("class", "hatch"), new XAttribute("d", "M1 8 7 2M1 12 11 2M7 12 17 2M13 12 17 8"))], chart.UsualFrom),
            (chart.Limits.Count > 0, [ChartDrawing.Line("limit", 0, 7, 18, 7)], PageWords.KeyLimit),
        ];
        string rows = string.Concat(all.Where(row => row.IsThere).Select(row => $"<li>{ChartDrawing.Sign(row.Sign).ToString(SaveOptions.DisableFormatting)} {HtmlText.Escape(row.Words)}</li>\n"));
        return rows.Length == 0 ? "" : $"<ul class=\"chart-key\">\n{rows}</ul>\n";
    }
}
