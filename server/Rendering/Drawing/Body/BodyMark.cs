namespace HealthNotes.Rendering.Drawing.Body;

/// <summary>A numbered thing on the body map.</summary>
/// <param name="Number">Its number in the table.</param>
/// <param name="Kind">The note's word: lump, wound, pain-site, node. Each has a shape of its own.</param>
/// <param name="Words">What it is, in words.</param>
/// <param name="Spots">Where it lies; empty when the note does not say enough.</param>
internal sealed record BodyMark(int Number, string Kind, string Words, IReadOnlyList<BodySpot> Spots);
