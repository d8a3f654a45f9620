using System.Collections.Immutable;
using HealthNotes.Analysis.Findings;
using HealthNotes.Analysis.Rules;
using HealthNotes.Record;
using HealthNotes.Record.Courses;

namespace HealthNotes.Analysis;

/// <summary>What was found in one course. Kept while the course, the facts and what was asked of the record stay as they are.</summary>
internal sealed class CourseFindings(Course course, ImmutableArray<NoteFinding> findings, Watch asked)
{
    /// <summary>What was found in it, in no order.</summary>
    public ImmutableArray<NoteFinding> Findings => findings;

    /// <summary>Applies the rules.</summary>
    public static CourseFindings Of(PetRecord record, Course course)
    {
        var asked = new Watch();
        return new CourseFindings(course, RuleBook.FindIn(record.For(asked), course), asked);
    }

    /// <summary>True when the rules would find the same in another version of the course and the record.</summary>
    public bool Holds(PetRecord now, Course same) => PetRecord.IsSame(course, same) && asked.Holds(now);
}
