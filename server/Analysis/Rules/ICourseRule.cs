using HealthNotes.Analysis.Findings;
using HealthNotes.Record;
using HealthNotes.Record.Courses;

namespace HealthNotes.Analysis.Rules;

/// <summary>
/// A rule about one thing over time: a vital, a lump, a medicine, or the whole note as it stands today
/// (<see cref="CourseKey.Note"/>). A pure function of the course, of the facts, and of the courses it asks for.
/// Its findings may stand in any line.
/// </summary>
public interface ICourseRule : IRule
{
    /// <summary>True for the courses it looks at.</summary>
    bool Wants(CourseKey key);

    /// <summary>What it finds, in any order.</summary>
    IEnumerable<NoteFinding> Find(Course course, PetRecord at);
}
