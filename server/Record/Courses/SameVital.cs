using System.Collections.Immutable;

namespace HealthNotes.Record.Courses;

/// <summary>
/// Courses of one vital that are compared with each other. The pulse is the same at the chest and inside the thigh, so that
/// where it was felt does not part it; temperatures of ear and rectum are never mixed.
/// </summary>
public static class SameVital
{
    private const string Pulse = "hr";
    private const string Glucose = "glucose";

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
            : Together(new CourseKey(Pulse, state), same);
    }

    /// <summary>The same as a page tells it: glucose before and after food in one line, which rules never compare.</summary>
    public static Course OnPage(Course course, Func<string, ImmutableArray<Course>> all) => course.Key.Word != Glucose || all(Glucose) is not { Length: > 1 } several
        ? Of(course, all)
        : Together(new CourseKey(Glucose, "any"), several);

    private static Course Together(CourseKey key, ImmutableArray<Course> same) =>
        new(key, [.. same.SelectMany(one => one.Lines).OrderBy(line => line.Day).ThenBy(line => line.Time).ThenBy(line => line.Line)]);

    private static string StateOf(CourseKey key) => key.Detail.Split(' ')[0];
}
