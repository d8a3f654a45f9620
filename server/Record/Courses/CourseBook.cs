using System.Collections.Immutable;

namespace HealthNotes.Record.Courses;

/// <summary>All courses of a note. After an edit those that it did not touch are the very same objects.</summary>
internal sealed class CourseBook
{
    private readonly Dictionary<CourseKey, Course> courses;
    private readonly Dictionary<string, ImmutableArray<Course>> byWord = [];

    private CourseBook(Dictionary<CourseKey, Course> courses) => this.courses = courses;

    /// <summary>Every course, in no order; that of the note as a whole is among them.</summary>
    public IEnumerable<Course> Courses => courses.Values;

    /// <summary>Reads the lines of all entries.</summary>
    /// <param name="entries">What each entry gives.</param>
    /// <param name="before">The courses of another version: one with the same lines is kept.</param>
    public static CourseBook Of(IEnumerable<ImmutableArray<Trace>> entries, CourseBook? before)
    {
        var lines = new Dictionary<CourseKey, ImmutableArray<Noted>.Builder>();
        foreach (ImmutableArray<Trace> traces in entries)
        {
            foreach (Trace trace in traces)
            {
                if (!lines.TryGetValue(trace.Key, out ImmutableArray<Noted>.Builder? course))
                {
                    lines.Add(trace.Key, course = ImmutableArray.CreateBuilder<Noted>());
                }

                course.Add(trace.Noted);
            }
        }

        var courses = new Dictionary<CourseKey, Course>(lines.Count + 1) { [CourseKey.Note] = before?.Of(CourseKey.Note) ?? new(CourseKey.Note, []) };
        foreach ((CourseKey key, ImmutableArray<Noted>.Builder course) in lines)
        {
            course.Sort(Course.ByTime);
            ImmutableArray<Noted> all = course.DrainToImmutable();
            courses.Add(key, before?.Of(key) is { } had && had.Lines.AsSpan().SequenceEqual(all.AsSpan(), ReferenceEqualityComparer.Instance) ? had : new Course(key, all));
        }

        return new CourseBook(courses);
    }

    /// <summary>The courses when some entries were read anew; none of the others may have moved.</summary>
    public CourseBook With(IReadOnlyCollection<Trace> gone, IReadOnlyCollection<Trace> come)
    {
        HashSet<Noted> before = new(gone.Select(trace => trace.Noted), ReferenceEqualityComparer.Instance);
        HashSet<Noted> after = new(come.Select(trace => trace.Noted), ReferenceEqualityComparer.Instance);
        var now = new CourseBook(new(courses));
        foreach (IGrouping<CourseKey, Trace> lost in gone.Where(trace => !after.Contains(trace.Noted)).GroupBy(trace => trace.Key))
        {
            (int first, int last) = (lost.Min(trace => trace.Noted.Line), lost.Max(trace => trace.Noted.Line));
            now.Put(lost.Key, now.Of(lost.Key).Lines.RemoveAll(line => line.Line >= first && line.Line <= last && before.Contains(line) && !after.Contains(line)));
        }

        foreach (IGrouping<CourseKey, Trace> added in come.Where(trace => !before.Contains(trace.Noted)).GroupBy(trace => trace.Key))
        {
            now.Put(added.Key, now.Of(added.Key).With([.. added.Select(trace => trace.Noted)]));
        }

        return now;
    }

    /// <summary>A course; empty when the note has no line of it.</summary>
    public Course Of(CourseKey key) => courses.TryGetValue(key, out Course? course) ? course : new(key, []);

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

    private void Put(CourseKey key, ImmutableArray<Noted> lines)
    {
        courses[key] = new Course(key, lines);
        if (lines.IsEmpty)
        {
            courses.Remove(key);
        }
    }
}
