namespace HealthNotes.Grammar.Items;

/// <summary>Times of a plan or a task, each as written; all are optional.</summary>
/// <param name="Every">The interval: <c>every 12h</c>, <c>q12h</c>, <c>BID</c>.</param>
/// <param name="For">How long: <c>for 7d</c>.</param>
/// <param name="In">From the entry's day on: <c>in 2w</c>.</param>
/// <param name="From">The first day.</param>
/// <param name="Until">The last day.</param>
/// <param name="On">The day it falls on.</param>
/// <param name="At">The time of day.</param>
/// <param name="EveryTo">The longest interval, where two are written: <c>q8-12h</c>.</param>
public sealed record Schedule(Amount? Every, Amount? For, Amount? In, PartialDate? From, PartialDate? Until, PartialDate? On, TimeOnly? At, Amount? EveryTo = null)
{
    /// <summary>Nothing written.</summary>
    public static Schedule None { get; } = new(null, null, null, null, null, null, null);

    /// <summary>True when the schedule names a day or a span to a day.</summary>
    public bool NamesDay => In is not null || On is not null || Until is not null || From is not null;

    /// <summary>True when a day in it has no year yet.</summary>
    public bool LacksYear() => On?.Year == PartialDate.NoYear || Until?.Year == PartialDate.NoYear || From?.Year == PartialDate.NoYear;

    /// <summary>The same with the years that an entry of this <paramref name="day"/> gives: what was done or began lies behind it, what falls due or ends lies ahead.</summary>
    public Schedule Near(DateOnly day, bool done) => this with { On = On?.Near(day, after: !done), Until = Until?.Near(day, after: true), From = From?.Near(day, after: false) };

    /// <summary>The day something due falls on, for an entry of <paramref name="entryDay"/>; null when no day follows.</summary>
    public DateOnly? DayAfter(DateOnly? entryDay)
    {
        if ((On ?? Until ?? From) is { } named)
        {
            return named.Latest;
        }

        return entryDay is { } day && (In ?? Every) is { } span ? Add(day, span) : null;
    }

    /// <summary><paramref name="day"/> and <paramref name="span"/> later; whole months and years follow the calendar, and the end of time stops it.</summary>
    public static DateOnly Add(DateOnly day, Amount span)
    {
        bool whole = span.Value == decimal.Truncate(span.Value);
        int wholes = (int)Math.Clamp(span.Value, 0, 9_999);
        return span.Unit.Word switch
        {
            "y" when whole => day.PlusMonths(12 * wholes),
            "mo" when whole => day.PlusMonths(wholes),
            _ => day.Plus((int)Math.Clamp(Math.Ceiling(Math.Min(span.Value, 10_000_000) * span.Unit.Factor / 86_400m), 0, 3_660_000)),
        };
    }
}
