using HealthNotes.Analysis.Due;
using HealthNotes.Analysis.Rules;
using HealthNotes.Grammar.Notes;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Model;

/// <summary>Questions, and things due.</summary>
internal static class TaskBuilder
{
    public static Shown<DatedText> Questions(PageContext context) => Shown<DatedText>.Last(
        [.. context.Items.Where(item => item.Item is TextTask { Word.Word: "ask" })
            .Select(item => new DatedText(item.Entry.Day, NoteText.Field(((TextTask)item.Item).Text.Text)))],
        PageLimits.ListItems);

    /// <summary>
    /// What is due, as the analysis says. A recheck that fell due before the current period is left out: the check since then
    /// has looked.
    /// </summary>
    public static Shown<DueItem> Due(PageContext context) => Shown<DueItem>.First(
        [.. context.Analysis.Due.Where(due => due.Kind != DueKind.Recheck || due.On is null || !(due.On < context.Period.From))
            .Select(due => new DueItem(due.On, due.On is { } on ? on.DayNumber - context.Analysis.Today.DayNumber : null, What(due)))],
        PageLimits.ListItems);

    private static string What(Analysis.Due.DueItem due) => due switch
    {
        { Task: Recheck recheck } => $"{PageWords.Recheck} {Wording.NameOf(recheck.Item.Word).ToLowerInvariant()} {SiteWords.Of(recheck.Site)}".TrimEnd(),
        { Kind: DueKind.Check, Every: { } days } => PageWords.NextCheck(days, due.FactLine is not null),
        { Kind: DueKind.Weighing, Every: { } days } => PageWords.NextWeighing(days),
        { Kind: DueKind.Visit, Every: { } days } => PageWords.NextVisit(days),
        _ => NoteText.Field(due.What),
    };
}
