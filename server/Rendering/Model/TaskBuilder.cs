using HealthNotes.Analysis.Rules;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Tidying;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Model;

/// <summary>Questions, things due, pictures.</summary>
internal static class TaskBuilder
{
    public static Shown<DatedText> Questions(PageContext context) => Shown<DatedText>.Last(
        [.. context.Items.Where(item => item.Item is TextTask { Word.Word: "ask" })
            .Select(item => new DatedText(item.Entry.Day, NoteText.Field(((TextTask)item.Item).Text.Text)))],
        PageLimits.ListItems);

    public static Shown<Picture> Pictures(PageContext context) => Shown<Picture>.Last(
        [.. context.Items.Where(item => item.Item is Photo).Select(item => (item.Entry.Day, Photo: (Photo)item.Item))
            .Select(p => new Picture(p.Day, NoteText.Field(p.Photo.File.Text), p.Photo.Caption is null ? "" : NoteText.Field(p.Photo.Caption.Text)))],
        PageLimits.ListItems);

    /// <summary>
    /// What is due: of each topic the latest line, unless a later <c>done</c> names it. A recheck that fell due before the
    /// current period is left out: the check since then has looked.
    /// </summary>
    public static Shown<DueItem> Due(PageContext context)
    {
        var open = new Dictionary<string, DueItem>(StringComparer.OrdinalIgnoreCase);
        DateOnly today = context.Analysis.Today;
        foreach ((DateOnly? day, NoteItem item) in All(context))
        {
            switch (item)
            {
                case DueTask due:
                    open["due " + due.Topic.Text] = Item(today, day, due.Schedule, NoteText.Field(due.Topic.Text));
                    break;
                case Recheck recheck:
                    string what = $"{PageWords.Recheck} {Wording.NameOf(recheck.Item.Word).ToLowerInvariant()} {SiteWords.Of(recheck.Site)}".TrimEnd();
                    DueItem again = Item(today, day, recheck.Schedule, what);
                    open[$"recheck {recheck.Item.Word} {recheck.Site?.Name}"] = again;
                    break;
                case TextTask { Word.Word: "done" } done:
                    foreach (string topic in open.Keys.Where(topic => IsDone(topic, done.Text.Text)).ToList())
                    {
                        open.Remove(topic);
                    }

                    break;
                default:
                    break;
            }
        }

        IEnumerable<DueItem> left = open.Where(o => !o.Key.StartsWith("recheck", StringComparison.Ordinal) || IsOpen(context, o.Value)).Select(o => o.Value);
        return Shown<DueItem>.First([.. left.Concat(NextCheck(context)).OrderBy(due => due.On is null).ThenBy(due => due.On)], PageLimits.ListItems);
    }

    private static IEnumerable<(DateOnly? Day, NoteItem Item)> All(PageContext context) =>
        context.Analysis.Note.Opening.Facts.Select(fact => ((DateOnly?)null, fact.Value))
            .Concat(context.Period.Earlier.Concat(context.Period.Current).SelectMany(entry => entry.Entry.Items.Select(item => (entry.Day, item.Value))));

    private static bool IsDone(string topic, string done) => done.Contains(topic[(topic.IndexOf(' ', StringComparison.Ordinal) + 1)..].TrimEnd(), StringComparison.OrdinalIgnoreCase);

    private static bool IsOpen(PageContext context, DueItem recheck) =>
        recheck.On is null || context.Period.From is not { } from || recheck.On >= from || recheck.Written >= from;

    private static DueItem Item(DateOnly today, DateOnly? day, Schedule schedule, string what) =>
        Item(today, schedule.DayAfter(day), day, what);

    private static DueItem Item(DateOnly today, DateOnly? on, DateOnly? written, string what) =>
        new(on, on is { } date ? date.DayNumber - today.DayNumber : null, what, written);

    /// <summary>The next home check, when the opening says how often.</summary>
    private static IEnumerable<DueItem> NextCheck(PageContext context)
    {
        if (context.Analysis.Note.Opening.First<HomeCheckFact>() is { Schedule.Every: { } every } && context.Period.Check?.Day is { } last)
        {
            yield return Item(context.Analysis.Today, Schedule.Add(last, every), last, PageWords.NextCheck(ValuePrinter.Print(every)));
        }
    }
}
