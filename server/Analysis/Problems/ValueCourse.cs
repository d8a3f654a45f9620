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

    /// <summary>More readings are a chart (common practice, no source).</summary>
    private const int MostByDay = 3;

    private static readonly string[] Noticeable = ["more", "less", "excessive"];

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
        visit = visit is { } seen && seen.Day < now.Day && (seen.Day > (from?.Day ?? DateOnly.MinValue) || (seen.Day == record.Period.Visit!.Head.Date && seen.Day < from?.Day)) ? visit : null;
        ClinicWords? said = ClinicWords.Of(record, ProblemTopic.For(course.Key.Word).System);
        (ClinicRange? clinic, ClinicRange? besides) = Clinic(record, course, said);
        RowMet? row = InARow(record, course, said);
        (decimal PerMonth, DateOnly Since)? rate = isWeight ? Rate(days) : null;
        return new ValuePart(
            course.Key, Dated(record, from), Dated(record, visit), Dated(record, now)!,
            isWeight && from is { } start ? WeightDrop.PercentChange(Number(start), Number(now)) : null,
            isWeight && (visit ?? (from?.Day <= record.Period.Visit?.Head.Date && Last(days, record.Period.Visit!.Head.Date!.Value) is { } same && same.Day < now.Day ? same : null)) is { } then ? WeightDrop.PercentChange(Number(then), Number(now)) : null,
            rate?.PerMonth,
            clinic is null ? record.NormalFor(Reading(now)) : null, clinic, found)
        {
            RateSince = rate?.Since,
            OutsideSince = record.NormalFor(Reading(now)) is not { } normal ? null : days.Reverse().TakeWhile(day => Number(day) > normal.High || Number(day) < normal.Low).Select(day => (DateOnly?)day.Day).LastOrDefault(),
            Levels = course.Key.Word is "bcs" or "mcs" ? [.. new[] { from, visit, now }.OfType<DayValue>().Select(day => Level(record, days, day)).DistinctBy(level => level.First)] : [],
            Rule = row,
            ByDay = clinic is { Worst: not null } && (row is not null || IsAsked(record, course.Key.Word)) ? ByDay(record, course) : [],
            NoticedOn = from is { } begun && course.Key.Word == "water" ? Noticed(course, begun.Day) : null,
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

    private static DatedValue? Dated(PetRecord record, DayValue? day) => day is not { } value ? null : Dated(record, value.At, Reading(value).Value);

    private static DatedValue Dated(PetRecord record, NoteReading reading, ReadValue value) => new(reading.Day!.Value, value)
    {
        Time = reading.Time,
        Seconds = Written(record, reading) is CountOverTime count ? count.Time * count.Unit.Factor : null,
        IsDifference = Written(record, reading) is Difference,
        State = reading.What == "glucose" && reading.Comparable?.Split(' ')[0] is { } state and not "any" ? state : null,
    };

    private static NoteValue? Written(PetRecord record, NoteReading reading) => record.Note.Syntax.Lines[reading.Line].Items.Select(item => item.Value).FirstOrDefault(item => item?.Span == reading.Span);

    /// <summary>The days around one on which the score was the same.</summary>
    private static (DatedValue Value, DateOnly First, DateOnly Last) Level(PetRecord record, ImmutableArray<DayValue> days, DayValue day)
    {
        bool IsSame(DayValue other) => other.Value == day.Value && other.Bound == day.Bound;
        return (Dated(record, day)!, days.Reverse().SkipWhile(other => other.Day > day.Day).TakeWhile(IsSame).Last().Day, days.SkipWhile(other => other.Day < day.Day).TakeWhile(IsSame).Last().Day);
    }

    /// <summary>The latest day of the period on which readings in a row did what the clinic asked to be phoned about; null where none did.</summary>
    internal static RowMet? InARow(PetRecord record, Course course, ClinicWords? said)
    {
        if (said is null || course.Lines.LastOrDefault(line => line.Reading is not null)?.Reading is not { } last || said.RowFor(record, last) is not { } row)
        {
            return null;
        }

        RowMet? met = null;
        int inARow = 0;
        foreach (Noted line in course.Lines.Where(line => line.Reading is not null && line.Day > said.Day))
        {
            inARow = LineCrossing.Crosses(line.Reading!.Value, row.Above, row.End, inclusive: false) ? inARow + 1 : 0;
            met = inARow == row.InARow && record.IsCurrent(line) ? row with { Day = line.Day } : met;
        }

        return met;
    }

    /// <summary>True where an open question is about a measure.</summary>
    private static bool IsAsked(PetRecord record, string word) => OpenQuestion.Of(record).Any(question => ClinicWords.IsAbout(question.Text, ProblemTopic.For(word).System));

    private static ImmutableArray<DatedValue> ByDay(PetRecord record, Course course) =>
        [.. course.Lines.Where(line => line.Reading is not null && record.IsCurrent(line)).TakeLast(MostByDay).Select(line => Dated(record, line.Reading!, line.Reading!.Value))];

    /// <summary>The first line of the year before a day that says more or less without an amount.</summary>
    private static (string Word, DateOnly Day)? Noticed(Course course, DateOnly before)
    {
        Noted? first = course.Lines.FirstOrDefault(line => line.Reading is null && line.Day < before && line.Day >= before.Plus(-YearDays) && line.Item is { } item && item.Words.Any(word => Noticeable.Contains(word.Word.Word)));
        return first is null ? null : (first.Item!.Words.First(word => Noticeable.Contains(word.Word.Word)).Word.Word, first.Day);
    }

    /// <summary>The last reading of the day; of water, what was drunk on it for each kilogram.</summary>
    private static NoteReading Reading(DayValue day) => day.At with { Value = day.At.What == "water" ? new ReadValue(day.Value, "mL/kg/d", null, null, day.Bound) : day.At.Value.OnScaleOfNine() };

    private static decimal Number(DayValue day) => Reading(day).Value.Number;

    /// <summary>The limit that the clinic set for the vital, else the range it calls usual, and how often it was passed; then the usual range, where a limit comes first.</summary>
    private static (ClinicRange? First, ClinicRange? Besides) Clinic(PetRecord record, Course course, ClinicWords? said)
    {
        if (course.Lines.LastOrDefault(line => line.Reading is not null)?.Reading is not { } last)
        {
            return default;
        }

        NoteReading[] all = [.. course.Lines.Where(line => line.Reading is not null).Select(line => line.Reading!)];
        NoteReading[] readings = [.. course.Lines.Where(line => line.Reading is not null && record.IsCurrent(line)).Select(line => line.Reading!)];
        DatedFact<UsualFact>? usual = OwnLimits.UsualFor(record.Facts, last);
        ClinicRange[] limits = [.. record.Facts.LimitsOn(LimitKey.For(last), last.Day).Where(drawn => said is null || !said.Replaces(drawn.Limit) || drawn.Fact.Fact.Per?.When?.Earliest > said.Day).Select(drawn => Compared(drawn.IsAbove ? null : drawn.Limit, drawn.IsAbove ? drawn.Limit : null, true, drawn.Fact.Fact.Per?.When))];
        ClinicRange? toLimit = record.Facts.LimitsOn(LimitKey.For(last), last.Day, now: true).Select(drawn => Compared(drawn.IsAbove ? null : drawn.Limit, drawn.IsAbove ? drawn.Limit : null, true, drawn.Fact.Fact.Per?.When)).FirstOrDefault(limit => limit.InARow > 0)
            ?? limits.FirstOrDefault(limit => limit.Worst is not null) ?? limits.FirstOrDefault();
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
                Days = [.. past.Select(reading => reading.Day!.Value).Distinct()],
                Since = inARow == 0 ? null : all.Reverse().TakeWhile(above.Length > 0 ? IsAbove : IsBelow).Last().Day,
                AfterInsulin = worst is { Time: { } at, Value.Unit: "mmol/L" } && record.All("gave").Where(given => given.Key.Detail.Contains("insulin", StringComparison.Ordinal)).SelectMany(given => given.Lines).Where(given => given.Day == worst.Day && given.Time <= at).Select(given => given.Time).Max() is { } injected ? at - injected : null,
            };

            static DatedValue? Read(NoteReading? reading) => reading is null ? null : new DatedValue(reading.Day!.Value, reading.Value) { Time = reading.Time };
        }
    }
}
