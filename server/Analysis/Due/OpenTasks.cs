using HealthNotes.Analysis.Courses;
using HealthNotes.Grammar.Notes;

namespace HealthNotes.Analysis.Due;

/// <summary>
/// What a note says falls due: of each topic the latest line, until a <c>done</c> names it, or what was to be looked at again
/// is named on the day it fell due or later.
/// </summary>
internal static class OpenTasks
{
    private const string Source = "the notes themselves";
    private static readonly string[] Words = ["recheck", "due", "done"];

    /// <summary>What is left, in line order, whether its day has come or not.</summary>
    public static IEnumerable<DueItem> In(CourseContext at)
    {
        var open = new Dictionary<string, DueItem>(StringComparer.OrdinalIgnoreCase);
        IEnumerable<(int Line, DateOnly? Day, NoteItem Item)> lines = at.Note.OpeningTasks.Select(task => (task.Line, (DateOnly?)null, task.Value))
            .Concat(Lines(at).Select(noted => (noted.Line, (DateOnly?)noted.Day, noted.Item!)));
        foreach ((int line, DateOnly? day, NoteItem item) in lines)
        {
            switch (item)
            {
                case DueTask due:
                    open["due " + due.Topic.Text] = new DueItem(DueKind.Task, due.Topic.Text, due.Schedule.DayAfter(day), line, item.Head.Span, null, Source) { Task = item };
                    break;
                case Recheck recheck:
                    string what = $"{recheck.Item.Word} {recheck.Site?.Name}{(recheck.Tag is { } tag ? $" @{tag.Name}" : "")}".TrimEnd();
                    open["recheck " + what] = new DueItem(DueKind.Recheck, what, recheck.Schedule.DayAfter(day), line, item.Head.Span, null, Source) { Task = item };
                    break;
                case TextTask done:
                    foreach (string key in open.Where(task => done.Text.Text.Contains(task.Value.What, StringComparison.OrdinalIgnoreCase)).Select(task => task.Key).ToList())
                    {
                        open.Remove(key);
                    }

                    break;
                default:
                    break;
            }
        }

        return open.Values.Where(due => due is not { Task: Recheck recheck, On: { } on } || !LookedAt(at, recheck, on)).OrderBy(due => due.Line);
    }

    private static IEnumerable<Noted> Lines(CourseContext at) =>
        Words.SelectMany(word => at.Of(new CourseKey(word, "")).Lines).OrderBy(noted => noted.Day).ThenBy(noted => noted.Time).ThenBy(noted => noted.Line);

    private static bool LookedAt(CourseContext at, Recheck recheck, DateOnly on)
    {
        foreach (Course course in at.All(recheck.Item.Word))
        {
            for (int index = course.Lines.Length - 1; index >= 0 && course.Lines[index].Day >= on; index--)
            {
                if (course.Lines[index].Item is { } item && Concerns(recheck, item))
                {
                    return true;
                }
            }
        }

        return false;
    }

    private static bool Concerns(Recheck recheck, NoteItem item)
    {
        (Site? site, FindingTag? tag) = item switch
        {
            Reading reading => (reading.Site, null),
            Examined examined => (examined.Site, examined.Tag),
            Finding finding => (finding.Site, finding.Tag),
            _ => (null, null),
        };
        bool sameTag = recheck.Tag is null || string.Equals(recheck.Tag.Name, tag?.Name, StringComparison.OrdinalIgnoreCase);
        bool sameSide = recheck.Site is not { } wanted || site is null || wanted.Side == site.Side || wanted.Side is Side.None or Side.Both || site.Side is Side.None or Side.Both;
        bool samePlace = recheck.Site?.Region is null || site?.Region is null || (recheck.Site.Region.Word == site.Region.Word && recheck.Site.Number == site.Number);
        bool sameTooth = recheck.Site is not { Region: null, Number: { } tooth } || site?.Number is null || site.Number == tooth;
        return sameTag && sameSide && samePlace && sameTooth;
    }
}
