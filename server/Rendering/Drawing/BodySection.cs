using HealthNotes.Rendering.Markdown;
using HealthNotes.Rendering.Model;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Drawing;

/// <summary>Lumps, wounds and sore places: on a map of the body, and in a table.</summary>
internal static class BodySection
{
    public static PageSection? Write(PageModel model) => new SectionBuilder()
        .Table(
            PageWords.BodyCaption,
            [PageWords.Kind, PageWords.Place, PageWords.AsWritten, PageWords.Size, PageWords.Seen, PageWords.FirstNoted, PageWords.LastNoted, PageWords.LevelColumn],
            [.. model.Body.Items.Select(row => (string[])
            [
                Md.Text(row.Kind), Md.Text(row.Place), Md.CellCode(row.SizeWritten), Md.Text(row.Size), Md.Text(row.Seen),
                PageWords.Iso(row.First), PageWords.Iso(row.Last), PageWriter.Mark(row.Level),
            ])])
        .LeftOut(model.Body.LeftOut)
        .Build("body", PageWords.Body);
}
