using System.Collections.Immutable;

namespace HealthNotes.Analysis.Courses;

/// <summary>All courses of a note. After an edit those that it did not touch are the very same objects.</summary>
internal sealed class CourseBook
{
    private readonly Dictionary<CourseKey, Course> courses;
    private readonly Dictionary<string, ImmutableArray<Course>> byWord = [];

    private CourseBook(Dictionary<CourseKey, Course> courses) => this.courses = courses;

    /// <summary>Every course, in no order; that of the note as a whole is among them.</summary>
    public IEnumerable<Course> Courses => courses.Values;

    /// <summary>Reads all entries.</summary>
    public static CourseBook Of(ReadOnlySpan<EntryAnalysis> entries)
    {
        var lines = new Dictionary<CourseKey, ImmutableArray<Noted>.Builder>();
        foreach (EntryAnalysis entry in entries)
        {
            foreach (Trace trace in entry.Traces)
            {
                if (!lines.TryGetValue(trace.Key, out ImmutableArray<Noted>.Builder? course))
                {
                    lines.Add(trace.Key, course = ImmutableArray.CreateBuilder<Noted>());
                }

                course.Add(trace.Noted);
            }
        }

        var courses = new Dictionary<CourseKey, Course>(lines.Count + 1) { [CourseKey.Note] = new(CourseKey.Note, []) };
        foreach ((CourseKey key, ImmutableArray<Noted>.Builder course) in lines)
        {
            course.Sort(ByTime.Order);
            courses.Add(key, new Course(key, course.DrainToImmutable()));
        }

        return new CourseBook(courses);
    }

    /// <summary>The courses when some entries were read anew; none of the others may have moved.</summary>
    public CourseBook With(ReadOnlySpan<EntryAnalysis> gone, ReadOnlySpan<EntryAnalysis> come)
    {
        HashSet<Noted> before = LinesOf(gone);
        HashSet<Noted> after = LinesOf(come);
        var taken = new HashSet<Noted>(ReferenceEqualityComparer.Instance);
        var changed = new Dictionary<CourseKey, List<Noted>>();
        foreach (EntryAnalysis entry in gone)
        {
            foreach (Trace trace in entry.Traces)
            {
                if (!after.Contains(trace.Noted))
                {
                    taken.Add(trace.Noted);
                    changed.TryAdd(trace.Key, []);
                }
            }
        }

        foreach (EntryAnalysis entry in come)
        {
            foreach (Trace trace in entry.Traces)
            {
                if (before.Contains(trace.Noted))
                {
                    continue;
                }

                if (!changed.TryGetValue(trace.Key, out List<Noted>? added))
                {
                    changed.Add(trace.Key, added = []);
                }

                added.Add(trace.Noted);
            }
        }

        if (changed.Count == 0)
        {
            return this;
        }

        var now = new Dictionary<CourseKey, Course>(courses);
        foreach ((CourseKey key, List<Noted> added) in changed)
        {
            ImmutableArray<Noted> lines = Spliced(Of(key).Lines, taken, added);
            if (lines.Length == 0)
            {
                now.Remove(key);
            }
            else
            {
                now[key] = new Course(key, lines);
            }
        }

        return new CourseBook(now);
    }

    /// <summary>A course; empty when the note has no line of it.</summary>
    public Course Of(CourseKey key) => courses.TryGetValue(key, out Course? course) ? course : Empty(key);

    /// <summary>All courses under a word, in the order of their keys.</summary>
    public ImmutableArray<Course> All(string word)
    {
        lock (byWord)
        {
            if (!byWord.TryGetValue(word, out ImmutableArray<Course> all))
            {
                byWord.Add(word, all = [.. courses.Values.Where(course => course.Key.Word == word).OrderBy(course => course.Key.Detail, StringComparer.Ordinal)]);
            }

            return all;
        }
    }

    private static HashSet<Noted> LinesOf(ReadOnlySpan<EntryAnalysis> entries)
    {
        var lines = new HashSet<Noted>(ReferenceEqualityComparer.Instance);
        foreach (EntryAnalysis entry in entries)
        {
            foreach (Trace trace in entry.Traces)
            {
                lines.Add(trace.Noted);
            }
        }

        return lines;
    }

    private static Course Empty(CourseKey key) => new(key, []);

    private static ImmutableArray<Noted> Spliced(ImmutableArray<Noted> lines, HashSet<Noted> taken, List<Noted> added)
    {
        ImmutableArray<Noted>.Builder now = ImmutableArray.CreateBuilder<Noted>(lines.Length + added.Count);
        foreach (Noted line in lines)
        {
            if (!taken.Contains(line))
            {
                now.Add(line);
            }
        }

        bool atEnd = now.Count == 0 || added.TrueForAll(line => ByTime.Order.Compare(now[^1], line) < 0);
        now.AddRange(added);
        if (!atEnd || added.Count > 1)
        {
            now.Sort(ByTime.Order);
        }

        return now.DrainToImmutable();
    }

    /// <summary>By day, then time, then place in the file.</summary>
    private sealed class ByTime : IComparer<Noted>
    {
        public static readonly ByTime Order = new();

        public int Compare(Noted? x, Noted? y)
        {
            int order = x!.Day.CompareTo(y!.Day);
            order = order != 0 ? order : Nullable.Compare(x.Time, y.Time);
            return order != 0 ? order : x.Line.CompareTo(y.Line);
        }
    }
}
