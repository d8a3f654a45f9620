using System.Collections.Immutable;
using System.Globalization;
using HealthNotes.Analysis;
using HealthNotes.Analysis.Rules;
using HealthNotes.Grammar.Items;
using HealthNotes.Record.HomeCare;
using HealthNotes.Record.Lumps;
using HealthNotes.Rendering.Blocks;
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
            SheetPaper.Side("log", name, [.. SheetHead.Of(context), new Paragraph(PageWords.LogLead, "lead"), Grid(context), SheetCautions.OfUrgent(context), SheetCautions.Typing(PageWords.LogTyping, $"{analysis.Today:yyyy-MM-dd} log")]));
    }

    private static Table Grid(PageContext context)
    {
        DateOnly today = context.Analysis.Today;
        IEnumerable<string> days = Enumerable.Range(0, Days).Select(day => today.Plus(day).ToString("ddd d MMM", CultureInfo.InvariantCulture));
        ImmutableArray<Prose>[] all = [.. MedicineOrder.On(today, context.Analysis.Record).SelectMany(Doses)];
        ImmutableArray<Prose>[] doses = all[..Math.Min(all.Length, SheetLimits.DoseRows)];
        return new Table(all.Length == doses.Length ? PageWords.CareSheetCaption : $"{PageWords.CareSheetCaption} {PageWords.LogDosesLeftOut(all.Length - doses.Length)}", [PageWords.LogWhat, .. days], [
            .. doses, .. Enumerable.Range(0, Math.Max(1, LeastDoseRows - doses.Length)).Select(_ => Row(PageWords.LogOtherDose, "gave", SheetPaper.Box)),
            .. PageWords.LogRows(context.Units).Select(row => Row(row.Name, row.Word, Prose.Empty)),
            .. Wounds(context), Row(PageWords.LogNotes, ">", Prose.Empty),
        ])
        { Class = "log" };
    }

    /// <summary>A row for each dose of a day: one plan given three times a day has three.</summary>
    private static IEnumerable<ImmutableArray<Prose>> Doses(MedicineOrder order)
    {
        string name = SheetLimits.Cut($"{NoteText.Field(order.Plan.Medicine.Text)} {PageWords.DoseInWords(order.Plan)}".TrimEnd(), SheetLimits.FactLength);
        int doses = order.DosesADay ?? 1;
        return Enumerable.Range(1, doses).Select(dose => Row(doses == 1 ? name : PageWords.LogDose(name, dose), "gave", SheetPaper.Box));
    }

    private static IEnumerable<ImmutableArray<Prose>> Wounds(PageContext context)
    {
        (int Number, LumpLife Life)[] wounds = [.. LumpNumbering.Of(context.Analysis.Record).Where(place => place.Life.Key.Word == "wound" && place.Life.Ended is null).TakeLast(MostWounds)];
        IEnumerable<string> names = wounds.Length == 0 ? [Wording.NameOf("wound")] : wounds.Select(wound => PageWords.LumpChart(wound.Number, Wording.NameOf("wound"), SheetLimits.Cut(SiteWords.Of(wound.Life), SheetLimits.PlaceLength)));
        return names.Select(name => Row(PageWords.LogWound(name), "wound", Prose.Empty));
    }

    private static ImmutableArray<Prose> Row(string name, string word, Prose mark) => [(Prose)name + " " + Prose.Quote(word), .. Enumerable.Repeat(mark, Days)];
}
