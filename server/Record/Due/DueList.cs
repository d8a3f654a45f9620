using System.Collections.Immutable;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Text;
using HealthNotes.Record.Courses;

namespace HealthNotes.Record.Due;

/// <summary>What falls due next, from what was done last and how often it should be done.</summary>
public static class DueList
{
    private const string Own = "the notes themselves";

    /// <summary>
    /// Everything that falls due and is not done, whether its day has come or not, in the order in which people are told
    /// (<see cref="DueItem.Rank"/>). What was to be looked at again before the current period is left out: the check since then has looked.
    /// </summary>
    public static ImmutableArray<DueItem> Of(PetRecord at) =>
        [.. new[] { NextCheck(at), NextWeighing(at), NextVisit(at) }.OfType<DueItem>().Concat(DueTasks.In(at).Where(due => due.Kind != DueKind.Recheck || !(due.On < at.CurrentFrom))).Concat(DueMedicines.In(at)).OrderBy(item => item.Rank(at.Facts.Today))];

    /// <summary>The next check: by the latest <c>home-check</c> that holds, else by the life stage. Null before the first check.</summary>
    public static DueItem? NextCheck(PetRecord at)
    {
        if (at.Of(CourseKey.Checks).Last is not { } last)
        {
            return null;
        }

        return at.Facts.HomeCheck is { Fact.Schedule.Every: { } every } fact
            ? new DueItem(DueKind.Check, "", Schedule.Add(last.Day, every), last.Line, SpanOf(last), Schedule.Add(last.Day, every).DayNumber - last.Day.DayNumber, fact.From ?? Own) { FactLine = fact.From is null ? fact.Line : null }
            : Next(at, DueKind.Check, "check", last);
    }

    /// <summary>The next weighing; null before the first.</summary>
    public static DueItem? NextWeighing(PetRecord at) =>
        at.Of(CourseKey.Weight).Last is { } last ? Next(at, DueKind.Weighing, "weighing", last) : null;

    /// <summary>The next visit; null before the first.</summary>
    public static DueItem? NextVisit(PetRecord at) =>
        at.Of(CourseKey.Visits).Last is { } last ? Next(at, DueKind.Visit, "visit", last) : null;

    /// <summary>How many days past due before it is called overdue.</summary>
    public static int Grace(PetRecord at, string what) => Cadence.For(what, at.Facts.Pet.Species, at.Facts.StageToday)?.Grace ?? 0;

    private static TextSpan SpanOf(Noted noted) => noted.Reading?.Span ?? noted.Head.DateSpan;

    private static DueItem? Next(PetRecord at, DueKind kind, string what, Noted last) =>
        Cadence.For(what, at.Facts.Pet.Species, at.Facts.StageToday) is { } row
            ? new DueItem(kind, "", last.Day.Plus(row.Days), last.Line, SpanOf(last), row.Days, row.Source)
            : null;
}
