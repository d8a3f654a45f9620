using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Notes;
using HealthNotes.Record;
using HealthNotes.Record.Checks;
using HealthNotes.Record.Courses;
using HealthNotes.Record.Readings;

namespace HealthNotes.Analysis.Trends;

/// <summary>What is usual for this pet on a day: as its vet sees it, else by its own earlier readings.</summary>
/// <param name="Low">The lower end, in the canonical unit.</param>
/// <param name="High">The upper end.</param>
/// <param name="Unit">The canonical unit; empty for a range that the vet wrote without one.</param>
/// <param name="Since">Since when: the day the vet said so, or that of the first reading; null where it is not said.</param>
/// <param name="Readings">From how many readings; null when the vet said so.</param>
public sealed record UsualNow(decimal Low, decimal High, string Unit, DateOnly? Since, int? Readings)
{
    /// <summary>The range of a vital as it was taken, by all that is noted up to today; null when nothing is known.</summary>
    public static UsualNow? Of(PetRecord record, Course course) =>
        On(record, course, record.Today, record.Today < DateOnly.MaxValue ? record.Today.Plus(1) : record.Today);

    /// <summary>The range of a vital as a check takes it; null for a part, and when nothing is known.</summary>
    public static UsualNow? Of(PetRecord record, CheckStep step) => step.Same.Select(course => Of(record, course)).FirstOrDefault(usual => usual is not null);

    /// <summary>The range that a reading of <paramref name="day"/> is compared with: by the readings of the days before.</summary>
    public static UsualNow? On(PetRecord record, Course course, DateOnly day) => On(record, course, day, day);

    private static UsualNow? On(PetRecord record, Course course, DateOnly day, DateOnly before)
    {
        string state = course.Key.Detail.Split(' ')[0];
        DatedFact<UsualFact>? fact = record.Note.Facts<UsualFact>(day)
            .LastOrDefault(usual => usual.Fact.Vital.Word == course.Key.Word && (usual.Fact.State is null || usual.Fact.State.Comparable == state) && usual.Fact.Place is null);
        if (fact is { Fact.Range: var range })
        {
            return new UsualNow(Canonical(range.Low, range), Canonical(range.High, range), range.Unit?.Canonical ?? "", fact.Fact.Per?.When?.Earliest ?? fact.Day, null);
        }

        return UsualRow.For(course.Key) is { } row && OwnUsual.For(course, before, record.Pet.GrownOn(row.GrownMonths)) is { } own
            ? new UsualNow(own.Low, own.High, own.Unit, own.Since, own.Count)
            : null;
    }

    private static decimal Canonical(decimal number, ValueRange range) => range.Unit is { } unit ? UnitConversion.ToCanonical(new Amount(number, unit)) : number;
}
