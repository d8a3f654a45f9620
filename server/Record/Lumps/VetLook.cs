using HealthNotes.Record.Courses;

namespace HealthNotes.Record.Lumps;

/// <summary>A line that shows that a vet has looked at the lump by then: in a visit, or by its words.</summary>
/// <param name="Noted">The line.</param>
/// <param name="Sampled">True when it says that a sample was taken.</param>
public sealed record VetLook(Noted Noted, bool Sampled)
{
    /// <summary>The day.</summary>
    public DateOnly Day => Noted.Day;

    /// <summary>Its words: <c>sampled</c>, <c>at the visit</c>, <c>known to the vet</c>.</summary>
    public string How => Sampled ? $"Sampled, as written {Day:yyyy-MM-dd}" : Noted.AtVisit ? $"Noted at the visit of {Day:yyyy-MM-dd}" : $"The vet knows, as written {Day:yyyy-MM-dd}";

    /// <summary>The look a line tells of; null when it tells of none.</summary>
    public static VetLook? Of(Noted noted) =>
        LumpWords.Has(noted.Item, "sampled") ? new(noted, true)
        : noted.AtVisit || LumpWords.Has(noted.Item, "vet-knows") ? new(noted, false)
        : null;
}
