using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Text;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Grammar.Parsing;

/// <content>Numbers: counts, rates, measures, sizes, scores, ranges.</content>
internal sealed partial class LineBinder
{
    private bool BindNumber()
    {
        var part = (NumberPart)parts[at];
        if (Word.Has(SlotKind.Birth) || (TakesDate && LooksLikeDate(part)))
        {
            return BindDate(part);
        }

        if (TakesDate && LooksLikeForeignDate(part))
        {
            return Refuse(part.Span, ProblemRules.BadDate, $"`{TextOf(part)}` can be read two ways; dates are written year-month-day, such as 2026-10-20");
        }

        if (ToothOrGland(part))
        {
            return true;
        }

        return part.Second.Sign(line) switch
        {
            '/' when !part.Third.Exists => BindRatio(part),
            'x' => BindDiameters(part),
            '-' when !part.Third.Exists => BindSpread(part),
            '\0' => BindSingle(part),
            _ => false,
        };
    }

    private bool TakesDate => Word.Has(SlotKind.Schedule) || Word.Has(SlotKind.Per);

    private bool BindDate(NumberPart part)
    {
        if (!LooksLikeDate(part))
        {
            return Refuse(part.Span, ProblemRules.BadDate, $"`{TextOf(part)}` is not a date here; expected year-month-day, such as 2017-03-08, 2017-03 or ~2017");
        }

        PartialDate? date = TakeDate(part);
        if (Word.Has(SlotKind.Birth))
        {
            birth = date ?? birth;
        }
        else if (Word.Has(SlotKind.Per))
        {
            per ??= date is null ? null : new Attribution(date.Span, "", date);
        }
        else
        {
            schedule = schedule with { On = date ?? schedule.On };
        }

        return true;
    }

    private bool ToothOrGland(NumberPart part)
    {
        bool bare = part.First.Unit.Length == 0 && !part.Second.Exists && part.BoundSpan.Length == 0;
        bool tooth = Subject.Word == "tooth" || about?.Word == "tooth";
        bool gland = SiteSlot == SlotKind.Gland && part.First.Digits.Length == 1;
        if (!bare || !(tooth || gland))
        {
            return false;
        }

        int number = Whole(part.First.Digits);
        if (site is not null)
        {
            SaidTwice(part.Span, site.Name);
        }
        else if (tooth && !vocabulary.IsTooth(number, Species.Unknown))
        {
            return Refuse(part.Span, ProblemRules.ImpossibleSite,
                $"`{TextOf(part)}` is not a tooth; teeth have three figures (modified Triadan numbers), such as 104 for the upper right canine");
        }
        else
        {
            Mark(TokenKind.Site, part.Span);
            site = new Site(part.Span, Side.None, tooth ? null : GlandRegion, number);
            if (!tooth)
            {
                CheckSide(site, SlotKind.Gland);
            }
        }

        at++;
        return true;
    }

    /// <summary><c>18/15s</c>, <c>5/9</c>, <c>3/4</c>, <c>1/2 tablet</c>.</summary>
    private bool BindRatio(NumberPart part)
    {
        TextSpan span = WithUnitWord(null, part, out TextSpan unitSpan);
        if (part.First.Unit.Length > 0 || Digits(part.First.Digits) is not { } over || Digits(part.Second.Digits) is not { } under)
        {
            return RefuseNumber(part, span);
        }

        Bound bound = BoundOf(part);
        Unit? unit = unitSpan.Length == 0 ? null : vocabulary.Units.Find(unitSpan.In(line));
        if (unitSpan.Length > 0 && unit is null)
        {
            return UnknownUnit(span, unitSpan);
        }

        NoteValue? found = unit switch
        {
            { Quantity: Quantity.Time } when Word.Has(SlotKind.Rate) => new CountOverTime(span, bound, over, under, unit),
            not null when Word.Has(SlotKind.Amount) && Fits(unit, SlotKind.Amount) => new Measure(span, bound, [new Amount(over, unit, under == 0 ? 1 : under)]),
            null when Word.Has(SlotKind.Score) => new Score(span, bound, over, under),
            null when Word.Has(SlotKind.Portion) => new Portion(span, bound, over, under),
            _ => null,
        };
        if (under == 0)
        {
            return Refuse(span, ProblemRules.BadNumber, $"`{span.In(line)}`: nothing can be divided by 0");
        }

        if (found is null)
        {
            return unit is null && Word.Has(SlotKind.Rate)
                ? Refuse(span, ProblemRules.MissingUnit, $"`{span.In(line)}`: over how long? Write the seconds, as in {part.First.Digits.In(line)}/15s")
                : unit is null && Word.Has(SlotKind.Amount)
                    ? Refuse(span, ProblemRules.MissingUnit, $"`{span.In(line)}` of what? Write the unit, as in {span.In(line)} tablet")
                    : WrongForm(span);
        }

        return SetValue(found, span);
    }

