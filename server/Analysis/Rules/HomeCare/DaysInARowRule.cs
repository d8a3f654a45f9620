using HealthNotes.Analysis.Findings;
using HealthNotes.Analysis.HomeCare;
using HealthNotes.Record;
using HealthNotes.Record.Courses;
using HealthNotes.Record.HomeCare;

namespace HealthNotes.Analysis.Rules;

/// <summary>Vomiting, loose stools or coughing on several days running. Said once, at the newest line.</summary>
public sealed class DaysInARowRule : ICourseRule
{
    /// <inheritdoc/>
    public RuleKind Kind { get; } = new("days-in-a-row", "seen", 14);

    /// <inheritdoc/>
    public bool Wants(CourseKey key) => key.Word is "vomit" or "stool" or "cough";

    /// <inheritdoc/>
    public IEnumerable<NoteFinding> Find(Course course, PetRecord at)
    {
        foreach (List<Noted> run in Runs.Of(course.Recent.ToArray().Where(CareWords.Counts), 1))
        {
            Noted last = run[^1];
            int days = last.Day.DayNumber - run[0].Day.DayNumber + 1;
            if (CareLimits.For(Kind.Name, at, last.Day) is [var limit, ..] && days >= limit.Value)
            {
                string what = course.Key.Word switch { "vomit" => "Vomiting", "stool" => "Loose stools", _ => "Coughing" };
                yield return this.At(limit.Level, last.Line, last.Item!.Head.Span,
                    $"{what} on {days} days running, since {run[0].Day:yyyy-MM-dd}.", limit.Source, Runs.Evidence(run));
            }
        }
    }
}
