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

/// <summary>A note of a folder, for its index.</summary>
/// <param name="Name">The note as a person names it: its path in the folder.</param>
/// <param name="Link">Where its page lies, from the index; percent-encoded. Null when there is none.</param>
/// <param name="Analysis">What was worked out; null when the note could not be read.</param>
/// <param name="Problem">Why it could not be read; null when it could.</param>
public sealed record FolderNote(string Name, string? Link, NoteAnalysis? Analysis, string? Problem);

/// <summary>The index of a folder of notes: what is overdue, then each pet, what needs attention, what is due, and the way to its page.</summary>
public static class FolderPage
{
    private const int FindingsShown = 3;
    private const int DueShown = 4;

    /// <summary>Days ahead that what is due is shown for, so that the index speaks of what is near (common practice, no source).</summary>
    private const int DueDays = 60;

    /// <summary>The index as one self-contained HTML file.</summary>
    public static string Html(IReadOnlyList<FolderNote> notes, DateOnly today) => HtmlWriter.Of(Page(notes, today), Stylesheet.VisitPage);

    /// <summary>The index as Markdown.</summary>
    public static string Markdown(IReadOnlyList<FolderNote> notes, DateOnly today) => MarkdownWriter.Of(Page(notes, today));

    private static BlockPage Page(IReadOnlyList<FolderNote> notes, DateOnly today) => new(
        PageWords.FolderDocument(today), PageWords.FolderTitle, [PageWords.FolderIntro(notes.Count, today)], null,
        [.. new[] { Overdue(notes, today) }.OfType<Section>(), .. notes.Select((note, index) => Pet(note, index + 1, today))], null, PageWords.Closing);

    /// <summary>What was ordered and the visits that are overdue lead, whoever they are for.</summary>
    private static Section? Overdue(IReadOnlyList<FolderNote> notes, DateOnly today) => Section.Of(
        "overdue", PageWords.FolderOverdue,
        Block.List(notes.Select((note, index) => (Note: note, Number: index + 1)).Where(one => one.Note.Analysis is not null)
            .SelectMany(one => DueList.Of(one.Note.Analysis!.Record).Where(item => IsOverdue(item, today)).Select(item => (item, one)))
            .OrderBy(due => due.item.On).Select(due => Prose.Link($"#pet-{due.one.Number}", NameOf(due.one.Note)) + $": {DueText.Line(due.item, today)}")));

    private static bool IsOverdue(Record.Due.DueItem item, DateOnly today) => item.IsOrder && item.On < today;

    private static Section Pet(FolderNote note, int number, DateOnly today) => new(
        $"pet-{number}", note.Link is null ? NameOf(note) : Prose.Link(note.Link, NameOf(note)),
        [new Paragraph(About(note)), .. note.Analysis is { } analysis ? Parts(analysis, number, today) : []], "pet-of-folder");

    private static string NameOf(FolderNote note) => note.Analysis?.Pet.Name is { Length: > 0 } name ? NoteText.Field(name) : note.Analysis is null ? NoteText.Field(note.Name) : PageWords.PetWithoutName;

    private static Prose About(FolderNote note)
    {
        if (note.Analysis is not { } analysis)
        {
            return PageWords.FolderUnread(NoteText.Field(note.Problem ?? ""));
        }

        string[] about =
        [
            PageWords.NameOf(analysis.Pet.Species), analysis.Pet.AgeOn(analysis.Today)?.ToString() ?? "", analysis.Pet.StageOn(analysis.Today)?.Name ?? "",
            PageWords.FolderLast(analysis.Note.Entries.Select(entry => entry.Head.Date).Where(day => day <= analysis.Today).Max()), NoteText.Field(note.Name),
        ];
        return Prose.Small(string.Join(", ", about.Where(part => part.Length > 0)));
    }

    private static IEnumerable<Section> Parts(NoteAnalysis analysis, int number, DateOnly today)
    {
        Record.Due.DueItem[] due = [.. DueList.Of(analysis.Record).Where(item => !(item.On > today.Plus(DueDays)) && !IsOverdue(item, today))];
        Section?[] parts =
        [
            Attention(new PageContext(analysis, PageOptions.Default), number),
            Section.Of($"due-{number}", PageWords.FolderDue, Block.List(due.Take(DueShown).Select(item => (Prose)DueText.Line(item, today))), More(due.Length - DueShown)),
        ];
        return parts.OfType<Section>();
    }

    private static Section? Attention(PageContext context, int number)
    {
        var text = new ProblemText(context);
        Problem[] problems = [.. ProblemList.Of(context.Analysis).Where(problem => problem is { Level: > FindingLevel.Info, IsEnded: false })];
        int unread = context.Analysis.Findings.Count(finding => finding.Level == FindingLevel.Error && context.IsCurrent(finding.Line));
        return Section.Of(
            $"attention-{number}", PageWords.Attention,
            Block.Paragraph(problems.Length == 0 ? PageWords.NothingCrossed(context.Analysis.Note.Entries.Length > 0) : ""),
            Block.List(problems.Take(FindingsShown).Select(problem => Prose.Mark(problem.Level, level => PageWords.LevelFor(Audience.Owner, level)) + " " + Prose.Strong(ProblemText.TitleOf(problem) + ":") + " " + text.LineOf(problem, PageLimits.ProblemLength))),
            More(problems.Length - FindingsShown),
            Block.Paragraph(unread == 0 ? "" : PageWords.FolderNotUnderstood(unread)));
    }

    private static Block? More(int count) => count > 0 ? Block.Paragraph(Prose.Small(PageWords.FolderMore(count))) : null;
}
