using System.Collections.Immutable;
using System.Globalization;
using HealthNotes.Analysis.HomeCare;
using HealthNotes.Features.Hints;
using HealthNotes.Grammar.Formatting;
using HealthNotes.Grammar.Items;
using HealthNotes.Record.Courses;
using HealthNotes.Record.HomeCare;

namespace HealthNotes.Features.Completion.Places;

/// <summary>A planned medicine, and how far the time to its next dose has gone at a line.</summary>
/// <param name="Order">The plan.</param>
/// <param name="Day">The day of the line.</param>
/// <param name="Last">The dose before; null where none is written.</param>
/// <param name="Passed">The part of the interval that has passed since then: 1 and more is due. Null where no interval is written.</param>
/// <param name="IsDouble">True where a dose now would be one too many by the limit of the rule on doubled doses.</param>
internal sealed record NextDose(MedicineOrder Order, DateOnly Day, Noted? Last, decimal? Passed, bool IsDouble)
{
    private const decimal DueFrom = 0.75m;
    private const int HoursADay = 24;
    private const int MinutesAnHour = 60;

    /// <summary>What is due first, the longest overdue before all; then what has no hours; what was given within its interval last.</summary>
    public static IEnumerable<NextDose> InOrder(NoteAround note, TimeOnly? time, ImmutableArray<MedicineOrder> plan)
    {
        TimeOnly? at = time ?? note.LatestTime;
        return plan.Select(order => Of(order, note, at)).OrderBy(next => next.IsDouble).ThenByDescending(next => next.Passed ?? 1);
    }

    /// <summary>True from three quarters of its interval on, and where it has none.</summary>
    public bool IsDue => Passed is null or >= DueFrom;

    /// <summary>When it was given, when it is due, and its plan, in a few words.</summary>
    public string Text
    {
        get
        {
            string every = Order.Plan.Schedule.Every is { } interval ? $"every {ValuePrinter.Print(interval)}, " : Order.AsNeeded ? "as needed, " : "";
            string state = Passed >= 1 ? Due : Last is not null ? $"given {Told(Last)}; " : "";
            return string.Create(CultureInfo.InvariantCulture, $"{state}planned {every}line {Order.Line + 1}");
        }
    }

    private string Due => Last is { Time: not null } && Order.Interval is { } hours
        ? $"due {Last.Moment.AddMinutes((double)Math.Min(hours * MinutesAnHour, int.MaxValue)).ToString("HH:mm", CultureInfo.InvariantCulture)}; "
        : "due; ";

    /// <summary>When it was given: the time on the day of the line, else with its day.</summary>
    private string Told(Noted dose)
    {
        string? time = dose.Time?.ToString("HH:mm", CultureInfo.InvariantCulture);
        return time is not null && dose.Day == Day ? time : string.Join(' ', dose.Day == Day.Plus(-1) ? "yesterday" : DayWords.Iso(dose.Day), time).TrimEnd();
    }

    private static NextDose Of(MedicineOrder order, NoteAround note, TimeOnly? at)
    {
        Noted[] given = [.. note.Document.Record.Of(new CourseKey("gave", order.Medicine)).Before(note.Day, at ?? TimeOnly.MaxValue, int.MaxValue).Where(dose => dose.Line != note.Line).Take(HoursADay)];
        Noted? last = given.FirstOrDefault();
        decimal? passed = order.Interval is not { } interval ? null : last is null ? 1 : Hours(last, given, order, note.Day, at) / interval;
        return new NextDose(order, note.Day, last, passed, passed < CareLimits.One("dose-doubled", note.Document.Record)?.Value);
    }

    /// <summary>Hours since the last dose; without times, by the doses of the day.</summary>
    private static decimal Hours(Noted last, Noted[] given, MedicineOrder order, DateOnly day, TimeOnly? at)
    {
        if (at is { } now && last.Time is not null)
        {
            return (decimal)(day.ToDateTime(now) - last.Moment).TotalHours;
        }

        int days = day.DayNumber - last.Day.DayNumber;
        bool more = days == 0 && order.DosesADay > given.Count(dose => dose.Day == day);
        return more ? order.Interval!.Value : (decimal)days * HoursADay;
    }
}
