using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Text;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Grammar.Parsing;

/// <content>Units: which stand behind a number, and which go with the line's word.</content>
internal sealed partial class LineBinder
{
    /// <summary>The unit of the part's last number; where it has none, the next word when that is a unit that fits.</summary>
    private TextSpan WithUnitWord(Quantity? wanted, NumberPart part, out TextSpan unitSpan)
    {
        Operand last = part.Third.Exists ? part.Third : part.Second.Exists ? part.Second : part.First;
        unitSpan = last.Unit;
        if (unitSpan.Length > 0 || at + 1 >= parts.Count || !ReferenceEquals(parts[at], part) || parts[at + 1].Kind != PartKind.Word)
        {
            return part.Span;
        }

        TextSpan next = parts[at + 1].Span;
        bool alone = next.In(line) is "x" or "X" && Word.Has(SlotKind.Times);
        if (!alone && (vocabulary.Units.Find(next.In(line)) is not { } unit || (wanted is { } quantity ? unit.Quantity != quantity : !FitsAny(unit))))
        {
            return part.Span;
        }

        unitSpan = next;
        at++;
        return TextSpan.Between(part.Span.Start, next.End);
    }

    /// <summary>A fluid ounce is meant by <c>oz</c> where only a volume fits.</summary>
    private Unit Meant(Unit unit) =>
        unit.Word == "oz" && Word.Has(SlotKind.Volume) && !Word.Has(SlotKind.Amount) ? vocabulary.Units.Find("floz")! : unit;

    private bool FitsAny(Unit written)
    {
        Unit unit = Meant(written);
        foreach (Slot slot in Word.Takes)
        {
            if (Fits(unit, slot.Kind) || (slot.Kind == SlotKind.Rate && unit.Quantity == Quantity.Time))
            {
                return true;
            }
        }

        return (Word.Has(SlotKind.Range) || Word.Has(SlotKind.Limit)) && FitsSubject(unit);
    }

    private static bool Fits(Unit unit, SlotKind slot) => (slot, unit.Quantity) switch
    {
        (SlotKind.Rate, Quantity.Rate) => true,
        (SlotKind.Temperature, Quantity.Temperature) => true,
        (SlotKind.Mass, Quantity.Mass) => unit.Word is not ("mg" or "ug"),
        (SlotKind.Seconds or SlotKind.Duration, Quantity.Time) => slot == SlotKind.Duration || unit.Word == "s",
        (SlotKind.Glucose, Quantity.Glucose) => true,
        (SlotKind.Size, Quantity.Length) => unit.Word is "mm" or "cm" or "in",
        (SlotKind.Distance, Quantity.Length) => unit.Word is "km" or "mi",
        (SlotKind.Volume, Quantity.Volume) => true,
        (SlotKind.Portion, Quantity.Portion) => true,
        (SlotKind.Amount, Quantity.Mass or Quantity.Volume or Quantity.Dose or Quantity.DoseRate) => true,
        _ => false,
    };

    /// <summary>True when the unit goes with the vital that a <c>usual</c> or <c>call-if</c> line is about; no unit goes with rates and scores.</summary>
    private bool FitsSubject(Unit? unit) => about is null
        || (unit is null ? about.Has(SlotKind.Rate) || about.Has(SlotKind.Score) || about.Has(SlotKind.Seconds) : about.Takes.Any(slot => Fits(unit, slot.Kind)));

    /// <summary>Checks that the unit of a range or limit goes with its vital, now that both are known whatever their order.</summary>
    private void CheckSubject()
    {
        (TextSpan Span, Unit? Unit)? written = value switch
        {
            ValueRange range => (range.Span, range.Unit),
            Limit limit => (limit.Span, limit.Unit),
            _ => null,
        };
        if (problems.Count == 0 && written is { } found && !FitsSubject(found.Unit))
        {
            Report(SubjectProblem(found.Span, found.Span, found.Unit));
        }
    }
}
