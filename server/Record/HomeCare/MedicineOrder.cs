using System.Collections.Immutable;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Vocabulary;
using HealthNotes.Record.Courses;
using HealthNotes.Record.Readings;

namespace HealthNotes.Record.HomeCare;

/// <summary>One line of a medicine's plan and the days it holds.</summary>
/// <param name="Plan">What is written.</param>
/// <param name="Line">The index of its line.</param>
/// <param name="From">The first day; <see cref="DateOnly.MinValue"/> where none is written.</param>
/// <param name="LastDay">The last day that is written (<c>until</c>, <c>for</c>); null where it goes on.</param>
/// <param name="Ended">The moment it ended before that: it was stopped, or another plan took its place; null where it was not.</param>
public sealed record MedicineOrder(MedicinePlan Plan, int Line, DateOnly From, DateOnly? LastDay, DateTime? Ended)
{
    private const int HoursADay = 24;
    private const string PerKilogram = "mg/kg";

    /// <summary>The fewest hours between two doses; null where none is written or it is given only when needed.</summary>
    public decimal? Interval => AsNeeded ? null : Hours(Plan.Schedule.Every);

    /// <summary>The most hours between two doses: another number only where two are written (<c>every 8-12h</c>).</summary>
    public decimal? LongestInterval => AsNeeded ? null : Hours(Plan.Schedule.EveryTo ?? Plan.Schedule.Every);

    /// <summary>True for a plan that is kept as it was written: it holds, but nothing is worked out from it.</summary>
    public bool IsAsWritten => Plan.Dose is null && Plan.Note is not null && Plan.Schedule == Schedule.None;

    /// <summary>True for a medicine that is given only when needed.</summary>
    public bool AsNeeded => Plan.Manner.Any(manner => manner.Kind == StateKind.When);

    /// <summary>Doses a day, for a medicine given daily or more often; else null.</summary>
    public int? DosesADay => ADay(Interval);

    /// <summary>The fewest doses a day that the plan allows.</summary>
    public int? FewestDosesADay => ADay(LongestInterval);

    /// <summary>The last day it held, by what is written or because it was stopped or replaced; null while it goes on.</summary>
    public DateOnly? EndDay => Ended is not { } ended ? LastDay : LastDay < DateOnly.FromDateTime(ended) ? LastDay : DateOnly.FromDateTime(ended);

    /// <summary>The medicine's name as it is compared.</summary>
    public string Medicine => CourseKey.MedicineName(Plan.Medicine.Text);

    /// <summary>True when it holds at the moment of a line.</summary>
    public bool Holds(Noted noted) => From <= noted.Day && !(noted.Day > LastDay) && !(noted.Moment > Ended);

    /// <summary>All plans of a medicine, by their first day, each ended by the next and by a <c>stop</c>.</summary>
    public static ImmutableArray<MedicineOrder> Of(string medicine, PetRecord at)
    {
        Course stops = at.Of(new CourseKey("stop", medicine));
        MedicineOrder[] orders = [.. at.Facts.PlansByMedicine[medicine].Select(Read).OrderBy(order => order.From)];
        for (int index = 0; index < orders.Length; index++)
        {
            DateTime? replaced = index + 1 < orders.Length && orders[index + 1].From is var next && next > orders[index].From
                ? next.ToDateTime(TimeOnly.MinValue).AddTicks(-1)
                : null;
            DateTime? stopped = stops.Between(orders[index].From, DateOnly.MaxValue) is [var stop, ..] ? EndOf(stop) : null;
            orders[index] = orders[index] with { Ended = stopped < replaced || replaced is null ? stopped : replaced };
        }

        return [.. orders];
    }

    /// <summary>All plans of all medicines, in the order of their lines.</summary>
    public static ImmutableArray<MedicineOrder> All(PetRecord at) =>
        [.. at.Facts.PlansByMedicine.SelectMany(same => Of(same.Key, at)).OrderBy(order => order.Line)];

    /// <summary>What is to be given on a day: of each medicine the latest plan that holds, in the order of their lines.</summary>
    public static ImmutableArray<MedicineOrder> On(DateOnly day, PetRecord at) =>
        [.. All(at).Where(order => order.From <= day && !(day > order.EndDay)).GroupBy(order => order.Medicine)
            .Select(same => same.MaxBy(order => (order.From, order.Line))!).OrderBy(order => order.Line)];

    /// <summary>The plan's amount for one time on a day: <c>10mg/kg</c> by the weight of that day; null where it is not written, or no weight is.</summary>
    public (decimal Amount, string Unit)? AmountOn(DateOnly day, PetRecord at) => AmountOf(Plan.Dose) is not { } written ? null
        : written.Unit != PerKilogram ? written
        : at.WeightOn(day) is { } weight ? (written.Amount * weight.Value.Number / 1_000_000, "kg")
        : null;

    /// <summary>True for an amount that is written for each kilogram: it is rounded to what can be given.</summary>
    public bool IsPerKilogram => AmountOf(Plan.Dose)?.Unit == PerKilogram;

    /// <summary>An amount in the canonical unit of its kind (kg, mL, or the counted unit itself); null when nothing is written.</summary>
    public static (decimal Amount, string Unit)? AmountOf(NoteValue? dose) =>
        dose is Measure { Amounts: [var first, ..] } measure ? (UnitConversion.ToCanonical(measure), first.Unit.Canonical) : null;

    private static decimal? Hours(Amount? interval) => interval is { } every ? every.Value * every.Unit.Factor / 3_600m : null;

    private static int? ADay(decimal? interval) => interval is { } hours and > 0 and <= HoursADay ? (int)Math.Round(HoursADay / hours) : null;

    private static MedicineOrder Read(DatedFact<MedicinePlan> fact)
    {
        Schedule schedule = fact.Fact.Schedule;
        DateOnly from = schedule.From?.Earliest ?? fact.Day ?? DateOnly.MinValue;
        DateOnly? last = schedule.Until?.Latest;
        if (last is null && schedule.For is { } length && from > DateOnly.MinValue)
        {
            last = Schedule.Add(from, length).Plus(-1);
        }

        return new MedicineOrder(fact.Fact, fact.Line, from, last, null);
    }

    /// <summary>Without a time a medicine may still have been given on the day it was stopped.</summary>
    private static DateTime EndOf(Noted stop) => stop.Time is null ? stop.Day.ToDateTime(TimeOnly.MaxValue) : stop.Moment;
}
