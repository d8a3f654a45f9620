using System.Collections.Immutable;
using HealthNotes.Analysis.Readings;
using HealthNotes.Grammar.Notes;

namespace HealthNotes.Analysis.Courses;

/// <summary>A line of an entry and the course it belongs to.</summary>
internal readonly record struct Trace(CourseKey Key, Noted Noted)
{
    /// <summary>What an entry gives to the courses; nothing when it has no day, or one after <paramref name="today"/>.</summary>
    public static ImmutableArray<Trace> Of(Entry entry, ImmutableArray<NoteReading> plausible, DateOnly today)
    {
        if (entry.Head.Date is not { } day || day > today)
        {
            return [];
        }

        ImmutableArray<Trace>.Builder traces = ImmutableArray.CreateBuilder<Trace>(entry.Items.Length + 1);
        traces.Add(new Trace(new CourseKey("entry", entry.Head.Kind), new Noted(entry, entry.Line, null, null)));
        foreach ((int line, NoteItem item) in entry.Items)
        {
            NoteReading? reading = ReadingOf(plausible, line);
            if (item is not Reading)
            {
                traces.Add(new Trace(CourseKey.Of(item), new Noted(entry, line, item, reading)));
            }
            else if (reading is not null && CourseKey.Of(reading) is { } key)
            {
                traces.Add(new Trace(key, new Noted(entry, line, item, reading)));
            }
        }

        return traces.DrainToImmutable();
    }

    private static NoteReading? ReadingOf(ImmutableArray<NoteReading> readings, int line)
    {
        foreach (NoteReading reading in readings)
        {
            if (reading.Line == line)
            {
                return reading;
            }
        }

        return null;
    }
}
