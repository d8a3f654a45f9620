namespace HealthNotes.Record.Readings;

/// <summary>A value that cannot be right. It is reported and used for nothing.</summary>
/// <param name="Reading">The value.</param>
/// <param name="AgainstKg">For a weight the weight that it does not go with; null where no living pet has such a value.</param>
/// <param name="AgainstLine">The line of that weight; null where it is the grown weight of the opening, or there is none.</param>
public sealed record Slip(NoteReading Reading, decimal? AgainstKg = null, int? AgainstLine = null);
