using System.Collections.Immutable;
using HealthNotes.Analysis.Findings;
using HealthNotes.Analysis.HomeCare;
using HealthNotes.Grammar.Text;
using HealthNotes.Record;
using HealthNotes.Record.Courses;
using HealthNotes.Record.HomeCare;
using HealthNotes.Record.Pet;

namespace HealthNotes.Analysis.Rules;

/// <summary>Doses written as missed, or not written on a day of which the log tells other things: one is something to know, several running are worth watching.</summary>
public sealed class DoseMissedRule : ICourseRule
{
    private static readonly CourseKey[] EntryKinds = [CourseKey.Logs, CourseKey.Checks, CourseKey.Visits];

    /// <inheritdoc/>
    public RuleKind Kind { get; } = new("dose-missed", "dose", 6);

    /// <inheritdoc/>
    public bool Wants(CourseKey key) => key.Word is "gave" or "missed";

    /// <inheritdoc/>
    public IEnumerable<NoteFinding> Find(Course course, PetRecord at)
    {
        string medicine = course.Key.Detail;
        Course given = course.Key.Word == "gave" ? course : at.Of(new CourseKey("gave", medicine));
        Course missed = course.Key.Word == "missed" ? course : at.Of(new CourseKey("missed", medicine));
        // said once, from the doses that were given where there are any
        if ((course.Key.Word == "missed" && given.Lines.Length > 0) || CareLimits.One(PetProfile.IsInsulin(medicine) ? Kind.Name + "-insulin" : Kind.Name, at) is not { } limit || CareLimits.One("dose-logged", at) is not { } logged)
        {
            yield break;
        }

        ImmutableArray<MedicineOrder> orders = MedicineOrder.Of(medicine, at);
        DateOnly from = given.Lines.Length > 0 ? given.Recent[0].Day : missed.Recent[0].Day;
        ImmutableArray<Noted> entries = [.. EntryKinds.SelectMany(kind => at.Of(kind).Between(from, DateOnly.MaxValue).ToArray()).OrderBy(entry => entry.Moment).ThenBy(entry => entry.Line)];
        List<DoseGap>? run = null;
        foreach (DoseGap gap in DoseGaps.In(given, missed, entries, orders, (int)logged.Value))
        {
            if (run is not null && gap.Day.DayNumber - run[^1].Day.DayNumber > 1)
            {
                yield return Tell(medicine, run, limit);
                run = null;
            }

            (run ??= []).Add(gap);
        }

        if (run is not null)
        {
            yield return Tell(medicine, run, limit);
        }
    }

    private NoteFinding Tell(string medicine, List<DoseGap> run, CareLimit limit)
    {
        int missed = run.Sum(gap => gap.Missed.Length);
        int silent = run.Sum(gap => gap.NotWritten);
        FindingLevel level = missed + silent >= limit.Value ? limit.Level : FindingLevel.Info;
        DoseGap last = run[^1];
        Noted at = last.Missed is [.., var line] ? line : last.Entry ?? run.SelectMany(gap => gap.Missed).Last();
        TextSpan span = at.Item?.Head.Span ?? at.Head.DateSpan;
        string what = string.Join(" and ", new[] { Count(missed, "missed"), Count(silent, "not written") }.Where(text => text.Length > 0));
        string days = run.Count == 1 ? $"on {last.Day:yyyy-MM-dd}" : $"from {run[0].Day:yyyy-MM-dd} to {last.Day:yyyy-MM-dd}";
        string hint = silent > 0 ? " If it was given, write it; if not, `missed` says so." : "";
        return this.At(level, at.Line, span,
            $"{medicine}: {what} {days}{(last.Order.FewestDosesADay is { } planned ? $"; the plan has {planned} a day" : "")}.{hint}",
            limit.Source, run.SelectMany(gap => gap.Missed.Select(one => one.Line).Append(gap.Entry?.Line ?? last.Order.Line)).Append(last.Order.Line).Distinct().TakeLast(Runs.MostEvidence));
    }

    private static string Count(int count, string what) => count switch { 0 => "", 1 => $"one dose {what}", _ => $"{count} doses {what}" };
}
