using HealthNotes.Features.Completion.Items;
using HealthNotes.Features.Completion.Places;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Features.Completion.Offers;

/// <summary>Foods that this note names already, the latest first.</summary>
internal static class FoodOffers
{
    private const int MostNames = 20;

    public static IEnumerable<Offer> For(LineState line, int group)
    {
        if (line.Note.Entry is null || line.Has(TokenKind.Name) || line.HasValue)
        {
            return [];
        }

        IEnumerable<string> names = NoteVocabulary.Default.LineWords.Terms.Where(word => word.Has(SlotKind.FoodName))
            .SelectMany(word => line.Note.Document.Record.All(word.Word)).SelectMany(course => course.Before(line.Note.Day, TimeOnly.MaxValue))
            .Where(noted => noted.Line != line.Note.Line).OrderByDescending(noted => noted.Moment).ThenByDescending(noted => noted.Line)
            .Select(noted => (noted.Item as CareEvent)?.Food?.Text).OfType<string>().Distinct(StringComparer.OrdinalIgnoreCase).Take(MostNames);
        return names.Select(name => new Offer(name, CompletionKind.Value, group, "in this note"));
    }
}
