using HealthNotes.Analysis.Findings;
using HealthNotes.Rendering.Blocks;
using HealthNotes.Rendering.Drawing;
using HealthNotes.Rendering.Model;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Sections;

/// <summary>Makes blocks of the model, one method a section; a section without content is null.</summary>
internal static class PageWriter
{
    public static BlockPage Write(PageModel model)
    {
        string name = string.IsNullOrEmpty(model.Pet.Name) ? PageWords.PetWithoutName : model.Pet.Name;
        Section?[] sections =
        [
            FindingSections.Attention(model),
            ChangeSection.Write(model),
            Questions(model),
            .. LookedAtSections.All(model),
            ChartSection.Write(model),
            BodySection.Write(model),
            DayGridSection.Write(model),
            CareSections.Log(model),
            CareSections.NotLookedAt(model),
            CareSections.Due(model),
            PictureSection.Write(model),
            Texts(model),
            NotUnderstood(model),
            FindingSections.ToKnow(model),
            Earlier(model),
        ];
        return new BlockPage(
            PageWords.Title(name, model.Today), name,
            [model.For == Audience.Share ? PageWords.SharedSubtitle(model.Today) : PageWords.Subtitle(model.Today), PageWords.Summary(model.Period)],
            Pet(model.Pet), [.. sections.OfType<Section>()],
            Section.Of("cautions", PageWords.Cautions, Block.List(model.Cautions.Select(text => (Prose)text))),
            PageWords.Closing);
    }

    /// <summary>The mark of a level; nothing for what is as expected.</summary>
    public static Prose Mark(FindingLevel? level) => Prose.Mark(level, PageWords.LevelName);

    private static Section? Pet(PetCard pet) => Section.Of(
        "pet", PageWords.PetHeading,
        Block.List(pet.Facts.Select(fact => fact.Values.Count == 1
            ? new ListItem(Prose.Strong(fact.Label) + ": " + fact.Values[0], [])
            : new ListItem(Prose.Strong(fact.Label) + ":", [.. fact.Values.Select(value => (Prose)value)]))),
        Block.Paragraph(Prose.Small(string.Join("; ", pet.Contacts.Select(fact => $"{fact.Label}: {string.Join(", ", fact.Values)}")))));

    private static Section? Questions(PageModel model) => Section.Of(
        "questions", PageWords.Questions,
        Block.List(model.Questions.Items.Select(question => $"{PageWords.Iso(question.Day)}: " + (Prose)question.Text)),
        Block.LeftOut(model.Questions.LeftOut));

    private static Section? Texts(PageModel model)
    {
        List<Block?> blocks = [];
        string heading = "";
        foreach (FreeText text in model.Texts.Items)
        {
            if (text.Heading != heading || text.About is not null)
            {
                blocks.Add(Block.Paragraph(Prose.Strong(text.Heading) + (text.About is null ? "" : ", " + Prose.Quote(text.About))));
            }

            heading = text.Heading;
            blocks.Add(new FreeBlock(text.Markdown));
            blocks.Add(text.Cut ? Block.Paragraph(Prose.Small(PageWords.TextCut)) : null);
        }

        return Section.Of("texts", PageWords.Texts, [.. blocks, Block.LeftOut(model.Texts.LeftOut)]);
    }

    private static Section? NotUnderstood(PageModel model)
    {
        NotUnderstood lines = model.NotUnderstood;
        return Section.Of(
            "not-understood", PageWords.NotUnderstood,
            Block.Paragraph(lines.Lines.Items.Count == 0 ? "" : PageWords.NotUnderstoodLead),
            Block.List(lines.Lines.Items.Select(FindingSections.Line)),
            Block.LeftOut(lines.Lines.LeftOut),
            Block.Paragraph(lines.Earlier == 0 ? "" : Prose.Small(PageWords.EarlierNotUnderstood(lines.Earlier, lines.EarlierLines))));
    }

    private static Section? Earlier(PageModel model) => Section.Of(
        "earlier", PageWords.Earlier,
        Block.List(model.Earlier.Years.Select(year => Prose.Strong(year.Label) + $": {string.Join(", ", year.Values)}")),
        Block.Paragraph(model.Earlier.LeftOut == 0 ? "" : Prose.Small(PageWords.EarlierLeftOut(model.Earlier.LeftOut, model.Earlier.LeftOutFrom))));
}
