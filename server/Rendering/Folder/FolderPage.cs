using System.Collections.Immutable;
using HealthNotes.Analysis;
using HealthNotes.Analysis.Findings;
using HealthNotes.Analysis.Problems;
using HealthNotes.Grammar.Items;
using HealthNotes.Record.Due;
using HealthNotes.Rendering.Blocks;
using HealthNotes.Rendering.Html;
using HealthNotes.Rendering.Markdown;
using HealthNotes.Rendering.Model;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Folder;

/// <summary>What the index says of a note: all that is kept of it, so that a folder of any size fits into memory.</summary>
public sealed record FolderNote
{
    private const int FindingsShown = 3;
    private const int DueShown = 4;

    /// <summary>Days ahead that what is due is shown for, so that the index speaks of what is near (common practice, no source).</summary>
    private const int DueDays = 60;

    /// <summary>Takes from a note what the index needs.</summary>
    /// <param name="name">The note as a person names it: its path in the folder.</param>
    /// <param name="link">Where its page lies, from the index; percent-encoded. Null when there is none.</param>
    /// <param name="analysis">What was worked out; null when the note could not be read.</param>
    /// <param name="problem">Why it could not be read; null when it could.</param>
    public FolderNote(string name, string? link, NoteAnalysis? analysis, string? problem)
    {
        Link = link;
        Name = analysis?.Pet.Name is { Length: > 0 } pet ? NoteText.Field(pet) : analysis is null ? NoteText.Field(name) : PageWords.PetWithoutName;
        About = analysis is null ? PageWords.FolderUnread(NoteText.Field(problem ?? "")) : AboutOf(name, analysis);
        DueItem[] due = analysis is null ? [] : [.. DueList.Of(analysis.Record)];
        Overdue = [.. due.Where(item => IsOverdue(item, analysis!.Today)).Select(item => (item.On, DueText.Line(item, analysis!.Today)))];
        Parts = analysis is null ? [] : [.. PartsOf(analysis, [.. due.Where(item => !(item.On > analysis.Today.Plus(DueDays)) && !IsOverdue(item, analysis.Today))])];
    }

    /// <summary>Where its page lies, from the index; null when there is none.</summary>
    public string? Link { get; }

    internal Prose Name { get; }

    internal Prose About { get; }

    /// <summary>What was ordered and the visits that are overdue.</summary>
    internal ImmutableArray<(DateOnly? On, string Line)> Overdue { get; }

    /// <summary>What needs attention, and what else is due; their keys lack the number of the note.</summary>
    internal ImmutableArray<Section> Parts { get; }

    private static bool IsOverdue(DueItem item, DateOnly today) => item.IsOrder && item.On < today;

    private static Prose AboutOf(string name, NoteAnalysis analysis)
    {
        string[] about =
        [
            PageWords.NameOf(analysis.Pet.Species), analysis.Pet.AgeOn(analysis.Today)?.ToString() ?? "", analysis.Pet.StageOn(analysis.Today)?.Name ?? "",
            PageWords.FolderLast(analysis.Note.Entries.Select(entry => entry.Head.Date).Where(day => day <= analysis.Today).Max()), NoteText.Field(name),
        ];
        return Prose.Small(string.Join(", ", about.Where(part => part.Length > 0)));
    }

    private static IEnumerable<Section> PartsOf(NoteAnalysis analysis, DueItem[] due) => new[]
    {
        Attention(new PageContext(analysis, PageOptions.Default)),
        Section.Of("due", PageWords.FolderDue, Block.List(due.Take(DueShown).Select(item => (Prose)DueText.Line(item, analysis.Today))), More(due.Length - DueShown)),
    }.OfType<Section>();

    private static Section? Attention(PageContext context)
    {
        var text = new ProblemText(context);
        Problem[] problems = [.. ProblemList.Of(context.Analysis).Where(problem => problem is { Level: > FindingLevel.Info, IsEnded: false })];
        int unread = context.Analysis.Findings.Count(finding => finding.Level == FindingLevel.Error && context.IsCurrent(finding.Line));
        return Section.Of(
            "attention", PageWords.Attention,
            Block.Paragraph(problems.Length == 0 ? PageWords.NothingCrossed(context.Analysis.Note.Entries.Length > 0) : ""),
            Block.List(problems.Take(FindingsShown).Select(problem => Prose.Mark(problem.Level, level => PageWords.LevelFor(Audience.Owner, level)) + " " + Prose.Strong(ProblemText.TitleOf(problem) + ":") + " " + text.LineOf(problem, PageLimits.ProblemLength))),
            More(problems.Length - FindingsShown),
            Block.Paragraph(unread == 0 ? "" : PageWords.FolderNotUnderstood(unread)));
    }

    private static Block? More(int count) => count > 0 ? Block.Paragraph(Prose.Small(PageWords.FolderMore(count))) : null;
}

/// <summary>The index of a folder of notes: what is overdue, then each pet, what needs attention, what is due, and the way to its page.</summary>
public static class FolderPage
{
    /// <summary>The index as one self-contained HTML file.</summary>
    public static string Html(IReadOnlyList<FolderNote> notes, DateOnly today) => HtmlWriter.Of(Page(notes, today), Stylesheet.VisitPage);

    /// <summary>The index as Markdown.</summary>
    public static string Markdown(IReadOnlyList<FolderNote> notes, DateOnly today) => MarkdownWriter.Of(Page(notes, today));

    private static BlockPage Page(IReadOnlyList<FolderNote> notes, DateOnly today) => new(
        PageWords.FolderDocument(today), PageWords.FolderTitle, [PageWords.FolderIntro(notes.Count, today)], null,
        [.. new[] { Overdue(notes) }.OfType<Section>(), .. notes.Select((note, index) => Pet(note, index + 1))], null, PageWords.Closing);

    /// <summary>What was ordered and the visits that are overdue lead, whoever they are for.</summary>
    private static Section? Overdue(IReadOnlyList<FolderNote> notes) => Section.Of(
        "overdue", PageWords.FolderOverdue,
        Block.List(notes.SelectMany((note, index) => note.Overdue.Select(due => (due.On, Text: Prose.Link($"#pet-{index + 1}", note.Name) + $": {due.Line}"))).OrderBy(due => due.On).Select(due => due.Text)));

    private static Section Pet(FolderNote note, int number) => new(
        $"pet-{number}", note.Link is null ? note.Name : Prose.Link(note.Link, note.Name),
        [new Paragraph(note.About), .. note.Parts.Select(part => part with { Key = $"{part.Key}-{number}" })], "pet-of-folder");
}
