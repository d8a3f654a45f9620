using HealthNotes.Analysis.Courses;
using HealthNotes.Analysis.Findings;
using HealthNotes.Analysis.HomeCare;

namespace HealthNotes.Analysis.Rules;

/// <summary>Vomiting, loose stools or coughing on several days running. Said once, at the newest line.</summary>
public sealed class DaysInARowRule : ICourseRule
{
    /// <inheritdoc/>
    public string Name => "days-in-a-row";

    /// <inheritdoc/>
    public string Topic => "seen";

    /// <inheritdoc/>
    public bool Wants(CourseKey key) => key.Word is "vomit" or "stool" or "cough";

    /// <inheritdoc/>
    public IEnumerable<NoteFinding> Find(Course course, CourseContext at)
    {
        foreach (List<Noted> run in Runs.Of(course.Recent.ToArray().Where(CareWords.Counts), 1))
        {
            Noted last = run[^1];
            int days = last.Day.DayNumber - run[0].Day.DayNumber + 1;
            if (CareLimits.For(Name, at, last.Day) is [var limit, ..] && days >= limit.Value)
            {
                string what = course.Key.Word switch { "vomit" => "Vomiting", "stool" => "Loose stools", _ => "Coughing" };
                yield return RuleContext.At(Name, limit.Level, last.Line, last.Item!.Head.Span,
                    $"{what} on {days} days running, since {run[0].Day:yyyy-MM-dd}. {Wording.Advice(limit.Level)}", limit.Source, Runs.Evidence(run));
            }
        }
    }
}
