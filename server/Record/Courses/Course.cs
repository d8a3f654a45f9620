using System.Collections.Immutable;

using HealthNotes.Grammar.Items;

namespace HealthNotes.Record.Courses;

/// <summary>Everything a note says about one thing, in the order of time. Immutable.</summary>
/// <param name="key">What it is about.</param>
/// <param name="lines">Its lines, by day, then time, then place in the file.</param>
public sealed class Course(CourseKey key, ImmutableArray<Noted> lines)
{
    /// <summary>What it is about.</summary>
    public CourseKey Key => key;

    /// <summary>Its lines, by day, then time, then place in the file. Entries without a day, or after today, are left out.</summary>
    public ImmutableArray<Noted> Lines => lines;

    /// <summary>
    /// How far back rules look that speak of single lines of a course: what was so more than a year before its last line is no
    /// longer news, and an edit costs the same however long the note has grown.
    /// </summary>
    private const int RecentDays = 365;

    /// <summary>The lines of the last year before the last line.</summary>
    public ReadOnlySpan<Noted> Recent => lines.Length == 0 ? [] : Between(DateOnly.FromDayNumber(Math.Max(0, lines[^1].Day.DayNumber - RecentDays)), lines[^1].Day);

    /// <summary>The last line; null when there is none.</summary>
    public Noted? Last => lines.Length == 0 ? null : lines[^1];

    /// <summary>The last line up to the end of <paramref name="day"/>; null when there is none.</summary>
    public Noted? LastUpTo(DateOnly day)
    {
        int count = CountUpTo(day);
        return count == 0 ? null : lines[count - 1];
    }

    /// <summary>How many lines there are up to the end of <paramref name="day"/>.</summary>
    public int CountUpTo(DateOnly day) => CountOf(noted => noted.Day <= day);

    /// <summary>How many lines there are up to the last that <paramref name="isBefore"/> holds for; it holds for all before that one.</summary>
    private int CountOf(Func<Noted, bool> isBefore)
    {
        int low = 0;
        int high = lines.Length;
        while (low < high)
        {
            int middle = (low + high) / 2;
            (low, high) = isBefore(lines[middle]) ? (middle + 1, high) : (low, middle);
        }

        return low;
    }

    /// <summary>The lines from one day to another, both included.</summary>
    public ReadOnlySpan<Noted> Between(DateOnly from, DateOnly to)
    {
        int start = from == DateOnly.MinValue ? 0 : CountUpTo(from.Plus(-1));
        int end = CountUpTo(to);
        return end <= start ? [] : lines.AsSpan()[start..end];
    }

    /// <summary>The lines before a moment, the latest first.</summary>
    /// <param name="day">The day.</param>
    /// <param name="time">The time; null for the start of the day.</param>
    /// <param name="line">Of lines of one moment, those above this one.</param>
    public IEnumerable<Noted> Before(DateOnly day, TimeOnly? time = null, int line = 0)
    {
        int index = CountOf(noted => (noted.Day.CompareTo(day), Nullable.Compare(noted.Time, time), noted.Line.CompareTo(line)).CompareTo((0, 0, 0)) < 0);
        while (index > 0)
        {
            yield return lines[--index];
        }
    }

    /// <summary>Its lines, and others put where they belong in time.</summary>
    internal ImmutableArray<Noted> With(ImmutableArray<Noted> others) => others is [var one]
        ? lines.Insert(lines.BinarySearch(one, ByTime) is var at && at < 0 ? ~at : at + 1, one)
        : lines.AddRange(others).Sort(ByTime);

    /// <summary>By day, then time, then place in the file.</summary>
    internal static readonly IComparer<Noted> ByTime = Comparer<Noted>.Create((one, other) =>
    {
        int order = one.Day.CompareTo(other.Day);
        order = order != 0 ? order : Nullable.Compare(one.Time, other.Time);
        order = order != 0 ? order : one.Line.CompareTo(other.Line);
        return order != 0 ? order : Nullable.Compare(one.Item?.Head.Span.Start, other.Item?.Head.Span.Start);
    });
}
