using HealthNotes.Rendering.Blocks;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Sections;

/// <summary>Home care day by day: each medicine, what was eaten, drunk and passed; and the glucose curves.</summary>
internal static class DayGridSection
{
    public static Section? Write(PageModel model) => model.Days is not { } grid ? null : Section.Of(
        "days", PageWords.DaysOfCare,
        Block.LeftOut(grid.LeftOut),
        Block.Table(PageWords.DaysCaption + (grid.Rows.Any(row => row.Cells.Any(cell => cell.Contains(PageWords.NotLogged, StringComparison.Ordinal))) ? PageWords.NotLoggedMeans : ""), [PageWords.Day, .. grid.Columns], [.. grid.Rows.Select(row => (Prose[])[PageWords.Days(row.From, row.To, grid.Today), .. row.Cells.Select(cell => (Prose)cell)])]),
        Block.Paragraph(grid.WithoutNote.Count == 0 ? "" : Prose.Small(PageWords.WithoutNote(grid.WithoutNote, grid.Today))),
        Block.Paragraph(grid.NeverLogged.Count == 0 ? "" : Prose.Small(PageWords.NeverLogged(grid.NeverLogged, grid.Today))),
        Block.Table(
            PageWords.CurvesCaption, [PageWords.Day, PageWords.InsulinColumn, PageWords.GlucoseColumn],
            [.. grid.Curves.Select(curve => (Prose[])[PageWords.Days(curve.Day, curve.Day, grid.Today), curve.Insulin, curve.Values])]));
}