    /// <summary><c>12x9mm</c>, <c>12mm x 9mm</c>; a part with an <c>x</c> and no second number is a count of times.</summary>
    private bool BindDiameters(NumberPart part)
    {
        TextSpan span = WithUnitWord(Quantity.Length, part, out TextSpan lastUnit);
        if (!Word.Has(SlotKind.Size))
        {
            return WrongForm(span);
        }

        if (lastUnit.Length == 0)
        {
            return Refuse(span, ProblemRules.MissingUnit, $"`{span.In(line)}` has no unit; write mm, cm or in, as in {span.In(line)}mm");
        }

        var lengths = new List<Amount>(3);
        foreach (Operand operand in (Operand[])[part.First, part.Second, part.Third])
        {
            if (!operand.Exists)
            {
                continue;
            }

            TextSpan unitSpan = operand.Unit.Length > 0 ? operand.Unit : lastUnit;
            if (vocabulary.Units.Find(unitSpan.In(line)) is not { } unit)
            {
                return UnknownUnit(span, unitSpan);
            }

            if (unit.Quantity != Quantity.Length)
            {
                return UnfitUnit(span, unitSpan, unit);
            }

            if (Digits(operand.Digits) is not { } number || number == 0)
            {
                return RefuseNumber(part, span);
            }

            lengths.Add(new Amount(number, unit));
        }

        return SetValue(new Diameters(span, BoundOf(part), [.. lengths]), span);
    }

    /// <summary><c>83.2-55.9kg</c> less the person, or <c>16-24</c> a range.</summary>
    private bool BindSpread(NumberPart part)
    {
        TextSpan span = WithUnitWord(null, part, out TextSpan unitSpan);
        if (Digits(part.First.Digits) is not { } first || Digits(part.Second.Digits) is not { } second)
        {
            return RefuseNumber(part, span);
        }

        Unit? unit = unitSpan.Length == 0 ? null : vocabulary.Units.Find(unitSpan.In(line));
        if (unitSpan.Length > 0 && unit is null)
        {
            return UnknownUnit(span, unitSpan);
        }

        if (Word.Has(SlotKind.Range))
        {
            if (second < first)
            {
                return Refuse(span, ProblemRules.BadNumber, $"`{span.In(line)}`: the lower number comes first");
            }

            return FitsSubject(unit) ? SetValue(new ValueRange(span, first, second, unit), span) : UnfitSubject(span, unitSpan, unit);
        }

        if (!Word.Has(SlotKind.Mass))
        {
            return WrongForm(span);
        }

        if (unit is null)
        {
            return Refuse(span, ProblemRules.MissingUnit, $"`{span.In(line)}` has no unit; write kg or lb, as in {span.In(line)}kg");
        }

        Unit? firstUnit = part.First.Unit.Length == 0 ? unit : vocabulary.Units.Find(part.First.Unit.In(line));
        if (firstUnit is null)
        {
            return UnknownUnit(span, part.First.Unit);
        }

        if (unit.Quantity != Quantity.Mass || firstUnit.Quantity != Quantity.Mass)
        {
            return UnfitUnit(span, unitSpan, unit);
        }

        if (first * firstUnit.Factor <= second * unit.Factor)
        {
            return Refuse(span, ProblemRules.BadNumber, $"`{span.In(line)}`: the weight of person and pet comes first, then the person's, so the first number must be the larger");
        }

        return SetValue(new Difference(span, BoundOf(part), new Amount(first, firstUnit), new Amount(second, unit)), span);
    }

    private bool BindSingle(NumberPart part)
    {
        TextSpan span = WithUnitWord(null, part, out TextSpan unitSpan);
        if (Digits(part.First.Digits) is not { } number)
        {
            return RefuseNumber(part, span);
        }

        if (unitSpan.Length == 1 && unitSpan.In(line) is "x" or "X" or "×")
        {
            return BindTimes(number, span);
        }

        Bound bound = BoundOf(part);
        if (unitSpan.Length == 0)
        {
            return BindBare(part, number, bound, span);
        }

        if (vocabulary.Units.Find(unitSpan.In(line)) is not { } unit)
        {
            return UnknownUnit(span, unitSpan);
        }

        unit = Meant(unit);
        if (Word.Has(SlotKind.Limit))
        {
            return FitsSubject(unit) ? SetLimit(part, number, unit, span) : UnfitSubject(span, unitSpan, unit);
        }

        foreach (Slot slot in Word.Takes)
        {
            if (Fits(unit, slot.Kind))
            {
                return BindMeasure(slot.Kind, number, unit, bound, span);
            }
        }

        return UnfitUnit(span, unitSpan, unit);
    }

