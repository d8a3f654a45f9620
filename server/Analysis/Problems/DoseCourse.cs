using System.Collections.Immutable;
using HealthNotes.Analysis.HomeCare;
using HealthNotes.Record.Courses;
using HealthNotes.Record.HomeCare;

namespace HealthNotes.Analysis.Problems;

/// <summary>Tells how the doses of a medicine went.</summary>
internal static class DoseCourse
{
    private static readonly CourseKey[] EntryKinds = [CourseKey.Logs, CourseKey.Checks, CourseKey.Visits];

    public static DosePart Of(Record.PetRecord record, string medicine)
    {
        var orders = MedicineOrder.Of(medicine, record);
        DateOnly from = record.CurrentFrom ?? DateOnly.MinValue;
        Course given = record.Of(CourseKey.Doses("gave", medicine));
        Course missed = record.Of(CourseKey.Doses("missed", medicine));
        decimal part = CareLimits.One("dose-doubled", record)?.Value ?? 0;
        decimal amount = CareLimits.One("dose-amount", record)?.Value ?? 0;
        int logged = (int)(CareLimits.One("dose-logged", record)?.Value ?? 0);
        ImmutableArray<Noted> entries = [.. EntryKinds.SelectMany(kind => record.Of(kind).Between(from, DateOnly.MaxValue).ToArray()).OrderBy(entry => entry.Moment).ThenBy(entry => entry.Line)];
        DoseGap[] gaps = [.. DoseGaps.In(given, missed, entries, orders, logged).Where(gap => gap.Day >= from)];
        ImmutableArray<DoseCluster> doubled = [.. DoseSeries.Clusters(given, orders, part).Where(cluster => cluster.Doses.Length > 1 && cluster.Doses[^1].Day >= from && !cluster.MakesUpOne(amount, record))];
        ImmutableArray<Noted> left = [.. missed.Between(from, DateOnly.MaxValue)];
        return new DosePart(medicine, orders.LastOrDefault(), given.Between(from, DateOnly.MaxValue).Length, doubled, left, [.. gaps.Where(gap => gap.NotWritten > 0).Select(gap => gap.Day)])
        {
            Lines = [.. doubled.SelectMany(cluster => cluster.Doses).Concat(left).Select(line => line.Line).Order()],
        };
    }
}
