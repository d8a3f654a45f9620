using System.Text;
using System.Xml.Linq;
using HealthNotes.Analysis.Rules;
using HealthNotes.Record.Checks;
using HealthNotes.Record.Lumps;
using HealthNotes.Rendering.Drawing.Body;
using HealthNotes.Rendering.Html;
using HealthNotes.Rendering.Model;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Sheet;

/// <summary>The map of the body, to mark what is new, and the lumps to measure again under their numbers.</summary>
internal static class SheetBody
{
    public static void Write(StringBuilder html, PageContext context, CheckPlan plan)
    {
        LumpLife[] places = [.. plan.Places.Take(SheetLimits.Places)];
        BodyMark[] marks = [.. places.Select((life, index) => Mark(context, life, index + 1))];
        html.Append("<div class=\"scan\">\n<div class=\"maps\">\n");
        foreach (BodyView view in Enum.GetValues<BodyView>())
        {
            html.Append("<figure>\n").Append(BodyDrawing.Of(context.Analysis.Pet.Species, view, marks, $"map-{view.ToString().ToLowerInvariant()}").ToString(SaveOptions.DisableFormatting))
                .Append("\n<figcaption>").Append(HtmlText.Escape(PageWords.NameOf(context.Analysis.Pet.Species, view))).Append("</figcaption>\n</figure>\n");
        }

        html.Append("</div>\n<div class=\"places\">\n<h3>").Append(HtmlText.Escape(PageWords.SheetPlaces)).Append("</h3>\n<p>").Append(HtmlText.Escape(HowToTake.Of("lump")?.Steps ?? "")).Append("</p>\n");
        html.Append("<table>\n<caption>").Append(HtmlText.Escape(PageWords.SheetPlacesCaption)).Append("</caption>\n<thead><tr>");
        foreach (string column in new[] { PageWords.Number, PageWords.Kind, PageWords.SheetLast, PageWords.SheetToday })
        {
            html.Append("<th scope=\"col\">").Append(HtmlText.Escape(column)).Append("</th>");
        }

        html.Append("</tr></thead>\n<tbody>\n");
        for (int index = 0; index < places.Length; index++)
        {
            Row(html, context, places[index], index + 1);
        }

        // blank rows wait for what is new, as many as the table has room for
        for (int row = places.Length; row < Math.Max(places.Length + 1, SheetLimits.PlaceRows); row++)
        {
            html.Append("<tr><th scope=\"row\">").Append(row + 1).Append("</th><td></td><td>").Append(HtmlText.Escape(PageWords.SheetNewPlace)).Append("</td><td class=\"today\"><span class=\"field\"></span>mm</td></tr>\n");
        }

        int more = plan.Places.Length - places.Length;
        html.Append("</tbody>\n</table>\n").Append(more == 0 ? "" : $"<p>{HtmlText.Escape(PageWords.LeftOut(more))}</p>\n").Append("</div>\n</div>\n");
    }

    private static void Row(StringBuilder html, PageContext context, LumpLife life, int number)
    {
        string last = life.LastSize is { } size ? $"{HtmlText.Escape(ExaminationBuilder.Size(context, size))} <time>{PageWords.Iso(size.Day)}</time>" : $"<time>{PageWords.Iso(life.Last.Day)}</time>";
        html.Append("<tr><th scope=\"row\">").Append(number).Append("</th><td>").Append(HtmlText.Escape(Wording.NameOf(life.Key.Word).ToLowerInvariant())).Append(" <bdi>")
            .Append(HtmlText.Escape(SheetLimits.Cut(SiteWords.Of(life), SheetLimits.PlaceLength))).Append("</bdi></td><td>").Append(last)
            .Append("</td><td class=\"today\"><span class=\"field\"></span>mm</td></tr>\n");
    }

    private static BodyMark Mark(PageContext context, LumpLife life, int number) => new(
        number, life.Key.Word,
        PageWords.MarkInWords(number, Wording.NameOf(life.Key.Word), SiteWords.Of(life), life.LastSize is { } size ? ExaminationBuilder.Size(context, size) : ""),
        life.Site is null ? [] : [.. BodySpot.Of(life.Site, context.Analysis.Pet.Species)]);
}
