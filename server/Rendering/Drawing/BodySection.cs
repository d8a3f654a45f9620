using System.Text;
using System.Xml.Linq;
using HealthNotes.Rendering.Drawing.Body;
using HealthNotes.Rendering.Html;
using HealthNotes.Rendering.Markdown;
using HealthNotes.Rendering.Model;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Drawing;

/// <summary>Lumps, wounds and sore places: on a map of the body, and in a table under the same numbers.</summary>
internal static class BodySection
{
    /// <summary>More marks than this are not to be told apart on a map.</summary>
    private const int MostOnMap = 40;

    public static PageSection? Write(PageModel model)
    {
        BodyFinding[] marked = [.. model.Body.Items.Where(row => row.Mark.Spots.Count > 0).Take(MostOnMap)];
        int[] nowhere = [.. model.Body.Items.Where(row => row.Mark.Spots.Count == 0 && !row.IsGone).Select(row => row.Mark.Number)];
        int tooMany = model.Body.Items.Count(row => row.Mark.Spots.Count > 0) - marked.Length;
        SectionBuilder section = new();
        if (marked.Length > 0)
        {
            section.Figure(Map(model, [.. marked.Select(row => row.Mark)]));
        }

        return section
            .Paragraph(nowhere.Length == 0 ? "" : Md.Small(PageWords.NotOnMap(nowhere)))
            .Paragraph(tooMany == 0 ? "" : Md.Small(PageWords.MapLeftOut(tooMany)))
            .Table(
                PageWords.BodyCaption,
                [
                    PageWords.Number, PageWords.Kind, PageWords.Place, PageWords.SizesColumn, PageWords.ChangeColumn, PageWords.Seen, PageWords.StateColumn, PageWords.FirstNoted, PageWords.LastNoted,
                    PageWords.LevelColumn,
                ],
                [.. model.Body.Items.Select(row => (string[])
                [
                    $"{row.Mark.Number}", Md.Text(row.Kind), Md.Text(row.Place), Md.Text(string.Join("; ", row.Sizes)), Md.Text(row.Change), Md.Text(row.Seen), Md.Text(row.State),
                    PageWords.Iso(row.First), PageWords.Iso(row.Last), PageWriter.Mark(row.Level),
                ])])
            .LeftOut(model.Body.LeftOut)
            .Build("body", PageWords.Body);
    }

    /// <summary>The views that hold a mark; the left side when none does.</summary>
    private static string Map(PageModel model, BodyMark[] marks)
    {
        var html = new StringBuilder("<div class=\"body-maps\">\n");
        foreach (BodyView view in Enum.GetValues<BodyView>().Where(view => marks.Any(mark => mark.Spots.Any(spot => spot.View == view))))
        {
            html.Append("<figure>\n").Append(BodyDrawing.Of(model.Species, view, marks, $"map-{view.ToString().ToLowerInvariant()}").ToString(SaveOptions.DisableFormatting))
                .Append("\n<figcaption>").Append(HtmlText.Escape(PageWords.NameOf(model.Species, view))).Append("</figcaption>\n</figure>\n");
        }

        html.Append("</div>\n<ul class=\"chart-key\">\n");
        foreach (string kind in marks.Select(mark => mark.Kind).Distinct())
        {
            html.Append("<li><svg class=\"body-map key\" viewBox=\"0 0 24 24\" aria-hidden=\"true\">").Append(BodyDrawing.Shape(kind, 12, 12).ToString(SaveOptions.DisableFormatting))
                .Append("</svg> ").Append(HtmlText.Escape(Analysis.Rules.Wording.NameOf(kind).ToLowerInvariant())).Append("</li>\n");
        }

        return html.Append("</ul>\n").ToString();
    }
}
