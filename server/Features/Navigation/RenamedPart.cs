using HealthNotes.Features.Documents;
using HealthNotes.Grammar.Text;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Features.Navigation;

/// <summary>What kind of name is renamed.</summary>
internal enum NameKind
{
    /// <summary>A tag.</summary>
    Tag,

    /// <summary>The site of a finding.</summary>
    Site,

    /// <summary>A medicine.</summary>
    Medicine,
}

/// <summary>The name under a cursor that can be renamed.</summary>
internal sealed record RenamedPart(Mention Mention, NameKind Kind, TextSpan Span)
{
    /// <summary>The name at a place; null where none can be renamed. Only findings are moved: <c>ear L</c> is the left ear for ever.</summary>
    public static RenamedPart? At(Document document, Place place)
    {
        Place at = document.Clamp(place);
        if (Mention.At(document, at) is not { } mention || mention.Touched(at.Character) is not { } touched)
        {
            return null;
        }

        NameKind? kind = touched == mention.Tag ? NameKind.Tag
            : touched == mention.Medicine ? NameKind.Medicine
            : touched == mention.Site && BodyParts.Of(mention.Item) is { Word.Kind: WordKind.Scan } ? NameKind.Site
            : null;
        return kind is { } named ? new RenamedPart(mention, named, touched) : null;
    }

    /// <summary>Where another mention of the same thing has this name.</summary>
    public TextSpan? In(Mention other) => Kind switch { NameKind.Tag => other.Tag, NameKind.Site => other.Site, _ => other.Medicine };
}
