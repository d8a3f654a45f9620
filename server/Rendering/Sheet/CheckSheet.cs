using System.Text;
using HealthNotes.Analysis;
using HealthNotes.Record.Checks;
using HealthNotes.Rendering.Html;
using HealthNotes.Rendering.Model;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Sheet;

/// <summary>
/// This pet's blank check sheet: two sides of one sheet of paper, to be filled in by hand beside the animal and typed up later.
/// Pure: the same analysis and paper give the same bytes.
/// </summary>
public static class CheckSheet
{
    /// <summary>The sheet as one self-contained HTML file.</summary>
    public static string Html(NoteAnalysis analysis, Paper paper)
    {
        var context = new PageContext(analysis, PageOptions.Default);
        var plan = CheckPlan.Of(analysis.Record);
        string name = analysis.Pet.Name is { Length: > 0 } given ? SheetLimits.Cut(NoteText.Field(given), SheetLimits.NameLength) : PageWords.PetWithoutName;
        var body = new StringBuilder("<main>\n<section class=\"side front\" aria-labelledby=\"front\">\n");
        SheetHead.Write(body, context, name);
        SheetList.Write(body, context, plan);
        body.Append("</section>\n<section class=\"side back\" aria-labelledby=\"back\">\n");
        body.Append($"<h2 id=\"back\">{HtmlText.Escape(PageWords.SheetBack(name))}</h2>\n");
        SheetBody.Write(body, context, plan);
        SheetScale.Write(body);
        SheetCounting.Write(body);
        SheetCautions.Write(body, context);
        body.Append("</section>\n</main>\n");
        return HtmlDocument.Of(PageWords.SheetTitle(name), Style(paper), body.ToString());
    }

    private static Stylesheet Style(Paper paper)
    {
        Stylesheet common = Stylesheet.Of("sheet.css");
        return new Stylesheet($"{common.Text}\n@page {{ size: {paper}; margin: {(paper == Paper.A4 ? "9mm" : "7mm 9mm")}; }}\n@media print {{ html {{ font-size: {(paper == Paper.A4 ? "7.6pt" : "7pt")}; }} }}\n");
    }
}
