using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Features.Hover;

/// <summary>On a describing word: what it means in this animal, and its level in plain words.</summary>
internal static class DescribingHover
{
    private const int FirstMilkTooth = 501;

    public static string? At(HoverLine at)
    {
        if (at.Word is not { } part)
        {
            return null;
        }

        NoteVocabulary vocabulary = NoteVocabulary.Default;
        DescribingWord? word = at.Item?.Words.Concat(at.Item.Absent).FirstOrDefault(described => at.IsIn(described.Span))?.Word ?? vocabulary.Describing(part.Word).Find(at.Text);
        if (word is null)
        {
            return vocabulary.Ok.Find(at.Text) is { } ok ? $"**{ok.Word}**: {Md.Sentence(ok.Definition)}" : null;
        }

        bool milk = at.Item is Examined { Word.Word: "tooth", Site.Number: >= FirstMilkTooth };
        Meaning? meaning = (milk ? vocabulary.Describing("milk-tooth").Find(word.Word)?.Meanings[0] : null)
            ?? word.For(at.Document.Record.Pet.Species, at.Document.Record.Pet.Male == true);
        return meaning is null ? null : Md.Join([$"**{word.Word}** ({part.Word}): {Md.Sentence(meaning.Definition)}{Md.Source(meaning.Source)}", LevelOf(word, meaning)]);
    }

    /// <summary>A word that only says how much or since when has no level of its own unless it raises one.</summary>
    private static string LevelOf(DescribingWord word, Meaning meaning) => meaning.Level switch
    {
        Level.Urgent => "Level: **urgent**. This cannot wait: phone your clinic or an emergency clinic now.",
        Level.Call => "Level: **call the vet**. A reason to phone the clinic.",
        Level.Watch => "Level: **watch**. Worth watching.",
        _ => word.Part == "any" ? "" : "Level: **as expected**.",
    };
}
