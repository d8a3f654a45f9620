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
                .Append("<br><bdi>").Append(HtmlText.Escape(chart.Caption)).Append("</bdi></figcaption>\n")
                .Append(ChartDrawing.Of(chart, set, index + 1).ToString(SaveOptions.DisableFormatting)).Append('\n').Append(Key(chart)).Append("</figure>\n");
            markdown.Append("- ").Append(Md.Text(chart.Title)).Append(": ").Append(Md.Text(string.Join(" ", chart.Limits.Select(limit => $"{PageWords.KeyLimit}: {limit.Words}.").Prepend(chart.Words)))).Append('\n');
        }

        html.Append("</div>\n");
        markdown.Append(string.Concat(set.Medicines.Select(medicine => $"- {Md.Text(PageWords.MedicineInWords(medicine))}\n")));
        SectionBuilder section = new();
        section.Figure(html.ToString(), markdown.ToString());
        section.Paragraph(Md.Small(PageWords.ChartSpan(set)));
        section.Paragraph(set.Unchanged.Count == 0 ? "" : Md.Small(PageWords.AlsoGiven(set.Unchanged)));
        section.Paragraph(set.LeftOut == 0 ? "" : Md.Small(PageWords.ChartsLeftOut(set.LeftOut)));
        return section.Build("charts", PageWords.OverTime);
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
