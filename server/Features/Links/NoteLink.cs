using HealthNotes.Features.Documents;
using HealthNotes.Grammar.Text;

namespace HealthNotes.Features.Links;

/// <summary>A picture's name that leads to a file.</summary>
/// <param name="Range">The characters of the name.</param>
/// <param name="Path">The path from the note's folder, with <c>/</c> between its parts; not escaped.</param>
/// <param name="IsMissing">True when there is no such file.</param>
public sealed record NoteLink(PlaceRange Range, string Path, bool IsMissing);

/// <summary>A picture that cannot be shown, and why.</summary>
/// <param name="Line">The index of its line.</param>
/// <param name="Span">The characters of its name.</param>
/// <param name="Message">Why, in plain words.</param>
public sealed record MissingPhoto(int Line, TextSpan Span, string Message);
