using System.Collections.Immutable;
using HealthNotes.Grammar.Text;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Grammar.Items;

/// <summary>How exactly a value is known.</summary>
public enum Bound
{
    /// <summary>As written.</summary>
    Exact,

    /// <summary>About: <c>~12mm</c>, <c>like pea</c>.</summary>
    About,

    /// <summary>Below: <c>&lt;2s</c>. Not a point on a trend.</summary>
    Below,

    /// <summary>Above: <c>&gt;30</c>. Not a point on a trend.</summary>
    Above,
}

/// <summary>A value as it was written; what follows from it is worked out elsewhere.</summary>
/// <param name="Span">Where it stands in its line.</param>
/// <param name="Bound">How exactly it is known.</param>
public abstract record NoteValue(TextSpan Span, Bound Bound);

/// <summary>A count over a time: <c>18/15s</c>.</summary>
public sealed record CountOverTime(TextSpan Span, Bound Bound, decimal Count, decimal Time, Unit Unit) : NoteValue(Span, Bound);

/// <summary>A rate that is already per minute: <c>72</c>, <c>72/min</c>.</summary>
public sealed record PerMinute(TextSpan Span, Bound Bound, decimal Number) : NoteValue(Span, Bound);

/// <summary>A number with its unit; <paramref name="Over"/> is 2 in <c>1/2 tablet</c> and 1 otherwise.</summary>
/// <param name="Number">The number, as written.</param>
/// <param name="Unit">Its unit.</param>
/// <param name="Over">What the number is divided by.</param>
/// <param name="Bound">How exactly it is known, where the amount stands alone (<c>walk ~30min</c>); inside a value the value's own bound counts.</param>
public readonly record struct Amount(decimal Number, Unit Unit, decimal Over = 1, Bound Bound = Bound.Exact)
{
    /// <summary>The number, divided where a fraction was written.</summary>
    public decimal Value => Number / Over;
}

/// <summary>A measure of one or more amounts of one quantity: <c>21.4kg</c>, <c>47lb 3oz</c>, <c>1/2 tablet</c>.</summary>
public sealed record Measure(TextSpan Span, Bound Bound, ImmutableArray<Amount> Amounts) : NoteValue(Span, Bound)
{
    /// <summary>What is measured.</summary>
    public Quantity Quantity => Amounts[0].Unit.Quantity;
}

/// <summary>A weighing with the person subtracted: <c>83.2-55.9kg</c>.</summary>
public sealed record Difference(TextSpan Span, Bound Bound, Amount Total, Amount Less) : NoteValue(Span, Bound);

/// <summary>One to three diameters: <c>12mm</c>, <c>12x9mm</c>.</summary>
public sealed record Diameters(TextSpan Span, Bound Bound, ImmutableArray<Amount> Lengths) : NoteValue(Span, Bound);

/// <summary>A size by comparison: <c>like pea</c>.</summary>
public sealed record LikeObject(TextSpan Span, ComparisonObject Object) : NoteValue(Span, Bound.About);

/// <summary>A value on a scale: <c>5/9</c>.</summary>
public sealed record Score(TextSpan Span, Bound Bound, decimal Points, decimal OutOf) : NoteValue(Span, Bound);

/// <summary>A part of a whole: <c>3/4</c>, <c>50%</c>, <c>all</c>.</summary>
/// <param name="Span">Where it stands in its line.</param>
/// <param name="Bound">How exactly it is known.</param>
/// <param name="Part">How much of the whole.</param>
/// <param name="Whole">The whole.</param>
/// <param name="Text">The owner's own words for it, which formatting keeps; null for numbers.</param>
public sealed record Portion(TextSpan Span, Bound Bound, decimal Part, decimal Whole, string? Text = null) : NoteValue(Span, Bound);

/// <summary>A range, as in <c>usual rr 16-24</c>; the unit is null for rates and scores.</summary>
public sealed record ValueRange(TextSpan Span, decimal Low, decimal High, Unit? Unit) : NoteValue(Span, Bound.Exact);

/// <summary>A line to cross, as in <c>call-if rr &gt;32</c>; the unit is null for rates and scores.</summary>
public sealed record Limit(TextSpan Span, Bound Bound, decimal Number, Unit? Unit) : NoteValue(Span, Bound);

/// <summary>A blood pressure in mmHg; the lower number is null where only the upper one was read.</summary>
public sealed record Pressure(TextSpan Span, Bound Bound, decimal Systolic, decimal? Diastolic) : NoteValue(Span, Bound);

/// <summary>A laboratory's number with its unit as written (maybe none), or a result in words, whose number is null.</summary>
public sealed record LabValue(TextSpan Span, Bound Bound, decimal? Number, string UnitOrWords) : NoteValue(Span, Bound);

/// <summary>Since when something is so, before the day of its entry: <c>since Saturday</c>, <c>since 9/17</c>.</summary>
/// <param name="Span">Where it stands.</param>
/// <param name="Text">As it is written.</param>
/// <param name="Date">The day, with or without its year; null where another word names it.</param>
/// <param name="Weekday">The day of the week; null where another word names it.</param>
/// <param name="DaysAgo">How many days before the entry, for yesterday and for a part of the day itself.</param>
public sealed record SinceDay(TextSpan Span, string Text, PartialDate? Date, DayOfWeek? Weekday, int DaysAgo)
{
    private const int Week = 7;

    /// <summary>The day, for an entry of <paramref name="day"/>: never after it. A weekday is the last one before.</summary>
    public DateOnly On(DateOnly day)
    {
        int back = Weekday is { } weekday ? ((day.DayOfWeek - weekday + Week - 1) % Week) + 1 : DaysAgo;
        return Date is not { } date ? day.Plus(-back) : date.Near(day, after: false).Earliest is var first && first <= day ? first : day;
    }
}
