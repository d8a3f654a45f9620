using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Notes;
using HealthNotes.Record.Ranges;
using HealthNotes.Record.Readings;

namespace HealthNotes.Record.Pet;

/// <summary>
/// Finds weights that a pet can have, but not this one: 0.9 kg beside weighings of 20 kg. Only grown animals are compared; a
/// young one may weigh a tenth of what it will weigh.
/// </summary>
public static class WeightSlips
{
    private const int GrownYears = 1;

    /// <summary>The weighings that cannot be right.</summary>
    /// <param name="weighings">All of them that some pet can have, in file order.</param>
    /// <param name="opening">What says when it was born and what it weighs.</param>
    public static IEnumerable<Slip> In(IReadOnlyList<NoteReading> weighings, Opening opening)
    {
        decimal? adult = opening.First<AdultWeightFact>() is { } fact ? ReadValue.Of(fact.Weight)?.Number : null;
        adult = adult is > 0 ? adult : null;
        PartialDate? born = opening.First<BornFact>()?.Date;
        NoteReading[] grown = [.. weighings.Where(weight => weight.Day is { } day && weight.Value.Bound is Bound.Exact or Bound.About && (born is null || Age.On(born, day).Years >= GrownYears))];
        NoteReading[] ordered = adult is null ? [.. grown.OrderBy(weight => weight.Value.Number)] : [];
        foreach (NoteReading weight in grown)
        {
            if (adult is { } kg)
            {
                if (AreApart(weight.Value.Number, kg))
                {
                    yield return new Slip(weight, kg);
                }

                continue;
            }

            (NoteReading? low, NoteReading? high) = MiddleOfOthers(ordered, weight);
            if (low is not null && AreApart(weight.Value.Number, low.Value.Number) && AreApart(weight.Value.Number, high!.Value.Number))
            {
                yield return new Slip(weight, low.Value.Number, low.Line);
            }
        }
    }

    /// <summary>The middle of the other weighings, or the two around it; of two weighings the earlier one counts.</summary>
    private static (NoteReading? Low, NoteReading? High) MiddleOfOthers(NoteReading[] ordered, NoteReading weight)
    {
        int own = Array.FindIndex(ordered, other => ReferenceEquals(other, weight));
        int count = ordered.Length - 1;
        NoteReading Other(int index) => ordered[index < own ? index : index + 1];
        return count == 0 || (count == 1 && (Other(0).Day, Other(0).Line).CompareTo((weight.Day, weight.Line)) > 0) ? (null, null) : (Other((count - 1) / 2), Other(count / 2));
    }

    private static bool AreApart(decimal one, decimal other) => Math.Min(one, other) * WeightLimits.Default["slip-times"] <= Math.Max(one, other);
}
