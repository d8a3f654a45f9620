using HealthNotes.Analysis.Findings;
using HealthNotes.Rendering.Drawing;
using HealthNotes.Rendering.Model;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Markdown;

/// <summary>Writes the model as Markdown, one method a section; a section without content is null.</summary>
internal static class PageWriter
{
    public static PageText Write(PageModel model)
    {
        string name = string.IsNullOrEmpty(model.Pet.Name) ? PageWords.PetWithoutName : model.Pet.Name;
        PageSection?[] sections =
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
        return new PageText(
            PageWords.Title(name, model.Today), name, model.For == Audience.Share ? PageWords.SharedSubtitle(model.Today) : PageWords.Subtitle(model.Today), PageWords.Summary(model.Period),
            Pet(model.Pet), [.. sections.OfType<PageSection>()],
            new SectionBuilder().List(model.Cautions.Select(Md.Start)).Build("cautions", PageWords.Cautions) ?? new("cautions", PageWords.Cautions, []),
            PageWords.Closing);
    }

    /// <summary>The mark of a level; nothing for what is as expected.</summary>
    public static string Mark(FindingLevel? level) => level is { } marked ? Md.Strong(PageWords.LevelName(marked)) : "";

    private static PageSection Pet(PetCard pet)
    {
        SectionBuilder section = new();
        section.List(pet.Facts.Select(fact => fact.Values.Count == 1
            ? ($"{Md.Strong(fact.Label)}: {Md.Text(fact.Values[0])}", Enumerable.Empty<string>())
            : ($"{Md.Strong(fact.Label)}:", fact.Values.Select(Md.Start))));
        section.Paragraph(Md.Small(string.Join("; ", pet.Contacts.Select(fact => $"{fact.Label}: {string.Join(", ", fact.Values)}"))));
        return section.Build("pet", PageWords.PetHeading) ?? new PageSection("pet", PageWords.PetHeading, []);
    }

    private static PageSection? Questions(PageModel model) => new SectionBuilder()
        .List(model.Questions.Items.Select(question => $"{PageWords.Iso(question.Day)}: {Md.Text(question.Text)}"))
        .LeftOut(model.Questions.LeftOut)
        .Build("questions", PageWords.Questions);

    private static PageSection? Texts(PageModel model)
    {
        SectionBuilder section = new();
        string heading = "";
        foreach (FreeText text in model.Texts.Items)
        {
            string about = text.About is null ? "" : ", " + Md.Code(text.About);
            if (text.Heading != heading || about.Length > 0)
            {
                section.Paragraph(Md.Strong(text.Heading) + about);
            }

            heading = text.Heading;
            section.Free(text.Markdown);
            section.Paragraph(text.Cut ? Md.Small(PageWords.TextCut) : "");
        }

        return section.LeftOut(model.Texts.LeftOut).Build("texts", PageWords.Texts);
    }

    private static PageSection? NotUnderstood(PageModel model)
    {
        NotUnderstood lines = model.NotUnderstood;
        return new SectionBuilder()
            .Paragraph(lines.Lines.Items.Count == 0 ? "" : PageWords.NotUnderstoodLead)
            .List(lines.Lines.Items.Select(FindingSections.Line))
            .LeftOut(lines.Lines.LeftOut)
            .Paragraph(lines.Earlier == 0 ? "" : Md.Small(PageWords.EarlierNotUnderstood(lines.Earlier, lines.EarlierLines)))
            .Build("not-understood", PageWords.NotUnderstood);
    }

    private static PageSection? Earlier(PageModel model) => new SectionBuilder()
        .List(model.Earlier.Years.Select(year => $"{Md.Strong(year.Label)}: {Md.Text(string.Join(", ", year.Values))}"))
        .Paragraph(model.Earlier.LeftOut == 0 ? "" : Md.Small(PageWords.EarlierLeftOut(model.Earlier.LeftOut, model.Earlier.LeftOutFrom)))
        .Build("earlier", PageWords.Earlier);
}
