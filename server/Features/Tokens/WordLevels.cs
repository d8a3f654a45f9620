using System.Collections.Immutable;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Text;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Features.Tokens;

/// <summary>How worrying the describing words of a line are in this animal, as their rows state it.</summary>
internal sealed class WordLevels(Opening opening)
{
    private const int FirstMilkTooth = 501;

    private readonly Species species = opening.Species;
    private readonly bool male = opening.First<SexFact>()?.Male == true;

    /// <summary>The modifier of the word that stands at <paramref name="span"/>.</summary>
    public TokenModifiers Of(ImmutableArray<NoteItem> items, TextSpan span)
    {
        foreach (NoteItem item in items)
        {
            if (item.Words.FirstOrDefault(word => word.Span.Start <= span.Start && span.End <= word.Span.End) is { } word)
            {
                return LevelOf(item, word.Word) switch
                {
                    Level.Watch => TokenModifiers.Watch,
                    Level.Call => TokenModifiers.Call,
                    Level.Urgent => TokenModifiers.Urgent,
                    _ => TokenModifiers.None,
                };
            }
        }

        return TokenModifiers.None;
    }

    /// <summary>Milk teeth come loose and fall out: the vocabulary has rows of their own for them.</summary>
    private Level? LevelOf(NoteItem item, DescribingWord word)
    {
        Meaning? milk = item is Examined { Word.Word: "tooth", Site.Number: >= FirstMilkTooth }
            ? NoteVocabulary.Default.Describing("milk-tooth").Find(word.Word)?.Meanings[0]
            : null;
        return (milk ?? word.For(species, male))?.Level;
    }
}
