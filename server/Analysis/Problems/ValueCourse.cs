using System.Collections.Immutable;
using HealthNotes.Analysis.Rules;
using HealthNotes.Analysis.Trends;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Notes;
using HealthNotes.Record;
using HealthNotes.Record.Courses;
using HealthNotes.Record.Pet;
using HealthNotes.Record.Readings;

namespace HealthNotes.Analysis.Problems;

/// <summary>Tells how a vital went: from where, at the visit, now.</summary>
public static class ValueCourse
{
    /// <summary>A weighing is reliable when one of the two before or after it lies within so many percent (rule of thumb; common practice, no source).</summary>
    private const decimal ReliablePercent = 5;

    private const int Around = 2;

    /// <summary>How far back a highest or lowest weight is looked for.</summary>
    private const int WeightDays = 730;

    /// <summary>A first reading is looked for in the year before the last.</summary>
    private const int YearDays = 365;

    /// <summary>The present rate is that of the last stretch of at least so many days.</summary>
    private const int RateDays = 56;

    private const decimal Month = 365.25m / 12;
    private const decimal Percent = 100;

    /// <summary>The course as values of days up to today; for water, of each day for each kilogram.</summary>
    public static ImmutableArray<DayValue> Days(PetRecord record, Course course) => course.Key.Word == "water" && TrendRow.For("water") is { } row
        ? WaterPerDay.Of(course, record.Today, record.WeightOn, row with { Days = WeightDays, Last = WeightDays })
        : DayValue.Of(course, record.Today, int.MaxValue, int.MaxValue);

    /// <summary>What to show of a course; null when it holds no value.</summary>
    public static ValuePart? Of(PetRecord record, Course course, bool? loses, bool found)
    {
        ImmutableArray<DayValue> days = Days(record, course);
        if (days.IsEmpty)
        {
            return null;
        }

        DayValue now = days[^1];
        bool isWeight = course.Key == CourseKey.Weight;
        DayValue? from = isWeight && loses is { } lost ? Extreme(days, lost) : loses is { } less && course.Key.Word is "bcs" or "mcs" ? Extreme(days, less, reliable: false) : Start(record, course, days);
        DayValue? visit = record.Period.Visit?.Head.Date is { } on ? Last(days, on) : null;
        from = from is { } first && first.Day < now.Day ? from : null;
        visit = visit is { } seen && seen.Day < now.Day && seen.Day > (from?.Day ?? DateOnly.MinValue) ? visit : null;
        (ClinicRange? clinic, ClinicRange? besides) = Clinic(record, course);
        (decimal PerMonth, DateOnly Since)? rate = isWeight ? Rate(days) : null;
        return new ValuePart(
            course.Key, Dated(from), Dated(visit), Dated(now)!,
            isWeight && from is { } start ? WeightDrop.PercentChange(Number(start), Number(now)) : null,
            isWeight && (visit ?? (from?.Day <= record.Period.Visit?.Head.Date && Last(days, record.Period.Visit!.Head.Date!.Value) is { } same && same.Day < now.Day ? same : null)) is { } then ? WeightDrop.PercentChange(Number(then), Number(now)) : null,
            rate?.PerMonth,
            clinic is null ? record.NormalFor(Reading(now)) : null, clinic, found)
        {
            RateSince = rate?.Since,
            SameSince = course.Key.Word is "bcs" or "mcs" ? days.Reverse().TakeWhile(day => day.Value == now.Value && day.Bound == now.Bound).Last().Day : null,
            Usual = besides,
            Lines = [.. course.Lines.Select(line => line.Line)],
        };
    }

    /// <summary>The highest (or lowest) weighing before the last, the latest of equal ones; null when there is none. A single weighing far from those around it is not <paramref name="reliable"/>; a score always is.</summary>
    public static DayValue? Extreme(ImmutableArray<DayValue> weights, bool highest, bool reliable = true)
    {
        DayValue? extreme = null;
        for (int i = 0; i < weights.Length - 1; i++)
        {
            DayValue weight = weights[i];
            bool counts = weight.IsPoint && (!reliable || Enumerable.Range(i - Around, (2 * Around) + 1).Any(other => other != i && other >= 0 && other < weights.Length && IsNear(weights[other], weight)));
            if (counts && weights[^1].Day.DayNumber - weight.Day.DayNumber <= WeightDays && (extreme is not { } best || (highest ? weight.Value >= best.Value : weight.Value <= best.Value)))
            {
                extreme = weight;
            }
        }

        return extreme;
    }

    /// <summary>The change in percent a month over the last weeks, and the day it is counted from: the last weighing at least eight weeks before the last one.</summary>
    public static (decimal PerMonth, DateOnly Since)? Rate(ImmutableArray<DayValue> weights)
    {
        DayValue now = weights[^1];
        for (int i = weights.Length - 2; i >= 0; i--)
        {
            int days = now.Day.DayNumber - weights[i].Day.DayNumber;
            if (days >= RateDays && weights[i].IsPoint)
            {
                return days > 2 * RateDays ? null : (WeightDrop.PercentChange(Number(weights[i]), Number(now)) * Month / days, weights[i].Day);
            }
        }

        return null;
    }

