using HealthNotes.Features.Documents;

namespace HealthNotes.Features.Hover;

/// <summary>The hover of a place of a note.</summary>
/// <param name="Range">The characters it is about.</param>
/// <param name="Markdown">The text, in Markdown; what comes from the note is escaped in it.</param>
public sealed record HoverText(PlaceRange Range, string Markdown);
