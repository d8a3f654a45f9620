using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Text;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Grammar.Parsing;

/// <content>Measures: a number with its unit, and the amounts that go on behind it (47lb 3oz, 12 mm x 9 mm).</content>
internal sealed partial class LineBinder
{
    private bool BindMeasure(SlotKind slot, decimal number, Unit unit, Bound bound, TextSpan span)
    {
        List<Amount> amounts = [new Amount(number, unit)];
        while (unit.Quantity is Quantity.Mass or Quantity.Time && Continues(at + 1, amounts[^1].Unit, out Amount more, out int last))
        {
            at = last;
            amounts.Add(more);
            span = TextSpan.Between(span.Start, parts[last].Span.End);
        }

        switch (slot)
        {
            case SlotKind.Rate:
                return SetValue(new PerMinute(span, bound, number), span);
            case SlotKind.Size:
                span = MoreDiameters(amounts, span);
                return SetValue(new Diameters(span, bound, [.. amounts]), span);
            case SlotKind.Portion when unit.Quantity == Quantity.Portion:
                return SetValue(new Portion(span, bound, number, 100), span);
            case SlotKind.Amount:
                return SetValue(ref amount, new Measure(span, bound, [.. amounts]), span);
            case SlotKind.Duration:
                return SetAmount(ref duration, amounts, bound, span);
            case SlotKind.Distance:
                return SetAmount(ref distance, amounts, bound, span);
            default:
                return SetValue(new Measure(span, bound, [.. amounts]), span);
        }
    }

    /// <summary>The <c>x 9 mm</c> of <c>12 mm x 9 mm</c>, where blanks cut the size into parts of its own.</summary>
    private TextSpan MoreDiameters(List<Amount> amounts, TextSpan span)
    {
        while (amounts.Count < 3 && at + 2 < parts.Count && TextOf(parts[at + 1]) is "x" or "X" or "×" or "*"
            && parts[at + 2] is NumberPart { BoundSpan.Length: 0, Second.Exists: false } part)
        {
            int before = at;
            at += 2;
            TextSpan next = WithUnitWord(Quantity.Length, part, out TextSpan unitSpan);
            if (vocabulary.Units.Find(unitSpan.In(line)) is not { } unit || !Fits(unit, SlotKind.Size) || Digits(part.First.Digits) is not { } number)
            {
                at = before;
                break;
            }

            amounts.Add(new Amount(number, unit));
            span = TextSpan.Between(span.Start, next.End);
        }

        return span;
    }

    /// <summary>True for the <c>3oz</c> of <c>47lb 3oz</c> and the <c>30s</c> of <c>2min 30s</c>: the same quantity in a smaller unit that goes into the larger a whole number of times.</summary>
    private bool Continues(int index, Unit before, out Amount more, out int last)
    {
        more = default;
        last = index;
        if (index >= parts.Count || parts[index] is not NumberPart { BoundSpan.Length: 0, Second.Exists: false } part)
        {
            return false;
        }

        TextSpan unitSpan = part.First.Unit;
        if (unitSpan.Length == 0 && index + 1 < parts.Count && parts[index + 1].Kind == PartKind.Word)
        {
            last = index + 1;
            unitSpan = parts[last].Span;
        }

        if (vocabulary.Units.Find(unitSpan.In(line)) is not { } unit || unit.Quantity != before.Quantity || unit.Factor >= before.Factor || before.Factor % unit.Factor != 0
            || Digits(part.First.Digits) is not { } number)
        {
            return false;
        }

        more = new Amount(number, unit);
        return true;
    }
}
