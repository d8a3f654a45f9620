using HealthNotes.Features.Actions.Lines;
using HealthNotes.Features.Actions.Offered;
using HealthNotes.Features.Documents;
using HealthNotes.Grammar.Formatting;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Features.Actions.Rewrites;

/// <summary>
/// Writes the value that the cursor or the selection touches in the other system, rounded as a person would write it. Only what
/// was measured is converted: a count over time has no other system, a dose is as it was ordered, and a limit is as it was drawn.
/// </summary>
internal static class ConvertUnit
{
    public static IEnumerable<ActionOffer> At(LineAt at, PlaceRange range)
    {
        if (at.Line.Items.Where(IsMeasured).Select(item => item.Value!).FirstOrDefault(value => PlaceRange.Of(at.Index, value.Span).Touches(range)) is not { } value
            || UnitRounding.Convert(value) is not { } converted)
        {
            yield break;
        }

        string text = ValuePrinter.Print(converted);
        string line = at.Text.Remove(value.Span.Start, value.Span.Length).Insert(value.Span.Start, text);
        if (at.Trial.Read(line).Errors.Length <= at.Read.Errors.Length)
        {
            yield return Rewrite.Offer("convert-unit", $"Write `{text}`", new DocumentEdit(PlaceRange.Of(at.Index, value.Span), text));
        }
    }

    private static bool IsMeasured(NoteItem item) => item.Value is not null && item is Reading or Finding or Examined or AdultWeightFact or CareEvent { Quantity: Measure { Quantity: Quantity.Volume or Quantity.Mass } };
}