    private static bool IsNear(DayValue one, DayValue other) => one.IsPoint && Math.Abs(one.Value - other.Value) * Percent <= ReliablePercent * other.Value;

    /// <summary>The first day of a clear trend; else the last reading up to the start of the period; else the first in it.</summary>
    private static DayValue? Start(PetRecord record, Course course, ImmutableArray<DayValue> days)
    {
        DateOnly? grown = TrendRow.For(course.Key.Word) is { } row ? record.Pet.GrownOn(row.GrownMonths) : null;
        Trend? trend = course.Key.Word == "water" && TrendRow.For("water") is { } water ? Trend.Of(water, WaterPerDay.Of(course, record.Today, record.WeightOn, water), grown) : Trend.Of(course, record.Today, grown);
        DateOnly? since = trend is { IsClear: true } ? trend.Since : record.CurrentFrom;
        return (trend is { IsClear: true } ? null : since is { } from ? Last(days, from) : null) is { } before && days[^1].Day.DayNumber - before.Day.DayNumber <= YearDays ? before
            : days.FirstOrDefault(day => !(day.Day < since)) is { At: not null } first ? first : null;
    }

    private static DayValue? Last(ImmutableArray<DayValue> days, DateOnly upTo) => days.LastOrDefault(day => day.Day <= upTo) is { At: not null } last ? last : null;

    private static DatedValue? Dated(DayValue? day) => day is not { } value ? null : new DatedValue(value.Day, Reading(value).Value);

    /// <summary>The last reading of the day; of water, what was drunk on it for each kilogram.</summary>
    private static NoteReading Reading(DayValue day) => day.At with { Value = day.At.What == "water" ? new ReadValue(day.Value, "mL/kg/d", null, null, day.Bound) : day.At.Value.OnScaleOfNine() };

    private static decimal Number(DayValue day) => Reading(day).Value.Number;

    /// <summary>The limit that the clinic set for the vital, else the range it calls usual, and how often it was passed; then the usual range, where a limit comes first.</summary>
    private static (ClinicRange? First, ClinicRange? Besides) Clinic(PetRecord record, Course course)
    {
        if (course.Lines.LastOrDefault(line => line.Reading is not null)?.Reading is not { } last)
        {
            return default;
        }

        NoteReading[] all = [.. course.Lines.Where(line => line.Reading is not null).Select(line => line.Reading!)];
        NoteReading[] readings = [.. course.Lines.Where(line => line.Reading is not null && record.IsCurrent(line)).Select(line => line.Reading!)];
        DatedFact<UsualFact>? usual = OwnLimits.UsualFor(record.Facts, last);
        ClinicRange[] limits = [.. record.Facts.LimitsOn(LimitKey.For(last), last.Day).Select(drawn => Compared(drawn.IsAbove ? null : drawn.Limit, drawn.IsAbove ? drawn.Limit : null, true, drawn.Fact.Fact.Per?.When))];
        ClinicRange? toLimit = limits.FirstOrDefault(limit => limit.Worst is not null) ?? limits.FirstOrDefault();
        ClinicRange? toUsual = usual is not { Fact.Range: var range } ? null : Compared(OwnLimits.Canonical(range.Low, range.Unit), OwnLimits.Canonical(range.High, range.Unit), false, usual.Fact.Per?.When);

        // a limit that was not passed says less than the range the clinic calls usual, once the last reading lies outside
        return toLimit is null || (toLimit.Worst is null && toUsual is { InARow: > 0 }) ? (toUsual, null) : (toLimit, toUsual);

        ClinicRange Compared(decimal? low, decimal? high, bool isLimit, PartialDate? written)
        {
            bool IsAbove(NoteReading reading) => high is { } top && LineCrossing.Crosses(reading.Value, above: true, top, inclusive: false);
            bool IsBelow(NoteReading reading) => low is { } bottom && LineCrossing.Crosses(reading.Value, above: false, bottom, inclusive: false);
            NoteReading[] above = [.. readings.Where(IsAbove)];
            NoteReading[] below = [.. readings.Where(IsBelow)];
            NoteReading[] past = above.Length > 0 ? above : below;
            NoteReading? worst = above.Length > 0 ? above.MaxBy(reading => reading.Value.Number) : below.MinBy(reading => reading.Value.Number);
            int inARow = readings.Reverse().Zip(past.Reverse()).TakeWhile(pair => ReferenceEquals(pair.First, pair.Second)).Count();
            return new ClinicRange(low, high, last.Value.Unit, isLimit, written, above.Length, below.Length, readings.Length, inARow, Read(worst))
            {
                Since = inARow == 0 ? null : all.Reverse().TakeWhile(above.Length > 0 ? IsAbove : IsBelow).Last().Day,
                Next = worst is { Time: { } time, Value.Unit: "mmol/L" } ? Read(readings.Where(reading => reading.Day == worst.Day && reading.Time > time).MinBy(reading => reading.Time)) : null,
            };

            static DatedValue? Read(NoteReading? reading) => reading is null ? null : new DatedValue(reading.Day!.Value, reading.Value) { Time = reading.Time };
        }
    }
}
