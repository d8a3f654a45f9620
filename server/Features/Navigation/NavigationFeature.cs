using System.Collections.Immutable;
using HealthNotes.Features.Documents;

namespace HealthNotes.Features.Navigation;

/// <summary>
/// Finds a finding or a medicine again across years: a lump, wound or part of the body by its word, site and tag; a
/// medicine by its name.
/// </summary>
public static class NavigationFeature
{
    /// <summary>Where the thing at a place is introduced: the first line that notes a finding, or the plan of a medicine. Null where nothing is named.</summary>
    public static PlaceRange? Definition(Document document, Place place) => null;

    /// <summary>Every line that names the thing at a place, in line order.</summary>
    public static ImmutableArray<PlaceRange> References(Document document, Place place, bool includeDefinition) => [];

    /// <summary>The same places, told apart by whether they introduce it.</summary>
    public static ImmutableArray<Highlight> Highlights(Document document, Place place) => [];

    /// <summary>What a rename at this place would rename: a tag, a medicine, or the site of a lump, wound or sore place. Null for anything else.</summary>
    public static RenameTarget? PrepareRename(Document document, Place place) => null;

    /// <summary>Renames the thing at a place in all its lines, or says why not.</summary>
    public static RenameResult Rename(Document document, Place place, string newName) => RenameResult.Refused("There is nothing here that can be renamed.");
}
