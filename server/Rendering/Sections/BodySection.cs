using System.Text;
using System.Xml.Linq;
using HealthNotes.Rendering.Blocks;
using HealthNotes.Rendering.Drawing.Body;
using HealthNotes.Rendering.Html;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Sections;

/// <summary>Lumps, wounds and sore places: on a map of the body, and in a table under the same numbers.</summary>
internal static class BodySection
{
    /// <summary>More marks than this are not to be told apart on a map.</summary>
    private const int MostOnMap = 40;

    public static Section? Write(PageModel model)
    {
        BodyFinding[] marked = [.. model.Body.Items.Where(row => row.Mark.Spots.Count > 0).Take(MostOnMap)];
        int[] nowhere = [.. model.Body.Items.Where(row => row.Mark.Spots.Count == 0 && !row.IsGone).Select(row => row.Mark.Number)];
        int tooMany = model.Body.Items.Count(row => row.Mark.Spots.Count > 0) - marked.Length;
        return Section.Of(
            "body", PageWords.Body,
            marked.Length > 0 ? new Figure(Map(model, [.. marked.Select(row => row.Mark)]) + Small(nowhere.Length == 0 ? "" : PageWords.NotOnMap(nowhere)) + Small(tooMany == 0 ? "" : PageWords.MapLeftOut(tooMany))) : null,
            Block.List(model.Body.Items.Select(row => Prose.Strong(row.Title + ":") + " " + (row.Problem is { } problem ? Prose.Link($"#problems", PageWords.ToldUnder(problem)) : row.Line))),
            Block.LeftOut(model.Body.LeftOut),
            Block.Paragraph(model.Gone.Count == 0 ? "" : PageWords.NoLongerThere(model.Gone)));
    }

    private static string Small(string text) => text.Length == 0 ? "" : $"<p><small>{HtmlText.Escape(text)}</small></p>\n";

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
