using System.Collections.Immutable;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Record.Courses;

namespace HealthNotes.Record.Due;

/// <summary>
/// What a note says falls due: of each topic the latest line, until a <c>done</c> names it, or what was to be looked at again
/// is named on the day it fell due or later; and acts whose validity is written (a vaccine), each until it is done again.
/// </summary>
public static class DueTasks
{
    private const string Source = "the notes themselves";

    /// <summary>Fewer values, or over fewer hours, show no course of a day (values every two to four hours for eight to twelve; from memory).</summary>
    private const int ValuesOfCurve = 4;

    private const int HoursOfCurve = 8;
    private static readonly string[] Words = ["recheck", "due", "done"];

    /// <summary>What is left today, in line order, whether its day has come or not.</summary>
    public static IEnumerable<DueItem> In(PetRecord at) => In(at, at.Facts.Today);

    /// <summary>What is left on a day by what was written up to then.</summary>
    public static IEnumerable<DueItem> In(PetRecord at, DateOnly today)
    {
        var open = new Dictionary<string, DueItem>(StringComparer.OrdinalIgnoreCase);
        IEnumerable<(int Line, DateOnly? Day, NoteItem Item)> lines = at.Facts.OpeningTasks.Select(task => (task.Line, (DateOnly?)null, task.Value))
            .Concat(Lines(at, today).Select(noted => (noted.Line, (DateOnly?)noted.Day, noted.Item!)));
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

        return open.Values.Concat(ActsAgain(at, open, today)).Where(due => due is not { Task: Recheck recheck, On: { } on } || !LookedAt(at, recheck, on, today))
            .Where(due => due is not { Task: DueTask, On: { } on } || !Measured(at, due.What, on, today)).OrderBy(due => due.Line);
    }

    /// <summary>True where what falls due is a measurement (<c>due weight</c>, <c>due glucose curve</c>) and was made on its day or later; a curve has several values of one day.</summary>
    private static bool Measured(PetRecord at, string topic, DateOnly on, DateOnly today)
    {
        bool curve = IsCurve(topic);
        return MeasuredOn(at, topic, on, today).Any(day => !curve || IsWhole(day));
    }

    /// <summary>The fullest day of values for a curve that is due, where none is whole: its lines by time; empty where the topic is not a curve or nothing was measured on its day or later.</summary>
    public static ImmutableArray<Noted> PartOfCurve(PetRecord at, DueItem due) => due is not { Task: DueTask, On: { } on } || !IsCurve(due.What) ? []
        : MeasuredOn(at, due.What, on, at.Today).Where(day => day.Length > 1).MaxBy(day => day.Length) is { } most ? [.. most] : [];

    private static bool IsCurve(string topic) => topic.Split(' ').Contains("curve", StringComparer.OrdinalIgnoreCase);

    private static bool IsWhole(Noted[] day) => day.Length >= ValuesOfCurve && (day.Any(line => line.Time is null) || day[^1].Moment - day[0].Moment >= TimeSpan.FromHours(HoursOfCurve));

    private static IEnumerable<Noted[]> MeasuredOn(PetRecord at, string topic, DateOnly on, DateOnly today)
    {
        string[] words = topic.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        return words.Length > 2 || NoteVocabulary.Default.LineWords.Find(words[0]) is not { Kind: WordKind.Vital } vital ? []
            : at.All(vital.Word).SelectMany(course => course.Lines).Where(line => line.Day >= on && line.Day <= today).GroupBy(line => line.Day).Select(day => day.OrderBy(line => line.Moment).ToArray());
    }

