using System.Collections.Immutable;

namespace HealthNotes.Record.Courses;

/// <summary>
/// Courses of one vital that are compared with each other. The pulse is the same at the chest and inside the thigh, so that
/// where it was felt does not part it; temperatures of ear and rectum are never mixed.
/// </summary>
public static class SameVital
{
    private const string Pulse = "hr";

    /// <summary>The course, together with those it is compared with. Takes all courses under its word.</summary>
    public static Course Of(Course course, Func<string, ImmutableArray<Course>> all)
    {
        if (course.Key.Word != Pulse)
        {
            return course;
        }

        string state = StateOf(course.Key);
        ImmutableArray<Course> same = all(Pulse).RemoveAll(other => StateOf(other.Key) != state);
        return same.Length < 2 ? course
            : new Course(new CourseKey(Pulse, state), [.. same.SelectMany(one => one.Lines).OrderBy(line => line.Day).ThenBy(line => line.Time).ThenBy(line => line.Line)]);
    }

    private static string StateOf(CourseKey key) => key.Detail.Split(' ')[0];
}
