namespace HealthNotes.Trials;

/// <summary>A note whose truth is known: its opening, its entries in order, and from which entry on something is really wrong.</summary>
/// <param name="Opening">The facts about the pet.</param>
/// <param name="Entries">Each with its day.</param>
/// <param name="Onset">The first entry at which the change has begun; null for a healthy pet.</param>
public sealed record TrialNote(string Opening, IReadOnlyList<(DateOnly Day, string Text)> Entries, int? Onset = null);

/// <summary>How a trial is measured, and what is asked of it.</summary>
/// <param name="Watch">False alarms per 100 entries, of any level from watch up, at most.</param>
/// <param name="Call">False calls per 100 entries at most.</param>
/// <param name="Notes">Percent of notes with a false call at most; null where it is only shown.</param>
public sealed record QuietGoal(double Watch, double Call, double? Notes = null)
{
    /// <summary>The false calls per 100 entries that published lines alone make by chance, which no rule may leave out; null where it is not worked out.</summary>
    public double? BestCall { get; init; }

    /// <summary>The goal in words.</summary>
    public override string ToString() => $"at most {Watch}/{Call}{(Notes is { } most ? $", {most} % of notes" : "")}";
}

/// <summary>When a real change has to be found.</summary>
/// <param name="AtCall">True for a call, false for any level from watch up.</param>
/// <param name="Unit">What the delay is counted in: days of <see cref="UnitDays"/> each, or entries.</param>
/// <param name="UnitDays">How many days; 0 for entries.</param>
/// <param name="Median">The median delay at most.</param>
/// <param name="Ninety">The delay within which 90% are found at most; null where it is only shown.</param>
/// <param name="Share">At least this percent are found within the median; null for a half, as the median says.</param>
public sealed record FoundGoal(bool AtCall, string Unit, double UnitDays, double Median, double? Ninety = null, double? Share = null)
{
    /// <summary>The percent that the best possible test finds within the median (<see cref="Bound"/>); null where it is not worked out.</summary>
    public double? Best { get; init; }

    /// <summary>Where the goal lies beyond the best possible: the part of that which is asked instead.</summary>
    public double PartOfBest { get; init; } = 1;

    /// <summary>The percent that must be found within the median.</summary>
    public double Asked => IsBeyond ? PartOfBest * Best!.Value : Goal;

    private double Goal => Share ?? 50;

    private bool IsBeyond => Best < Goal;

    /// <summary>The goal in words.</summary>
    public override string ToString() =>
        $"{Goal:0} % by {Median}{(Ninety is { } ninety ? $", 90 % by {ninety}" : "")}{(IsBeyond ? $": beyond {Best:0} %, asked {Asked:0.0} %" : "")}";
}

/// <summary>One kind of series.</summary>
/// <param name="Name">What is shown.</param>
/// <param name="Make">Draws one note.</param>
/// <param name="Quiet">What is asked of the entries before the onset.</param>
/// <param name="Found">What is asked after it.</param>
public sealed record Series(string Name, Func<Draw, TrialNote> Make, QuietGoal? Quiet = null, FoundGoal? Found = null);
