using HealthNotes.Rendering.Markdown;
using HealthNotes.Rendering.Model;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Drawing;

/// <summary>Home care day by day: what was given and missed, eaten, drunk and passed.</summary>
internal static class DayGridSection
{
    public static PageSection? Write(PageModel model) => model.Days is not { } grid ? null : new SectionBuilder()
        .LeftOut(grid.LeftOut)
        .Table(
            PageWords.DaysCaption,
            [PageWords.Day, PageWords.DosesColumn, PageWords.MealsColumn, PageWords.WaterColumn, PageWords.UrineColumn, PageWords.StoolColumn, PageWords.VomitColumn, PageWords.OtherColumn, PageWords.GlucoseColumn],
            [.. grid.Rows.Select(row => (string[])
            [
                Md.Text(row.Day), Md.Text(row.Doses), Md.Text(row.Meals), Md.Text(row.Water), Md.Text(row.Urine), Md.Text(row.Stool), Md.Text(row.Vomit), Md.Text(row.Other), Md.Text(row.Glucose),
            ])])
        .Build("days", PageWords.DaysOfCare);
}
