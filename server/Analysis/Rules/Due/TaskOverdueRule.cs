using System.Globalization;
using HealthNotes.Analysis.Findings;
using HealthNotes.Grammar.Items;
using HealthNotes.Record;
using HealthNotes.Record.Courses;
using HealthNotes.Record.Due;

namespace HealthNotes.Analysis.Rules;

/// <summary>
/// Something written as due whose day has passed, and no <c>done</c> names it. What was to be looked at again before the last
/// check is left out: that check has looked.
/// </summary>
public sealed class TaskOverdueRule : ICourseRule
{
    /// <inheritdoc/>
    public RuleKind Kind { get; } = new("task-overdue", "due task", 1);

    /// <inheritdoc/>
    public bool Wants(CourseKey key) => key == CourseKey.Note;

    /// <inheritdoc/>
    public IEnumerable<NoteFinding> Find(Course course, PetRecord at)
    {
        DateOnly? lastCheck = at.Of(CourseKey.Checks).Last?.Day;
        foreach (DueItem due in DueTasks.In(at))
        {
            if (due.On is { } on && on < at.Facts.Today && !(due.Kind == DueKind.Recheck && on < lastCheck))
            {
                int days = at.Facts.Today.DayNumber - on.DayNumber;
                string how = due.Kind == DueKind.Recheck ? "Look again and write what you see" : "Write a new day for it";
                string done = due.Task is Act ? $"Once it is done again, write `{due.What}` with its day." : $"{how}, or `done {due.What}`.";
                yield return this.At(FindingLevel.Info, due.Line, due.Span,
                    $"`{(due.Kind == DueKind.Recheck ? "recheck " : "")}{due.What}` was due {on.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)}, {days} {(days == 1 ? "day" : "days")} ago. {done}",
                    due.Source);
            }
        }
    }
}
