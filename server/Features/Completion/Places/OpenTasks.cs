using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Features.Completion.Places;

/// <summary>Something to be looked at again, and the day it fell due.</summary>
internal sealed record OpenRecheck(LineWord Item, Site? Site, DateOnly Due);

/// <summary>What earlier entries asked for and no entry since has done.</summary>
internal static class OpenTasks
{
    /// <summary>How far back rechecks are looked for: what was asked for longer ago is another check's matter.</summary>
    private const int MostDays = 400;
    private const int MostFound = 20;

    /// <summary>Rechecks due by the day of the line's entry that neither it nor an entry in between has looked at.</summary>
    public static List<OpenRecheck> RechecksDue(NoteAround note)
    {
        var open = new List<OpenRecheck>();
        var seen = new HashSet<(LineWord, Side?, Region?, int?)>();
        foreach (Placed<NoteItem> item in note.OtherItems())
        {
            LookedAt(item.Value, seen);
        }

        int left = Lookback.Lines;
        foreach (Entry entry in note.EarlierEntries())
        {
            if ((left -= entry.Items.Length) < 0 || open.Count >= MostFound || (entry.Head.Date is { } date && note.Day.DayNumber - date.DayNumber > MostDays))
            {
                break;
            }

            for (int index = entry.Items.Length - 1; index >= 0; index--)
            {
                if (entry.Items[index].Value is Recheck recheck && seen.Add(KeyOf(recheck.Item, recheck.Site))
                    && !seen.Contains((recheck.Item, null, null, -1)) && recheck.Schedule.DayAfter(entry.Head.Date) is { } due && due <= note.Day)
                {
                    open.Add(new OpenRecheck(recheck.Item, recheck.Site, due));
                }
            }

            foreach (Placed<NoteItem> item in entry.Items)
            {
                LookedAt(item.Value, seen);
            }
        }

        return open;
    }

    /// <summary>What falls due and is not done, by its words; the latest first.</summary>
    public static List<(string Topic, DateOnly? Day)> DueTopics(NoteAround note)
    {
        var topics = new List<(string, DateOnly?)>();
        var done = new List<string>();
        int left = Lookback.Lines;
        foreach (Entry entry in (note.Entry is null ? [] : note.EarlierEntries().Prepend(note.Entry)))
        {
            if ((left -= entry.Items.Length) < 0 || topics.Count >= MostFound)
            {
                break;
            }

            for (int index = entry.Items.Length - 1; index >= 0; index--)
            {
                Take(entry.Items[index].Value, entry.Head.Date);
            }
        }

        foreach (Placed<NoteItem> fact in note.Document.Note.Opening.Facts)
        {
            Take(fact.Value, null);
        }

        return topics;

        void Take(NoteItem item, DateOnly? day)
        {
            switch (item)
            {
                case TextTask { Word.Word: "done" } task:
                    done.Add(task.Text.Text);
                    break;
                case DueTask due when !done.Exists(text => text.Contains(due.Topic.Text, StringComparison.OrdinalIgnoreCase))
                    && !topics.Exists(topic => topic.Item1.Equals(due.Topic.Text, StringComparison.OrdinalIgnoreCase)):
                    topics.Add((due.Topic.Text, due.Schedule.DayAfter(day)));
                    break;
                default:
                    break;
            }
        }
    }

    /// <summary>A line that looks at an item does so at its site; one without a site looks at the item as a whole.</summary>
    private static void LookedAt(NoteItem item, HashSet<(LineWord, Side?, Region?, int?)> seen)
    {
        Site? site = item.Site;
        if (item is Examined or Finding or Reading or CareEvent or NotSeen)
        {
            seen.Add(KeyOf(item.Word, site));
            seen.Add(KeyOf(item.Word, null));
            if (site is null or { Side: Side.Both })
            {
                seen.Add((item.Word, null, null, -1));
            }
        }
    }

    private static (LineWord, Side?, Region?, int?) KeyOf(LineWord word, Site? site) => (word, site?.Side, site?.Region, site?.Number);
}
