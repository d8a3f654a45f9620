using System.Collections.Immutable;
using HealthNotes.Analysis.Trends;
using HealthNotes.Record;
using HealthNotes.Record.Courses;
using HealthNotes.Record.Ranges;

namespace HealthNotes.Analysis.Rules;

/// <summary>What the rules about weight share: the weighings of the months before the last one, and who is weighed.</summary>
/// <param name="Weights">One point a day, of the window, the last included.</param>
/// <param name="Last">The last.</param>
internal sealed record WeightContext(ImmutableArray<DayValue> Weights, DayValue Last)
{
    private const int MostDays = 400;

    /// <summary>Those before the last.</summary>
    public ImmutableArray<DayValue> Before => Weights[..^1];

    /// <summary>Collects them; null when the course has no point. Weighings of a growing pet are left out when <paramref name="grown"/> is given.</summary>
    public static WeightContext? Of(Course course, DateOnly today, int days, DateOnly? grown = null)
    {
        ImmutableArray<DayValue> weights = DayValue.Of(course, today, days, MostDays).RemoveAll(weight => !weight.IsPoint || weight.Value <= 0 || weight.Day < grown);
        return weights.Length == 0 ? null : new WeightContext(weights, weights[^1]);
    }

    /// <summary>The life stage's key on the last day; the weight is asked for through the context, so that it is known what the finding rests on.</summary>
    public string? StageKey(PetRecord at)
    {
        if (at.Facts.Pet.AgeOn(Last.Day) is not { Days: >= 0 } age)
        {
            return null;
        }

        string? size = ClinicalTables.Default.SizeOf(at.Facts.Pet.Species, at.Facts.Pet.AdultWeightKg ?? Last.Value);
        return ClinicalTables.Default.StageOf(at.Facts.Pet.Species, age.Years < 1 ? null : size, age)?.Key;
    }
}
