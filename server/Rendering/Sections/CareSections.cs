using HealthNotes.Rendering.Blocks;
using HealthNotes.Rendering.Model;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Sections;

/// <summary>The home-care log, what was not looked at, and what is due.</summary>
internal static class CareSections
{
    public static Section? Log(PageModel model) => Section.Of(
        "log", PageWords.Log,
        Block.LeftOut(model.Log.LeftOut),
        Block.Table(PageWords.LogCaption, [PageWords.Day, PageWords.Time, PageWords.Kind, PageWords.HowMuch, PageWords.LevelColumn], [.. Rows(model.Log.Items)]));

    public static Section? NotLookedAt(PageModel model) => Section.Of(
        "not-looked-at", PageWords.NotLookedAt,
        Block.List(model.NotLookedAt.Skipped.Items.Select(item => (Prose)PageWords.SkippedBecause(item.Item, item.Reason))),
        Block.LeftOut(model.NotLookedAt.Skipped.LeftOut),
        Block.Paragraph(model.NotLookedAt.NotMentioned.Count == 0 ? "" : PageWords.NotMentioned(model.NotLookedAt.NotMentioned)),
        Block.Paragraph(model.NotLookedAt.RestOk ? Prose.Small(PageWords.RestWasOk) : ""));

    public static Section? Due(PageModel model) => Section.Of(
        "due", PageWords.Due,
        Block.List(model.Due.Items.Select(due => $"{PageWords.DueOn(due.On, due.Days)}: " + (Prose)due.What)),
        Block.LeftOut(model.Due.LeftOut));

    /// <summary>A day is named in its first row only; within one table the eye groups the rest below it.</summary>
    private static IEnumerable<Prose[]> Rows(IEnumerable<LogLine> lines)
    {
        string above = "";
        foreach (LogLine line in lines)
        {
            string day = line.By.Length == 0 ? PageWords.Iso(line.Day) : PageWords.DayBy(PageWords.Iso(line.Day), line.By);
            yield return [day == above ? "" : day, line.Time is { } time ? $"{time:HH:mm}" : "", line.What, line.Amount, PageWriter.Mark(line.Level)];
            above = day;
        }
    }
}
