using System.Collections.Immutable;
using HealthNotes.Analysis.HomeCare;
using HealthNotes.Grammar.Items;
using HealthNotes.Record;
using HealthNotes.Record.Courses;
using HealthNotes.Record.HomeCare;
using HealthNotes.Rendering.Text;

namespace HealthNotes.Rendering.Drawing.Days;

/// <summary>The doses of one medicine, day by day: given, given too often with the times, missed, withheld, not logged.</summary>
internal sealed class DoseColumn
{
    private static readonly string[] OnPurpose = ["held", "withheld", "hold", "holding"];

    private readonly PetRecord record;
    private readonly ImmutableArray<MedicineOrder> orders;
    private readonly ILookup<DateOnly, Noted> given;
    private readonly ILookup<DateOnly, Noted> missed;
    private readonly HashSet<DateOnly> doubled;

    private DoseColumn(PetRecord record, string medicine)
    {
        this.record = record;
        orders = MedicineOrder.Of(medicine, record);
        given = record.Of(CourseKey.Doses("gave", medicine)).Lines.ToLookup(line => line.Day);
        missed = record.Of(CourseKey.Doses("missed", medicine)).Lines.ToLookup(line => line.Day);
        decimal part = CareLimits.One("dose-doubled", record)?.Value ?? 0;
        doubled = [.. DoseSeries.Clusters(record.Of(CourseKey.Doses("gave", medicine)), orders, part).Where(cluster => cluster.Doses.Length > (InPairs(cluster.Order, cluster.Doses) ? 2 : 1) && !MakesUpOne(cluster)).Select(cluster => cluster.Doses[^1].Day)];
        Name = NoteText.Field(orders.LastOrDefault()?.Plan.Medicine.Text ?? ((DoseEvent)given.Concat(missed).First().First().Item!).Medicine.Text);
    }

    /// <summary>The medicine.</summary>
    public string Name { get; }

    /// <summary>The first day of its plan; the least day where none is written.</summary>
    public DateOnly Since => orders.LastOrDefault()?.From ?? DateOnly.MinValue;

    /// <summary>The medicines of some days: those that a plan of doses holds for or a line tells of, those with most lines first.</summary>
    public static IEnumerable<DoseColumn> Of(PetRecord record, DateOnly from, DateOnly to) =>
        record.All("gave").Concat(record.All("missed")).Where(course => course.Between(from, to).Length > 0).Select(course => course.Key.Detail)
            .Concat(MedicineOrder.All(record).Where(order => order.From <= to && !(order.EndDay < from) && order.FewestDosesADay is not null).Select(order => order.Medicine))
            .Distinct().Select(medicine => new DoseColumn(record, medicine)).OrderByDescending(column => column.given.Count + column.missed.Count).ThenBy(column => column.Name, StringComparer.Ordinal);

    /// <summary>True for a day with a line of it.</summary>
    public bool HasLine(DateOnly day) => given.Contains(day) || missed.Contains(day);

    /// <summary>What is known of a day, in words; empty where nothing was written and nothing planned.</summary>
    public string On(DateOnly day)
    {
        Noted[] doses = [.. given[day]];
        ILookup<bool, Noted> left = missed[day].ToLookup(IsOnPurpose);
        MedicineOrder? order = orders.LastOrDefault(one => one.From <= day && !(day > one.EndDay));
        int? most = order?.DosesADay;
        bool pairs = order is not null && InPairs(order, doses);
        bool tooMany = doubled.Contains(day) || (doses.Length > most * (pairs ? 2 : 1) && !MakesUpOne(new DoseCluster([.. doses], order!)));
        int count = pairs && !tooMany && doses.Length > most ? most.Value : doses.Length;
        return PageWords.DosesOfDay(count, tooMany ? [.. doses.Select(dose => dose.Time)] : [], most, left[false].Count(), left[true].Count(), NotLogged(day, order, doses.Length + missed[day].Count()));
    }

    private bool MakesUpOne(DoseCluster cluster) => CareLimits.One("dose-amount", record) is { Value: var tolerance } && cluster.MakesUpOne(tolerance, record);

    /// <summary>Eyes and ears come in pairs: a line for each is not a dose given twice.</summary>
    private static bool InPairs(MedicineOrder order, IEnumerable<Noted> doses) =>
        doses.Select(dose => (DoseEvent)dose.Item!).All(dose => dose.Dose is Measure { Amounts: [{ Unit.Word: "drop" }] }) || order.Plan.Manner.Any(manner => manner.IsPair);

    /// <summary>
    /// Planned doses that no line tells of. Today is not over, the first day of a plan may have begun in the evening, and the day on
    /// which it was stopped tells nothing.
    /// </summary>
    private int NotLogged(DateOnly day, MedicineOrder? order, int logged) =>
        order?.FewestDosesADay is not { } planned || day >= record.Today || order.From >= day || (order.Ended is { } ended && DateOnly.FromDateTime(ended) == day) ? 0 : Math.Max(0, planned - logged);

    private bool IsOnPurpose(Noted line) => record.Note.Syntax.Lines[line.Line].Text.Split(' ').Any(word => OnPurpose.Contains(word.Trim(',', '.', ';', ':'), StringComparer.OrdinalIgnoreCase));
}
