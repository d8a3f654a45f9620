using HealthNotes.Analysis.Pet;

namespace HealthNotes.Analysis.Trends;

/// <summary>From when on a pet is grown.</summary>
public static class Growth
{
    private const int LastYear = 9000;

    /// <summary>The day a pet comes to so many months; null when no birth is written, or no months are given.</summary>
    public static DateOnly? GrownOn(PetProfile pet, int? months)
    {
        if (months is not { } count || pet.AgeOn(DateOnly.MinValue) is not { } age)
        {
            return null;
        }

        return age.Born.Year > LastYear ? DateOnly.MaxValue : age.Born.AddMonths(count);
    }
}
