using HealthNotes.Features.Hints;
using HealthNotes.Grammar.Notes;

namespace HealthNotes.Features.Lenses;

/// <summary>Something that falls due and has not been done.</summary>
/// <param name="Line">The index of its line.</param>
/// <param name="Name">What it is: <c>recheck ear L</c>.</param>
/// <param name="On">The day it falls due.</param>
internal sealed record OpenTask(int Line, string Name, DateOnly On);

/// <summary>
/// Goes through a note once, in file order, and keeps what is due: of each topic the latest line, until a <c>done</c> names
/// it, or what was to be looked at again is named in an entry of the day it fell due or later.
/// </summary>
internal sealed class OpenTasks
{
    private readonly Dictionary<string, Task> open = new(StringComparer.OrdinalIgnoreCase);
    private readonly Dictionary<string, int> rechecksOf = [];

    /// <summary>What is left, in line order.</summary>
    public IEnumerable<OpenTask> Left => open.Values.Select(task => task.Open).OrderBy(task => task.Line);

    /// <summary>Takes the next line.</summary>
    public void Take(Placed<NoteItem> placed, DateOnly? day)
    {
        switch (placed.Value)
        {
            case DueTask due:
                Add(placed, "due " + due.Topic.Text, due.Topic.Text, day);
                break;
            case Recheck recheck:
                string what = $"{recheck.Item.Word} {recheck.Site?.Name}{(recheck.Tag is { } tag ? $" @{tag.Name}" : "")}".TrimEnd();
                Add(placed, "recheck " + what, what, day);
                break;
            case TextTask { Word.Word: "done" } done:
                Remove(task => done.Text.Text.Contains(task.Topic, StringComparison.OrdinalIgnoreCase));
                break;
            case NoteItem item when rechecksOf.ContainsKey(item.Word.Word):
                Remove(task => task.Item is Recheck recheck && recheck.Item.Word == item.Word.Word && day >= task.Open.On && Concerns(recheck, item));
                break;
            default:
                break;
        }
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

    private void Add(Placed<NoteItem> placed, string key, string topic, DateOnly? day)
    {
        if (open.Remove(key, out Task? before))
        {
            Count(before, -1);
        }

        if (ItemValue.ScheduleOf(placed.Value)?.DayAfter(day) is { } on)
        {
            var task = new Task(new OpenTask(placed.Line, placed.Value is Recheck ? key : topic, on), topic, placed.Value);
            open.Add(key, task);
            Count(task, 1);
        }
    }

    private void Remove(Predicate<Task> done)
    {
        foreach ((string key, Task task) in open.Where(pair => done(pair.Value)).ToList())
        {
            open.Remove(key);
            Count(task, -1);
        }
    }

    /// <summary>Most lines are of a word that nothing is open for: they must cost no more than one look.</summary>
    private void Count(Task task, int by)
    {
        if (task.Item is Recheck { Item.Word: var word })
        {
            int count = rechecksOf.GetValueOrDefault(word) + by;
            if (count > 0)
            {
                rechecksOf[word] = count;
            }
            else
            {
                rechecksOf.Remove(word);
            }
        }
    }

    private sealed record Task(OpenTask Open, string Topic, NoteItem Item);
}
