using HealthNotes.Analysis.Courses;
using HealthNotes.Analysis.Readings;
using HealthNotes.Grammar.Notes;

namespace HealthNotes.Analysis.Trends;

/// <summary>What is usual for this pet today: as its vet sees it, else by its own earlier readings.</summary>
/// <param name="Low">The lower end, in the canonical unit.</param>
/// <param name="High">The upper end.</param>
/// <param name="Since">Since when: the day the vet said so, or that of the first reading; null where it is not said.</param>
/// <param name="Readings">From how many readings; null when the vet said so.</param>
public sealed record UsualNow(decimal Low, decimal High, DateOnly? Since, int? Readings)
{
    /// <summary>The range of a vital as it was taken; null when nothing is known.</summary>
    public static UsualNow? Of(NoteAnalysis analysis, Course course)
    {
        string state = course.Key.Detail.Split(' ')[0];
        DatedFact<UsualFact>? fact = analysis.Note.Facts<UsualFact>(analysis.Today)
            .LastOrDefault(usual => usual.Fact.Vital.Word == course.Key.Word && (usual.Fact.State is null || usual.Fact.State.Comparable == state) && usual.Fact.Place is null);
        if (fact is { Fact.Range: var range })
        {
            return new UsualNow(Canonical(range.Low, range), Canonical(range.High, range), fact.Fact.Per?.When?.Earliest ?? fact.Day, null);
        }

        DateOnly tomorrow = analysis.Today < DateOnly.MaxValue ? analysis.Today.AddDays(1) : analysis.Today;
        return UsualRow.For(course.Key) is { } row && OwnUsual.For(course, tomorrow, analysis.Pet.GrownOn(row.GrownMonths)) is { } own
            ? new UsualNow(own.Low, own.High, own.Since, own.Count)
            : null;
    }

    private static decimal Canonical(decimal number, ValueRange range) => range.Unit is { } unit ? UnitConversion.ToCanonical(new Amount(number, unit)) : number;
}
