namespace HealthNotes.Record.Lumps;

/// <summary>The response categories of published criteria for solid tumours in dogs (cRECIST v1.0, as summarised by AAHA).</summary>
public enum ResponseCategory
{
    /// <summary>All targets gone.</summary>
    Complete,

    /// <summary>The sum is at least 30 % smaller than at the start.</summary>
    Partial,

    /// <summary>Neither smaller nor larger by so much.</summary>
    Stable,

    /// <summary>The sum is at least 20 %, and 5 mm, larger than the smallest sum.</summary>
    Progressive,
}

/// <summary>Sorts a sum of longest diameters. It describes; a vet decides.</summary>
public static class TargetResponse
{
    /// <summary>The category of a sum in mm; exactly 20 % and exactly 30 % count as met. Growth past the smallest sum goes first.</summary>
    /// <param name="baseline">The sum at the start.</param>
    /// <param name="smallest">The smallest sum before now, the start included.</param>
    /// <param name="now">The sum now.</param>
    public static ResponseCategory Of(decimal baseline, decimal smallest, decimal now)
    {
        var numbers = LumpNumbers.Default;
        return now == 0 ? ResponseCategory.Complete
            : now * 100 >= smallest * (100 + numbers["progress-percent"]) && now - smallest >= numbers["progress-mm"] ? ResponseCategory.Progressive
            : now * 100 <= baseline * (100 - numbers["partial-percent"]) ? ResponseCategory.Partial
            : ResponseCategory.Stable;
    }
}
