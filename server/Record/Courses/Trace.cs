using System.Collections.Immutable;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Notes;
using HealthNotes.Record.Readings;

namespace HealthNotes.Record.Courses;

/// <summary>A line of an entry and the course it belongs to.</summary>
internal readonly record struct Trace(CourseKey Key, Noted Noted)
{
    private const string Check = "check";

    /// <summary>What an entry gives to the courses; nothing when it has no day, or one after <paramref name="today"/>.</summary>
    /// <param name="entry">The entry.</param>
    /// <param name="plausible">Its values that can be right.</param>
    /// <param name="today">The day the note is read on.</param>
    /// <param name="before">The traces of the entries that stood here before an edit: a line that is as it was keeps its object.</param>
    public static ImmutableArray<Trace> Of(Entry entry, ImmutableArray<NoteReading> plausible, DateOnly today, ILookup<int, Trace>? before = null)
    {
        if (entry.Head.Date is not { } day || day > today)
        {
            return [];
        }

        ImmutableArray<Trace>.Builder traces = ImmutableArray.CreateBuilder<Trace>(entry.Items.Length + 2);
        // a check that was only begun is none
        if (entry.Head.Kind != Check || entry.IsCheck)
        {
            Add(new CourseKey("head", entry.Head.Kind), new Noted(entry.Head, entry.Line, null, null));
        }

        if (entry.IsCheck || entry.Head.Kind == "visit")
        {
            traces.Add(new Trace(entry.IsCheck ? CourseKey.WholeChecks : CourseKey.WholeVisits, new Noted(entry.Head, entry.Line, null, null, entry)));
        }

        int next = 0;
        foreach ((int line, NoteItem item) in entry.Items)
        {
            // the values stand in the order of their items, some of which have none
            NoteReading? reading = next < plausible.Length && plausible[next] is var value && value.Line == line && value.What == item.Word.Word
                && value.Span == ReadingCollector.SpanOf(item) ? value : null;
            next += reading is null ? 0 : 1;
            if (CourseKey.Of(item, reading) is { } key)
            {
                Add(key, new Noted(entry.Head, line, item, reading));
            }

            if (entry.Head.Kind == "visit" && item is not (NotSeen or ExpectFact) && item.Words.Length > 0)
            {
                Add(CourseKey.AtVisits(item), new Noted(entry.Head, line, item, reading));
            }
        }

        return traces.DrainToImmutable();

        void Add(CourseKey key, Noted noted) => traces.Add(new Trace(key, AsBefore(before, key, noted) ?? noted));
    }

    private static Noted? AsBefore(ILookup<int, Trace>? before, CourseKey key, Noted noted)
    {
        foreach (Trace trace in before?[noted.Line] ?? [])
        {
            if (trace.Key == key && trace.Noted.Entry is null && ReferenceEquals(trace.Noted.Item, noted.Item) && ReferenceEquals(trace.Noted.Head, noted.Head)
                && Equals(trace.Noted.Reading, noted.Reading))
            {
                return trace.Noted;
            }
        }

        return null;
    }
}
