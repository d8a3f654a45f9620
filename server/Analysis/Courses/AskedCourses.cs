using System.Collections.Immutable;

namespace HealthNotes.Analysis.Courses;

/// <summary>The courses that findings rest on besides their own, as they were.</summary>
internal sealed class AskedCourses(ImmutableArray<(CourseKey? Key, string? Word, object Answer)> asked)
{
    /// <summary>True when all of them are the same now.</summary>
    public bool StillHold(CourseBook now)
    {
        foreach ((CourseKey? key, string? word, object answer) in asked)
        {
            bool same = key is { } one
                ? now.Of(one) is var course && (ReferenceEquals(course, answer) || (course.Lines.Length == 0 && ((Course)answer).Lines.Length == 0))
                : now.All(word!).AsSpan().SequenceEqual(((ImmutableArray<Course>)answer).AsSpan());
            if (!same)
            {
                return false;
            }
        }

        return true;
    }
}
