using HealthNotes.Rendering.Model;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Markdown;

/// <summary>Writes what changed since the last visit.</summary>
internal static class ChangeSection
{
    public static PageSection? Write(PageModel model) => model.Changes is not { } changes ? null : new SectionBuilder()
        .Paragraph(changes.Lines.Items.Count + changes.Values.Items.Count == 0 ? Md.Text(PageWords.NothingChanged) : "")
        .List(changes.Lines.Items.Select(Md.Start))
        .LeftOut(changes.Lines.LeftOut)
        .Table(
            PageWords.ChangesCaption, [PageWords.Kind, PageWords.Then, PageWords.Now, PageWords.Change],
            [.. changes.Values.Items.Select(value => (string[])[Md.Text(value.What), Md.Text(value.Then), Md.Text(value.Now), Md.Text(value.Change)])])
        .LeftOut(changes.Values.LeftOut)
        .Build("changes", PageWords.ChangesSince(changes.Since, changes.From));
}
