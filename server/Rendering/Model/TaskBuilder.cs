using HealthNotes.Grammar.Notes;
using HealthNotes.Record.Due;

namespace HealthNotes.Rendering.Model;

/// <summary>Questions, and things due.</summary>
internal static class TaskBuilder
{
    public static Shown<DatedText> Questions(PageContext context) => Shown<DatedText>.Last(
        [.. context.Items.Where(item => item.Item is TextTask { Word.Word: "ask" })
            .Select(item => new DatedText(item.Entry.Day, NoteText.Field(((TextTask)item.Item).Text.Text)))],
        PageLimits.ListItems);

    /// <summary>What is due, as the analysis says.</summary>
    public static Shown<DueItem> Due(PageContext context) => Shown<DueItem>.First(
        [.. DueList.Of(context.Analysis.Record).Select(due => new DueItem(due.On, due.On is { } on ? on.DayNumber - context.Analysis.Today.DayNumber : null, DueText.Of(due)))],
        PageLimits.ListItems);
}
