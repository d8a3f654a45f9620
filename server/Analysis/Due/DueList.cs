using System.Collections.Immutable;
using HealthNotes.Analysis.Courses;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Text;

namespace HealthNotes.Analysis.Due;

/// <summary>What falls due next, from what was done last and how often it should be done.</summary>
public static class DueList
{
    private const string Own = "the notes themselves";

    /// <summary>Everything that falls due and is not done, by day, whether its day has come or not; what has no day comes last.</summary>
    public static ImmutableArray<DueItem> Of(CourseContext at) =>
        [.. new[] { NextCheck(at), NextWeighing(at), NextVisit(at) }.OfType<DueItem>().Concat(OpenTasks.In(at)).Concat(DueMedicines.In(at)).OrderBy(item => item.On is null).ThenBy(item => item.On).ThenBy(item => item.Line)];

    /// <summary>The next check: by the latest <c>home-check</c> that holds, else by the life stage. Null before the first check.</summary>
    internal static DueItem? NextCheck(CourseContext at)
    {
        if (at.Of(CourseKey.Checks).Last is not { } last)
        {
            return null;
        }

        return at.Note.HomeCheck is { Fact.Schedule.Every: { } every } fact
            ? new DueItem(DueKind.Check, "", Schedule.Add(last.Day, every), last.Line, SpanOf(last), Schedule.Add(last.Day, every).DayNumber - last.Day.DayNumber, Own) { FactLine = fact.Line }
            : Next(at, DueKind.Check, "check", last);
    }

    /// <summary>The next weighing; null before the first.</summary>
    internal static DueItem? NextWeighing(CourseContext at) =>
        at.Of(CourseKey.Weight).Last is { } last ? Next(at, DueKind.Weighing, "weighing", last) : null;

    /// <summary>The next visit; null before the first.</summary>
    internal static DueItem? NextVisit(CourseContext at) =>
        at.Of(CourseKey.Visits).Last is { } last ? Next(at, DueKind.Visit, "visit", last) : null;

    /// <summary>How many days past due before it is called overdue.</summary>
    internal static int Grace(CourseContext at, string what) => Cadence.For(what, at.Note.Pet.Species, at.Note.StageToday)?.Grace ?? 0;

    private static TextSpan SpanOf(Noted noted) => noted.Reading?.Span ?? noted.Head.DateSpan;

    private static DueItem? Next(CourseContext at, DueKind kind, string what, Noted last) =>
        Cadence.For(what, at.Note.Pet.Species, at.Note.StageToday) is { } row
            ? new DueItem(kind, "", last.Day.Plus(row.Days), last.Line, SpanOf(last), row.Days, row.Source)
            : null;
}
