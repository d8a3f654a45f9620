namespace HealthNotes.Rendering.Drawing.Body;

/// <summary>A numbered thing on the body map.</summary>
/// <param name="Number">Its number in the table.</param>
/// <param name="Kind">The note's word: lump, wound, pain-site, node. Each has a shape of its own.</param>
/// <param name="Words">What it is, in words.</param>
/// <param name="Spots">Where it lies; empty when the note does not say enough.</param>
internal sealed record BodyMark(int Number, string Kind, string Words, IReadOnlyList<BodySpot> Spots);

/// <summary>A lump, wound, node or sore place under its number. <paramref name="Problem"/> is the place of the problem that tells of it, from 1; then <paramref name="Line"/> is not shown.</summary>
internal sealed record BodyFinding(BodyMark Mark, string Title, string Line, bool IsGone, int? Problem);
