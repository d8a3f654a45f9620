namespace HealthNotes.Features.Completion;

/// <summary>What an offer needs to know that no note says.</summary>
/// <param name="Now">The time of day; null where nobody knows it.</param>
/// <param name="Pictures">The pictures beside the note, by their names, the newest first; asked for only where one may be named.</param>
public sealed record Surroundings(TimeOnly? Now, Func<IEnumerable<string>> Pictures)
{
    /// <summary>Nothing is known.</summary>
    public static Surroundings Unknown { get; } = new(null, () => []);
}
