using System.Collections.Immutable;
using HealthNotes.Analysis.Rules;
using HealthNotes.Grammar.Notes;
using HealthNotes.Record.Readings;

namespace HealthNotes.Analysis.Courses;

/// <summary>
/// What a rule about a course may look at besides the course. Which other courses it asked for is kept: its findings hold as
/// long as those are the same.
/// </summary>
public sealed class CourseContext
{
    private readonly CourseBook book;
    private readonly List<(CourseKey? Key, string? Word, object Answer)> asked = [];

    internal CourseContext(RuleContext note, CourseBook book)
    {
        Note = note;
        this.book = book;
    }

    /// <summary>The pet's facts, the tables, today. Weights are not to be taken from its pet: <see cref="WeightOn"/> asks for them.</summary>
    public RuleContext Note { get; }

    /// <summary>Another course; empty when the note has no line of it.</summary>
    public Course Of(CourseKey key)
    {
        Course course = book.Of(key);
        asked.Add((key, null, course));
        return course;
    }

    /// <summary>All courses under a word (all lumps, all medicines given), in the order of their keys.</summary>
    public ImmutableArray<Course> All(string word)
    {
        ImmutableArray<Course> courses = book.All(word);
        asked.Add((null, word, courses));
        return courses;
    }

    /// <summary>The last weighing up to a day that is a point, not a bound; null when there is none.</summary>
    public NoteReading? WeightOn(DateOnly day)
    {
        Course weight = Of(CourseKey.Weight);
        for (int index = weight.CountUpTo(day) - 1; index >= 0; index--)
        {
            if (weight.Lines[index].Reading is { Value.Bound: Bound.Exact or Bound.About } reading)
            {
                return reading;
            }
        }

        return null;
    }

    /// <summary>What was asked for, to be kept; the other courses are let go.</summary>
    internal AskedCourses Kept() => new([.. asked]);
}
