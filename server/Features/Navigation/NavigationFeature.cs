using System.Collections.Immutable;
using HealthNotes.Features.Documents;
using HealthNotes.Grammar.Text;

namespace HealthNotes.Features.Navigation;

/// <summary>
/// Finds a finding or a medicine again across years: a lump, wound or part of the body by its word, site and tag; a
/// medicine by its name.
/// </summary>
public static class NavigationFeature
{
    /// <summary>Where the thing at a place is introduced: the first line that notes a finding, or the plan of a medicine. Null where nothing is named.</summary>
    public static PlaceRange? Definition(Document document, Place place) =>
        Mention.At(document, place) is { } at && Mentions.Definition(at.Subject, Mentions.Of(at.Subject, document.Note), at.Line) is { } found ? RangeOf(found) : null;

    /// <summary>Every line that names the thing at a place, in line order.</summary>
    public static ImmutableArray<PlaceRange> References(Document document, Place place, bool includeDefinition) =>
        [.. Highlights(document, place).Where(found => includeDefinition || !found.Introduces).Select(found => found.Range)];

    /// <summary>The same places, told apart by whether they introduce it.</summary>
    public static ImmutableArray<Highlight> Highlights(Document document, Place place)
    {
        if (Mention.At(document, place) is not { } at)
        {
            return [];
        }

        List<Mention> mentions = [.. Mentions.Of(at.Subject, document.Note)];
        Mention? first = Mentions.Definition(at.Subject, mentions, at.Line);
        return [.. mentions.Select(found => new Highlight(RangeOf(found), at.Subject is MedicineSubject ? at.Subject.IsNotedBy(found.Item) : found.Line == first?.Line)).Distinct()];
    }

    /// <summary>What a rename at this place would rename: a tag, a medicine, or the site of a lump, wound or sore place. Null for anything else.</summary>
    public static RenameTarget? PrepareRename(Document document, Place place) =>
        RenamedPart.At(document, place) is { } part
            ? new RenameTarget(PlaceRange.Of(part.Mention.Line, part.Span), TextOf(document, part.Mention.Line, part.Span))
            : null;

    /// <summary>Renames the thing at a place in all its lines, or says why not.</summary>
    public static RenameResult Rename(Document document, Place place, string newName) =>
        RenamedPart.At(document, place) is { } part
            ? Renaming.Of(document, part, newName)
            : RenameResult.Refused("There is nothing here that can be renamed: a tag, a medicine, or the site of a lump, wound or sore place.");

    private static PlaceRange RangeOf(Mention mention) => PlaceRange.Of(mention.Line, mention.Name);

    private static string TextOf(Document document, int line, TextSpan span) => span.In(document.Syntax.Lines[line].Text).ToString();
}
