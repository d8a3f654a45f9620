using System.Globalization;
using HealthNotes.Analysis.Findings;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Notes;
using HealthNotes.Record;
using HealthNotes.Record.Courses;
using HealthNotes.Record.Due;

namespace HealthNotes.Analysis.Rules;

/// <summary>The next check at home, weighing or visit is overdue today. One instance each. A reminder: something to know.</summary>
public sealed class OverdueRule : ICourseRule
{
    private readonly string what;
    private readonly string name;
    private readonly Func<PetRecord, DueItem?> next;

    private OverdueRule(string what, string name, Func<PetRecord, DueItem?> next)
    {
        this.what = what;
        this.name = name;
        this.next = next;
    }

    /// <inheritdoc/>
    public RuleKind Kind => new(what + "-overdue", "due " + what, 1);

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
    public IEnumerable<NoteFinding> Find(Course course, PetRecord at)
    {
        if (next(at) is not { Every: { } every, On: { } on } due || at.Facts.Today.DayNumber - on.DayNumber <= DueList.Grace(at, what))
        {
            yield break;
        }

        int days = at.Facts.Today.DayNumber - on.DayNumber;
        string who = due.Source.EndsWith(ClinicRules.Ending, StringComparison.Ordinal) ? $"the clinic says every {every} days" : due.FactLine is null
            ? $"about every {every} days is {(due.Source.StartsWith("common", StringComparison.Ordinal) ? "usual" : "advised")} {(at.Facts.Pet.Born is null ? "" : "at this age")}".TrimEnd()
            : $"these notes say every {every} days";
        string last = on.Plus(-every).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
        yield return this.At(FindingLevel.Info, due.Line, due.Span,
            $"The last {name} in these notes is of {last}; {who}: {days} days overdue.", due.Source, due.FactLine is { } line ? [line] : []);
    }
}
