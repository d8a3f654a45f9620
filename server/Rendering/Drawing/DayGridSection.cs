using HealthNotes.Rendering.Blocks;
using HealthNotes.Rendering.Model;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Drawing;

/// <summary>Home care day by day: what was given and missed, eaten, drunk and passed.</summary>
internal static class DayGridSection
{
    public static Section? Write(PageModel model) => model.Days is not { } grid ? null : Section.Of(
        "days", PageWords.DaysOfCare,
        Block.LeftOut(grid.LeftOut),
        Block.Table(
            PageWords.DaysCaption,
            [PageWords.Day, PageWords.DosesColumn, PageWords.MealsColumn, PageWords.WaterColumn, PageWords.UrineColumn, PageWords.StoolColumn, PageWords.VomitColumn, PageWords.OtherColumn, PageWords.GlucoseColumn],
            [.. grid.Rows.Select(row => (Prose[])
            [
                row.Day, row.Doses, row.Meals, row.Water, row.Urine, row.Stool, row.Vomit, row.Other, row.Glucose,
            ])]));
}
