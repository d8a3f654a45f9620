using System.Globalization;
using HealthNotes.Analysis.Courses;
using HealthNotes.Analysis.Due;
using HealthNotes.Analysis.Findings;
using HealthNotes.Grammar.Notes;

namespace HealthNotes.Analysis.Rules;

/// <summary>The next check at home, weighing or visit is overdue today. One instance each. A reminder: something to know.</summary>
public sealed class OverdueRule : ICourseRule
{
    private readonly string what;
    private readonly string name;
    private readonly Func<CourseContext, DueItem?> next;

    private OverdueRule(string what, string name, Func<CourseContext, DueItem?> next)
    {
        this.what = what;
        this.name = name;
        this.next = next;
    }

    /// <inheritdoc/>
    public string Name => what + "-overdue";

    /// <inheritdoc/>
    public string Topic => "due " + what;

    /// <summary>The rule for checks, weighings and visits.</summary>
    public static IEnumerable<IRule> ForEach() =>
    [
        new OverdueRule("check", "check at home", DueList.NextCheck),
        new OverdueRule("weighing", "weighing", DueList.NextWeighing),
        new OverdueRule("visit", "visit to the clinic", DueList.NextVisit),
    ];

    /// <inheritdoc/>
    public bool Wants(CourseKey key) => key == CourseKey.Note;

    /// <inheritdoc/>
    public IEnumerable<NoteFinding> Find(Course course, CourseContext at)
    {
        if (next(at) is not { Every: { } every, On: { } on } due || at.Note.Today.DayNumber - on.DayNumber <= DueList.Grace(at, what))
        {
            yield break;
        }

        int days = at.Note.Today.DayNumber - on.DayNumber;
        string who = due.FactLine is null
            ? $"about every {every} days is {(due.Source.StartsWith("common", StringComparison.Ordinal) ? "usual" : "advised")} {(at.Note.Pet.Born is null ? "" : "at this age")}".TrimEnd()
            : $"these notes say every {every} days";
        string last = on.Plus(-every).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
        yield return RuleContext.At(Name, FindingLevel.Info, due.Line, due.Span,
            $"The last {name} in these notes is of {last}; {who}: {days} days overdue.", due.Source, due.FactLine is { } line ? [line] : []);
    }
}