    /// <summary>What was done and falls due again, the newest of each; and what was done takes what it fulfils out of <paramref name="open"/>.</summary>
    private static List<DueItem> ActsAgain(PetRecord at, Dictionary<string, DueItem> open, DateOnly today)
    {
        IEnumerable<(int Line, DateOnly? Day, NoteItem Item)> acts = at.Facts.OpeningTasks.Select(act => (act.Line, Day: (DateOnly?)null, Item: act.Value))
            .Concat(NoteVocabulary.Default.LineWords.Terms.Where(word => word.Kind == WordKind.Act).SelectMany(word => at.All(word.Word)).SelectMany(course => course.Lines).Where(noted => noted.Day <= today).Select(noted => (noted.Line, Day: (DateOnly?)noted.Day, Item: noted.Item!)))
            .Where(act => act.Item is Act);
        var again = new List<DueItem>();
        foreach (IGrouping<CourseKey, (int Line, DateOnly? Day, NoteItem Item)> same in acts.GroupBy(act => CourseKey.Of(act.Item)))
        {
            (int line, DateOnly? day, NoteItem item) = same.MaxBy(act => (DoneOn(act.Item, act.Day) ?? DateOnly.MinValue, act.Line));
            DateOnly? done = DoneOn(item, day);
            string what = $"{item.Word.Word} {item.Name?.Text}".TrimEnd();
            DateOnly? next = done > today ? done
                : item.Schedule.Until?.Latest ?? (done is { } on && (item.Schedule.For ?? item.Schedule.Every) is { } holds ? Schedule.Add(on, holds) : null);
            if (next is not null)
            {
                again.Add(new DueItem(DueKind.Task, what, next, line, item.Head.Span, null, Source) { Task = item });
            }

            foreach (string key in open.Where(task => task.Value.Kind == DueKind.Task && done <= today && IsOf(task.Value, item)).Select(task => task.Key).ToList())
            {
                open.Remove(key);
            }
        }

        return again;
    }

    /// <summary>The day an act was done: the one written, else its entry's.</summary>
    private static DateOnly? DoneOn(NoteItem act, DateOnly? day) => (act.Schedule.On ?? act.Schedule.From)?.Latest ?? day;

    /// <summary>True when a task names the act by its word or by what was given: <c>due rabies booster</c> is done by <c>vaccine rabies</c>.</summary>
    private static bool IsOf(DueItem task, NoteItem act)
    {
        string[] topic = task.What.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        bool IsWord(string word) => act.Word.Synonyms.Append(act.Word.Word).Contains(word, StringComparer.OrdinalIgnoreCase);

        // `due worming` means any: `worming praziquantel` is one
        return topic.All(IsWord) || (act.Name is { } name
            ? name.Text.Split(' ', StringSplitOptions.RemoveEmptyEntries).All(word => topic.Contains(word, StringComparer.OrdinalIgnoreCase))
            : topic.Any(IsWord));
    }

    private static IEnumerable<Noted> Lines(PetRecord at, DateOnly today) =>
        Words.SelectMany(word => at.Of(new CourseKey(word, "")).Lines).Where(noted => noted.Day <= today).OrderBy(noted => noted.Day).ThenBy(noted => noted.Time).ThenBy(noted => noted.Line);

    private static bool LookedAt(PetRecord at, Recheck recheck, DateOnly on, DateOnly today)
    {
        foreach (Course course in at.All(recheck.Item.Word))
        {
            for (int index = course.CountUpTo(today) - 1; index >= 0 && course.Lines[index].Day >= on; index--)
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
        Site? site = item.Site;
        bool sameTag = recheck.Tag is null || string.Equals(recheck.Tag.Name, item.Tag?.Name, StringComparison.OrdinalIgnoreCase);
        bool sameSide = recheck.Site is not { } wanted || site is null || wanted.Side.Covers(site.Side) || site.Side.Covers(wanted.Side);
        bool samePlace = recheck.Site?.Region is null || site?.Region is null || (recheck.Site.Region.Word == site.Region.Word && recheck.Site.Number == site.Number);
        bool sameTooth = recheck.Site is not { Region: null, Number: { } tooth } || site?.Number is null || site.Number == tooth;
        return sameTag && sameSide && samePlace && sameTooth;
    }
}