    private bool BindBare(NumberPart part, decimal number, Bound bound, TextSpan span)
    {
        if (Word.Has(SlotKind.Rate))
        {
            return SetValue(new PerMinute(span, bound, number), span);
        }

        if (Word.Has(SlotKind.Limit))
        {
            return SetLimit(part, number, null, span);
        }

        if (Word.Has(SlotKind.Seconds))
        {
            return SetValue(new Measure(span, bound, [new Amount(number, vocabulary.Units.Find("s")!)]), span);
        }

        if (Word.Has(SlotKind.Times))
        {
            return BindTimes(number, span);
        }

        if (Word.Has(SlotKind.Score))
        {
            return Refuse(span, ProblemRules.MissingUnit, $"`{span.In(line)}` on which scale? Write it as in {span.In(line)}/{(Word.Word == "pain" ? 10 : Word.Word == "mcs" ? 3 : 9)}");
        }

        string units = string.Join(", ", vocabulary.Units.Terms.Where(unit => Word.Takes.Any(slot => Fits(unit, slot.Kind))).Select(unit => unit.Word).Take(5));
        return units.Length == 0
            ? false
            : Refuse(span, ProblemRules.MissingUnit, $"`{span.In(line)}` has no unit; expected one of {units}");
    }

    private bool BindTimes(decimal number, TextSpan span)
    {
        if (!Word.Has(SlotKind.Times))
        {
            return WrongForm(span);
        }

        if (number != Math.Truncate(number) || number > 999)
        {
            return Refuse(span, ProblemRules.BadNumber, $"`{span.In(line)}`: expected a whole number of times, such as 2x");
        }

        if (times is not null)
        {
            SaidTwice(span, $"{times}x");
            at++;
            return true;
        }

        times = (int)number;
        return Taken(TokenKind.Value, span);
    }

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
                return SetValue(new Diameters(span, bound, [.. amounts]), span);
            case SlotKind.Portion when unit.Quantity == Quantity.Portion:
                return SetValue(new Portion(span, bound, number, 100), span);
            case SlotKind.Amount:
                return SetValue(ref amount, new Measure(span, bound, [.. amounts]), span);
            case SlotKind.Duration:
                return SetAmount(ref duration, amounts, span);
            case SlotKind.Distance:
                return SetAmount(ref distance, amounts, span);
            default:
                return SetValue(new Measure(span, bound, [.. amounts]), span);
        }
    }

    /// <summary>True for the <c>3oz</c> of <c>47lb 3oz</c> and the <c>30s</c> of <c>2min 30s</c>: the same quantity in a smaller unit.</summary>
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

        if (vocabulary.Units.Find(unitSpan.In(line)) is not { } unit || unit.Quantity != before.Quantity || unit.Factor >= before.Factor || Digits(part.First.Digits) is not { } number)
        {
            return false;
        }

        more = new Amount(number, unit);
        return true;
    }

    private bool SetAmount(ref Amount? slot, List<Amount> amounts, TextSpan span)
    {
        if (slot is not null)
        {
            SaidTwice(span, $"{slot.Value.Number}{slot.Value.Unit.Word}");
            at++;
            return true;
        }

        Unit unit = amounts[^1].Unit;
        slot = amounts.Count == 1 ? amounts[0] : new Amount(amounts.Sum(a => a.Value * a.Unit.Factor) / unit.Factor, unit);
        return Taken(TokenKind.Value, span);
    }

    private bool SetLimit(NumberPart part, decimal number, Unit? unit, TextSpan span)
    {
        Bound side = part.BoundSpan.Length == 0 ? Bound.Exact : BoundOf(part);
        return side is Bound.Below or Bound.Above
            ? SetValue(new Limit(span, side, number, unit), span)
            : Refuse(span, ProblemRules.WrongValue, $"`{span.In(line)}`: write > or < before the line to cross, as in >{span.In(line)}");
    }

    private bool SetValue(NoteValue found, TextSpan span) =>
        SetValue(ref Word.Has(SlotKind.Amount) && found is Measure ? ref amount : ref value, found, span);

    private bool SetValue(ref NoteValue? slot, NoteValue found, TextSpan span)
    {
        at++;
        if (slot is not null)
        {
            SaidTwice(span, slot.Span.In(line).ToString());
            return true;
        }

        Mark(TokenKind.Value, span);
        slot = found;
        return true;
    }

    private void Set(ref NoteValue? slot, NoteValue found)
    {
        if (slot is not null)
        {
            SaidTwice(found.Span, slot.Span.In(line).ToString());
        }
        else
        {
            slot = found;
        }
    }

    private Bound BoundOf(NumberPart part) => part.BoundSpan.Length == 0 ? Bound.Exact : line[part.BoundSpan.Start] switch
    {
        '<' or '≤' => Bound.Below,
        '>' or '≥' => Bound.Above,
        _ => Bound.About,
    };

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

    private decimal? Digits(TextSpan digits)
    {
        if (NumberText.TryRead(digits.In(line), out decimal number, out string? refusal))
        {
            return number;
        }

        numberRefusal = refusal;
        return null;
    }
}
