using HealthNotes.Rendering.Blocks;
using HealthNotes.Rendering.Model;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Sections;

/// <summary>What changed since the last visit.</summary>
internal static class ChangeSection
{
    public static Section? Write(PageModel model) => model.Changes is not { } changes ? null : Section.Of(
        "changes", PageWords.ChangesSince(changes.Since, changes.From),
        Block.Paragraph(changes.Lines.Items.Count + changes.Values.Items.Count == 0 ? PageWords.NothingChanged : ""),
        Block.List(changes.Lines.Items.Select(line => (Prose)line)),
        Block.LeftOut(changes.Lines.LeftOut),
        Block.Table(
            PageWords.ChangesCaption, [PageWords.Kind, PageWords.Then, PageWords.Now, PageWords.Change],
            [.. changes.Values.Items.Select(value => (Prose[])[value.What, value.Then, value.Now, value.Change])]),
        Block.LeftOut(changes.Values.LeftOut));
}
