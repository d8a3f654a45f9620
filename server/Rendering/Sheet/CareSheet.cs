using System.Globalization;
using System.Xml.Linq;
using HealthNotes.Analysis;
using HealthNotes.Analysis.Rules;
using HealthNotes.Grammar.Items;
using HealthNotes.Record.HomeCare;
using HealthNotes.Record.Lumps;
using HealthNotes.Rendering.Model;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Sheet;

/// <summary>
/// A blank log of home care for seven days on one side of paper: a row a dose, then meals, water, outputs and wounds. Pure: the
/// same analysis and paper give the same bytes.
/// </summary>
public static class CareSheet
{
    private const int Days = 7;
    private const int LeastDoseRows = 5;
    private const int MostWounds = 2;

    /// <summary>The log as one self-contained HTML file.</summary>
    public static string Html(NoteAnalysis analysis, Paper paper)
    {
        var context = new PageContext(analysis, PageOptions.Default);
        string name = SheetHead.NameOf(analysis);
        return SheetPaper.Html(
            PageWords.LogTitle(name), paper,
            SheetPaper.Side("log", SheetHead.Of(context, name, "log"), Tag.Of("p.lead", PageWords.LogLead), Grid(context), SheetCautions.OfUrgent(context), SheetCautions.Typing(PageWords.LogTyping, $"{analysis.Today:yyyy-MM-dd} log")));
    }

    private static XElement Grid(PageContext context)
    {
        DateOnly today = context.Analysis.Today;
        IEnumerable<string> days = Enumerable.Range(0, Days).Select(day => today.Plus(day).ToString("ddd d MMM", CultureInfo.InvariantCulture));
        XElement[] all = [.. MedicineOrder.On(today, context.Analysis.Record).SelectMany(Doses)];
        XElement[] doses = all[..Math.Min(all.Length, SheetLimits.DoseRows)];
        return Tag.Table("table.log", all.Length == doses.Length ? PageWords.CareSheetCaption : $"{PageWords.CareSheetCaption} {PageWords.LogDosesLeftOut(all.Length - doses.Length)}", days.Prepend(PageWords.LogWhat), [
            .. doses, .. Enumerable.Range(0, Math.Max(1, LeastDoseRows - doses.Length)).Select(_ => Row(PageWords.LogOtherDose, "gave", Tag.Box())),
            .. PageWords.LogRows(context.Units).Select(row => Row(row.Name, row.Word)),
            .. Wounds(context), Row(PageWords.LogNotes, ">", kind: "tr.notes"),
        ]);
    }

    /// <summary>A row for each dose of a day: one plan given three times a day has three.</summary>
    private static IEnumerable<XElement> Doses(MedicineOrder order)
    {
        string name = SheetLimits.Cut($"{NoteText.Field(order.Plan.Medicine.Text)} {PageWords.DoseInWords(order.Plan)}".TrimEnd(), SheetLimits.FactLength);
        int doses = order.DosesADay ?? 1;
        return Enumerable.Range(1, doses).Select(dose => Row(doses == 1 ? name : PageWords.LogDose(name, dose), "gave", Tag.Box()));
    }

    private static IEnumerable<XElement> Wounds(PageContext context)
    {
        (int Number, LumpLife Life)[] wounds = [.. LumpNumbering.Of(context.Analysis.Record).Where(place => place.Life.Key.Word == "wound" && place.Life.Ended is null).TakeLast(MostWounds)];
        return wounds.Length == 0 ? [Row(PageWords.LogWound(Wording.NameOf("wound")), "wound")]
            : wounds.Select(wound => Row(PageWords.LogWound(PageWords.LumpChart(wound.Number, Wording.NameOf("wound"), SheetLimits.Cut(SiteWords.Of(wound.Life), SheetLimits.PlaceLength))), "wound"));
    }

    private static XElement Row(string name, string word, XElement? mark = null, string kind = "tr") => Tag.Of(
        kind, Tag.Head(Tag.Bdi(name), " ", Tag.Of("code", word)), Enumerable.Range(0, Days).Select(_ => Tag.Of("td", mark is null ? null : new XElement(mark))));
}
