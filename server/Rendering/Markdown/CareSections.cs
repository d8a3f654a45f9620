using HealthNotes.Rendering.Model;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Markdown;

/// <summary>Writes the home-care log, what was not looked at, and what is due.</summary>
internal static class CareSections
{
    /// <summary>Rows of one table: reading a Markdown table takes time that grows with the square of its rows.</summary>
    private const int RowsOfOneTable = 50;

    public static PageSection? Log(PageModel model)
    {
        SectionBuilder section = new();
        section.LeftOut(model.Log.LeftOut);
        string caption = PageWords.LogCaption;
        foreach (LogLine[] lines in model.Log.Items.Chunk(RowsOfOneTable))
        {
            section.Table(caption, [PageWords.Day, PageWords.Time, PageWords.Kind, PageWords.HowMuch, PageWords.LevelColumn], [.. Rows(lines)]);
            caption = PageWords.LogContinued;
        }

        return section.Build("log", PageWords.Log);
    }

    public static PageSection? NotLookedAt(PageModel model) => new SectionBuilder()
        .List(model.NotLookedAt.Skipped.Items.Select(item => Md.Start(PageWords.SkippedBecause(item.Item, item.Reason))))
        .LeftOut(model.NotLookedAt.Skipped.LeftOut)
        .Paragraph(model.NotLookedAt.NotMentioned.Count == 0 ? "" : PageWords.NotMentioned(model.NotLookedAt.NotMentioned))
        .Paragraph(model.NotLookedAt.RestOk ? Md.Small(PageWords.RestWasOk) : "")
        .Build("not-looked-at", PageWords.NotLookedAt);

    public static PageSection? Due(PageModel model) => new SectionBuilder()
        .List(model.Due.Items.Select(due => $"{PageWords.DueOn(due.On, due.Days)}: {Md.Text(due.What)}"))
        .LeftOut(model.Due.LeftOut)
        .Build("due", PageWords.Due);

    /// <summary>A day is named in its first row only; within one table the eye groups the rest below it.</summary>
    private static IEnumerable<string[]> Rows(LogLine[] lines)
    {
        string above = "";
        foreach (LogLine line in lines)
        {
            string day = line.By.Length == 0 ? PageWords.Iso(line.Day) : PageWords.DayBy(PageWords.Iso(line.Day), line.By);
            yield return [day == above ? "" : Md.Text(day), line.Time is { } time ? $"{time:HH:mm}" : "", Md.Text(line.What), Md.Text(line.Amount), PageWriter.Mark(line.Level)];
            above = day;
        }
    }
}
