using System.Collections.Immutable;
using HealthNotes.Analysis.Findings;
using HealthNotes.Analysis.Rules;

namespace HealthNotes.Analysis.Courses;

/// <summary>What the rules find in each course. Kept while the course, the facts and the courses that were asked for stay as they are.</summary>
internal sealed class CourseFindings
{
    private readonly Dictionary<CourseKey, Kept> byCourse;

    private CourseFindings(Dictionary<CourseKey, Kept> byCourse) => this.byCourse = byCourse;

    /// <summary>All of them, in no order.</summary>
    public IEnumerable<NoteFinding> All => byCourse.Values.SelectMany(kept => kept.Findings);

    /// <summary>Applies the rules to the courses that are not the same as in <paramref name="old"/>, which was made in the same context.</summary>
    public static CourseFindings Of(CourseBook book, RuleContext context, CourseFindings? old, CancellationToken stop)
    {
        var byCourse = new Dictionary<CourseKey, Kept>();
        foreach (Course course in book.Courses)
        {
            if (!RuleBook.Wants(course.Key))
            {
                continue;
            }

            byCourse.Add(course.Key, old is not null && old.byCourse.TryGetValue(course.Key, out Kept? kept) && IsSame(kept.Course, course) && kept.Asked.StillHold(book)
                ? kept
                : Find(course, new CourseContext(context, book)));
            stop.ThrowIfCancellationRequested();
        }

        return new CourseFindings(byCourse);
    }

    private static bool IsSame(Course before, Course now) => ReferenceEquals(before, now) || (before.Lines.Length == 0 && now.Lines.Length == 0);

    private static Kept Find(Course course, CourseContext context)
    {
        ImmutableArray<NoteFinding> findings = RuleBook.FindIn(course, context);
        return new Kept(course, context.Kept(), findings);
    }

    private sealed record Kept(Course Course, AskedCourses Asked, ImmutableArray<NoteFinding> Findings);
}
