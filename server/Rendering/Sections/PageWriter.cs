using HealthNotes.Record.Ranges;
using HealthNotes.Rendering.Blocks;
using HealthNotes.Rendering.Model;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Sections;

/// <summary>Puts the page together; a section without content is null.</summary>
internal static class PageWriter
{
    /// <summary>The caution that the page's closing line says already.</summary>
    private const string SaidByClosing = "compare";

    private const int LinesOnPage = 6;

    public static BlockPage Write(PageContext context)
    {
        var model = PageModel.Of(context);
        var problems = new ProblemSections(context, model);
        string name = NameOf(context);
        Section told = problems.Problems();
        var head = new HeadSection(context, model, HeadSection.Words(name) + HeadSection.Words(told.Title.Plain));
        bool owner = context.Options.For == Audience.Owner;
        Section?[] sections =
        [
            problems.Asked(),
            problems.Questions(),
            told,
            problems.NextSteps(),
            NotUnderstood(model),
            LookedAtSections.Measured(context, model),
            LookedAtSections.LookedAt(context),
            ChartSection.Write(model),
            BodySection.Write(model),
            DayGridSection.Write(model),
            CourseSection.Write(context),
            LookedAtSections.Lab(context),
            LookedAtSections.Due(context, head.Told),
            PictureSection.Write(model),
            new AppendixSections(context, model, head, problems).Build(),
            owner ? null : Section.Of("paste", PageWords.Paste, new CopyBlock(PlainLines.Of(context, model, head))),
        ];
        return new BlockPage(
            PageWords.Title(name, context.Analysis.Today), name, [.. head.Intro], head.Section, [.. sections.OfType<Section>()],
            owner ? Section.Of("cautions", PageWords.Cautions, Block.List(ClinicalTables.Default.Cautions.Where(caution => caution.Key != SaidByClosing).Select(caution => (Prose)caution.Text))) : null,
            PageWords.Closing);
    }

    /// <summary>The five lines alone.</summary>
    public static string Plain(PageContext context) => PageModel.Of(context) is var model ? PlainLines.Of(context, model, new HeadSection(context, model, 0)) : "";

    /// <summary>What stands at the foot of each printed sheet.</summary>
    public static string Footer(PageContext context)
    {
        string Text(string word) => context.Options.For == Audience.Share ? "" : string.Join("; ", PetCardBuilder.Texts(context, word).Take(1));
        string chip = Text("chip");
        DateOnly?[] days = [.. context.Analysis.Note.Entries.Select(entry => entry.Head.Date).Where(day => day <= context.Analysis.Today)];
        return PageWords.RunningFooter(
        [
            NameOf(context), string.Join(" ", new[] { PageWords.NameOf(context.Analysis.Pet.Species).ToLowerInvariant(), PageWords.Sex(context.Analysis.Pet.Male, context.Analysis.Pet.Neutered)?.ToLowerInvariant() ?? "" }.Where(part => part.Length > 0)),
            chip.Length == 0 ? "" : $"{PageWords.ContactLabel("chip")} {chip}", Text("owner"),
            days.Min() is { } first && days.Max() is { } last ? PageWords.NotesOf(first, last) : "", PageWords.MadeOn(context.Analysis.Today), PageWords.Version(typeof(PageWriter).Assembly.GetName().Version?.ToString(3) ?? ""),
        ]);
    }

    private static string NameOf(PageContext context) => string.IsNullOrEmpty(context.Analysis.Pet.Name) ? PageWords.PetWithoutName : NoteText.Field(context.Analysis.Pet.Name);

    private static Section? NotUnderstood(PageModel model)
    {
        NotUnderstood lines = model.NotUnderstood;
        return Section.Of(
            "not-understood", PageWords.NotUnderstood,
            Block.Paragraph(lines.Lines.Items.Count == 0 ? "" : PageWords.NotUnderstoodLead),
            Block.List(lines.Lines.Items.Take(LinesOnPage).Select(AppendixSections.Line)),
            Block.Paragraph(lines.Lines.Items.Count <= LinesOnPage ? "" : PageWords.MoreNotUnderstood(lines.Lines.Items.Skip(LinesOnPage).Select(line => line.Number), lines.Lines.LeftOut)),
            Block.Paragraph(lines.Earlier == 0 ? "" : Prose.Small(PageWords.EarlierNotUnderstood(lines.Earlier, lines.EarlierLines))));
    }
}
