using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Text;

namespace HealthNotes.Record.Due;

/// <summary>What kind of thing falls due.</summary>
public enum DueKind
{
    /// <summary>The next check at home.</summary>
    Check,

    /// <summary>The next weighing.</summary>
    Weighing,

    /// <summary>The next visit to the clinic.</summary>
    Visit,

    /// <summary>Something to be looked at again (<c>recheck</c>).</summary>
    Recheck,

    /// <summary>Something written as due (<c>due</c>): a vaccine, a booster.</summary>
    Task,

    /// <summary>The next dose of a medicine that is given less often than daily.</summary>
    Medicine,

    /// <summary>The last day of a medicine, as its plan says.</summary>
    CourseEnd,
}

/// <summary>Something that falls due and is not done.</summary>
/// <param name="Kind">What kind of thing.</param>
/// <param name="What">What it is, as written: <c>booster</c>, <c>ear L</c>; empty for checks, weighings and visits.</param>
/// <param name="On">The day it falls due; null for a task from which no day follows.</param>
/// <param name="Line">The line it rests on: the task's own, or that of the last check, weighing or visit.</param>
/// <param name="Span">The characters meant there.</param>
/// <param name="Every">For checks, weighings and visits, how many days apart they should be.</param>
/// <param name="Source">Who says so: the publication, or the notes themselves.</param>
public sealed record DueItem(DueKind Kind, string What, DateOnly? On, int Line, TextSpan Span, int? Every, string Source)
{
    /// <summary>True for what a person ordered or wrote down, and for visits; false for checks, weighings and last days, which only come round.</summary>
    public bool IsOrder => Kind is DueKind.Recheck or DueKind.Task or DueKind.Medicine or DueKind.Visit;

    /// <summary>The order in which people are told: orders and visits that are overdue, what else is overdue, what is to come; what has no day comes last.</summary>
    public (bool, bool, bool, DateOnly?, int) Rank(DateOnly today) => (On is null, !(On < today), On < today && !IsOrder, On, Line);

    /// <summary>The task as written; null for checks, weighings and visits.</summary>
    public NoteItem? Task { get; init; }

    /// <summary>The line of the fact that says how often, where one does.</summary>
    public int? FactLine { get; init; }
}
