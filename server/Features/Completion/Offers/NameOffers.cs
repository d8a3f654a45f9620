using HealthNotes.Features.Completion.Items;
using HealthNotes.Features.Completion.Places;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Features.Completion.Offers;

/// <summary>Foods, laboratory values, vaccines and what falls due, by the names that this note has for them already, the latest first.</summary>
internal static class NameOffers
{
    private const int MostNames = 20;

    public static IEnumerable<Offer> For(LineState line, SlotKind slot, int group)
    {
        if (line.Note.Entry is null || line.Has(TokenKind.Name) || line.HasValue)
        {
            return [];
        }

        // what a food is called is the same for every word of feeding
        IEnumerable<LineWord> words = slot == SlotKind.FoodName ? NoteVocabulary.Default.LineWords.Terms.Where(word => word.Has(slot)) : [line.Word];
        IEnumerable<string> names = words.SelectMany(word => line.Note.Document.Record.All(word.Word)).SelectMany(course => course.Before(line.Note.Day, TimeOnly.MaxValue))
            .Where(noted => noted.Line != line.Note.Line).OrderByDescending(noted => noted.Moment).ThenByDescending(noted => noted.Line)
            .Select(noted => noted.Item?.Name?.Text).OfType<string>().Distinct(StringComparer.OrdinalIgnoreCase).Take(MostNames);
        return names.Select(name => new Offer(name, CompletionKind.Value, group, "in this note"));
    }
}
