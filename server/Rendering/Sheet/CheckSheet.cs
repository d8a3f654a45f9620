using System.Xml.Linq;
using HealthNotes.Analysis;
using HealthNotes.Record.Checks;
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
        string name = SheetHead.NameOf(analysis);
        return SheetPaper.Html(
            PageWords.SheetTitle(name), paper,
            SheetPaper.Side("front", SheetHead.Of(context, name, "front", SheetHead.Fill()), Tag.Of("p.lead", PageWords.SheetLead), SheetList.Of(context, plan)),
            SheetPaper.Side(
                "back", Tag.Of("h2", new XAttribute("id", "back"), PageWords.SheetBack(name)), SheetAsked.Of(plan), SheetAsked.Tasks(context), SheetBody.Of(context, plan), SheetScale.Of(context.Units.AreUs), SheetScale.BodyCondition(),
                SheetCounting.Of(), SheetCautions.Of(context)));
    }
}
