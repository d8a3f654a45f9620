using HealthNotes.Features.Completion.Places;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Syntax;

namespace HealthNotes.Features.Completion.Offers;

/// <summary>Foods that this note names already, the latest first.</summary>
internal static class FoodOffers
{
    private const int MostNames = 20;

    public static IEnumerable<Offer> For(LineState line, int group)
    {
        if (line.Note.Entry is not { } here || line.Has(TokenKind.Name) || line.HasValue)
        {
            return [];
        }

        var names = new List<string>();
        int left = Lookback.Lines;
        foreach (Entry entry in line.Note.EarlierEntries().Prepend(here))
        {
            if (names.Count >= MostNames || (left -= entry.Items.Length) < 0)
            {
                break;
            }

            for (int index = entry.Items.Length - 1; index >= 0; index--)
            {
                if (entry.Items[index] is { Value: CareEvent { Food.Text: var name } } item && item.Line != line.Note.Line
                    && !names.Contains(name, StringComparer.OrdinalIgnoreCase))
                {
                    names.Add(name);
                }
            }
        }

        return names.Select(name => new Offer(name, CompletionKind.Value, group, "in this note"));
    }
}
