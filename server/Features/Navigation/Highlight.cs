using HealthNotes.Features.Documents;

namespace HealthNotes.Features.Navigation;

/// <summary>A place that names the same thing as the one asked about.</summary>
/// <param name="Range">The characters that name it.</param>
/// <param name="Introduces">True for the line that notes it first: a finding's first line, a medicine's plan.</param>
public sealed record Highlight(PlaceRange Range, bool Introduces);
