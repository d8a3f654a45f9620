using System.Collections.Immutable;
using HealthNotes.Analysis.Findings;
using HealthNotes.Analysis.Rules;
using HealthNotes.Record;
using HealthNotes.Record.Courses;

namespace HealthNotes.Analysis;

/// <summary>What was found in one course, rule by rule. A rule's findings are kept while the course, the facts and what that rule asked of the record stay as they are.</summary>
internal sealed class CourseFindings
{
    private readonly Course course;
    private readonly (ImmutableArray<NoteFinding> Findings, Watch Asked)[] rules;

    private CourseFindings(Course course, (ImmutableArray<NoteFinding> Findings, Watch Asked)[] rules)
    {
        this.course = course;
        this.rules = rules;
        Findings = [.. rules.SelectMany(rule => rule.Findings)];
    }

    /// <summary>What was found in it, in no order.</summary>
    public ImmutableArray<NoteFinding> Findings { get; }

    /// <summary>Applies the rules that would not find the same as before.</summary>
    /// <param name="record">The record.</param>
    /// <param name="course">The course.</param>
    /// <param name="had">What was found in another version of the course and the record; null where nothing of it holds.</param>
    public static CourseFindings Of(PetRecord record, Course course, CourseFindings? had)
    {
        bool same = had is not null && PetRecord.IsSame(had.course, course);
        bool all = same;
        (ImmutableArray<NoteFinding> Findings, Watch Asked)[] rules = [.. RuleBook.ForCourse(course.Key).Select((rule, index) =>
        {
            if (same && had!.rules[index].Asked.Holds(record))
            {
                return had.rules[index];
            }

            all = false;
            var asked = new Watch();
            return (RuleBook.FindIn(record.For(asked), course, rule), asked);
        })];
        return all ? had! : new CourseFindings(course, rules);
    }
}
