using HealthNotes.Features.Documents;

namespace HealthNotes.Features.Navigation;

/// <summary>What would be renamed.</summary>
/// <param name="Range">The characters of its name at the place asked about.</param>
/// <param name="Name">Its name as written there.</param>
public sealed record RenameTarget(PlaceRange Range, string Name);
