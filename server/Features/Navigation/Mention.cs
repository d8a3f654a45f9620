using HealthNotes.Features.Documents;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Text;

namespace HealthNotes.Features.Navigation;

/// <summary>Where a line names its subject.</summary>
/// <param name="Subject">What it names.</param>
/// <param name="Item">The line's meaning.</param>
/// <param name="Line">The index of the line.</param>
/// <param name="Word">The word of the finding or part; null for a medicine.</param>
/// <param name="Site">Its site, when one is written.</param>
/// <param name="Tag">Its tag, with the <c>@</c>.</param>
/// <param name="Medicine">The medicine's name.</param>
internal sealed record Mention(Subject Subject, NoteItem Item, int Line, TextSpan? Word, TextSpan? Site, TextSpan? Tag, TextSpan? Medicine)
{
    /// <summary>The characters that name the subject best: medicine, or site and tag, or the word.</summary>
    public TextSpan Name => Medicine ?? (Site, Tag) switch
    {
        ({ } site, { } tag) when tag.Start == site.End + 1 => TextSpan.Between(site.Start, tag.End),
        (_, { } tag) => tag,
        ({ } site, null) => site,
        _ => Word!.Value,
    };

    /// <summary>What a line names, an observation after the other; what names nothing that can be found again is left out.</summary>
    public static IEnumerable<Mention> In(LineSyntax line, int index) => line.Items.Select(item => Of(line, item, index)).OfType<Mention>();

    /// <summary>What an item of a line names; null when it names nothing that can be found again.</summary>
    public static Mention? Of(LineSyntax line, NoteItem item, int index)
    {
        if (Subject.Of(item) is not { } subject)
        {
            return null;
        }

        if (Subject.MedicineIn(item) is { } medicine)
        {
            return new Mention(subject, item, index, null, null, null, medicine.Span);
        }

        BodyParts parts = BodyParts.Of(item)!.Value;
        return new Mention(subject, item, index, WordSpan(line, item), Written(parts.Site?.Span, item), Written(parts.Tag?.Span, item), null);
    }

    /// <summary>The mention at a place: the cursor must be on one of its words.</summary>
    public static Mention? At(Document document, Place place)
    {
        Place at = document.Clamp(place);
        return In(document.Syntax.Lines[at.Line], at.Line).FirstOrDefault(mention => mention.Touched(at.Character) is not null);
    }

    /// <summary>The one of its words that a character touches.</summary>
    public TextSpan? Touched(int character)
    {
        foreach (TextSpan? span in (ReadOnlySpan<TextSpan?>)[Tag, Site, Medicine, Word])
        {
            if (span is { } there && there.Start <= character && character <= there.End)
            {
                return there;
            }
        }

        return null;
    }

    /// <summary>What an abbreviation at the line's start implies is not written.</summary>
    private static TextSpan? Written(TextSpan? span, NoteItem item) => span == item.Head.Span ? null : span;

    /// <summary>The line's own word, or the one that <c>recheck</c> and <c>skip</c> point at.</summary>
    private static TextSpan WordSpan(LineSyntax line, NoteItem item)
    {
        if (item is Recheck or Skipped)
        {
            foreach (Token mark in line.Marks)
            {
                if (mark.Kind == TokenKind.LineWord && mark.Span.Start > item.Head.Span.Start)
                {
                    return mark.Span;
                }
            }
        }

        return item.Head.Span;
    }
}
