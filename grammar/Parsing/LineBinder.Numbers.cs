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
        if (IsOrdinal(part) && BindName())
        {
            return true;
        }

        if (Word.Has(SlotKind.Birth) || (TakesDate && LooksLikeDate(part) && !UnitFollows(part, at)))
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

    /// <summary>True for the <c>2000</c> of <c>2000 mg</c>: an amount, no year.</summary>
    private bool UnitFollows(NumberPart part, int index) =>
        !part.Second.Exists && index + 1 < parts.Count && vocabulary.Units.Find(TextOf(parts[index + 1])) is { } unit && FitsAny(unit);

    private bool BindDate(NumberPart part)
    {
        if (!LooksLikeDate(part))
        {
            return Refuse(part.Span, ProblemRules.BadDate, $"`{TextOf(part)}` is not a date here; expected year-month-day, such as 2017-03-08, 2017-03 or ~2017");
        }

        PartialDate? date = TakeDate(part);
        if (Word.Has(SlotKind.Birth))
        {
            birth = Once(birth, date, part.Span);
        }
        else if (Word.Has(SlotKind.Per))
        {
            AddPer("", date, part.Span);
        }
        else
        {
            schedule = schedule with { On = Once(schedule.On, date, part.Span) };
        }

        return true;
    }

    private bool ToothOrGland(NumberPart part)
    {
        bool bare = part.First.Unit.Length == 0 && !part.Second.Exists && part.BoundSpan.Length == 0;
        bool tooth = SiteSlot == SlotKind.Tooth;
        bool gland = SiteSlot == SlotKind.Gland && GlandNumberAt(at) is not null;
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
            { Word: "s" or "min" } when Word.Has(SlotKind.Rate) => new CountOverTime(span, bound, over, under, unit),
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
            return unit is { Quantity: Quantity.Time } && Word.Has(SlotKind.Rate)
                ? Refuse(span, ProblemRules.WrongUnit, $"`{span.In(line)}`: count over seconds or a minute, as in {part.First.Digits.In(line)}/15s")
                : unit is null && Word.Has(SlotKind.Rate)
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

            if (!Fits(unit, SlotKind.Size))
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

            if (part.BoundSpan.Length > 0 || (part.First.Unit.Length > 0 && vocabulary.Units.Find(part.First.Unit.In(line)) != unit))
            {
                return Refuse(span, ProblemRules.WrongValue, $"`{span.In(line)}`: a range is two numbers and one unit, such as 16-24 or 38-39C");
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

        if (!Fits(unit, SlotKind.Mass))
        {
            return UnfitUnit(span, unitSpan, unit);
        }

        if (!Fits(firstUnit, SlotKind.Mass))
        {
            return UnfitUnit(span, part.First.Unit, firstUnit);
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
            return BindTimes(number, BoundOf(part), span);
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

        if (Word.Has(SlotKind.Amount) && MixedFraction(number, ref span) is { } mixed)
        {
            return SetValue(new Measure(span, bound, [mixed]), span);
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
            return BindTimes(number, bound, span);
        }

        if (Word.Has(SlotKind.Score))
        {
            return Refuse(span, ProblemRules.MissingUnit, $"`{span.In(line)}` on which scale? Write it as in {span.In(line)}/{(Word.Word == "pain" ? 10 : Word.Word == "mcs" ? 3 : 9)}");
        }

        string units = string.Join(", ", Word.Takes.Select(slot => SlotHints.UnitsOf(slot.Kind, Word.Word)).Where(units => units.Length > 0));
        return units.Length > 0 && Refuse(span, ProblemRules.MissingUnit, $"`{span.In(line)}` has no unit; write for instance {units}");
    }

    /// <summary>The <c>1 1/2 tablets</c> that stands here: a whole number and a fraction with its unit.</summary>
    private Amount? MixedFraction(decimal whole, ref TextSpan span)
    {
        if (at + 1 >= parts.Count || parts[at + 1] is not NumberPart { BoundSpan.Length: 0, First.Unit.Length: 0, Third.Exists: false } part
            || part.Second.Sign(line) != '/' || Digits(part.First.Digits) is not { } over || Digits(part.Second.Digits) is not { } under
            || over >= under || whole * under >= ReadingLimits.NumbersBelow / 2)
        {
            return null;
        }

        int before = at++;
        TextSpan fraction = WithUnitWord(null, part, out TextSpan unitSpan);
        if (vocabulary.Units.Find(unitSpan.In(line)) is not { } unit || !Fits(unit, SlotKind.Amount))
        {
            at = before;
            return null;
        }

        span = TextSpan.Between(span.Start, fraction.End);
        return new Amount((whole * under) + over, unit, under);
    }

    private bool BindTimes(decimal number, Bound bound, TextSpan span)
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
        timesBound = bound;
        return Taken(TokenKind.Value, span);
    }

    private bool SetAmount(ref Amount? slot, List<Amount> amounts, Bound bound, TextSpan span)
    {
        if (slot is not null)
        {
            SaidTwice(span, $"{slot.Value.Number}{slot.Value.Unit.Word}");
            at++;
            return true;
        }

        Unit unit = amounts[^1].Unit;
        decimal sum = amounts.Sum(a => a.Value * a.Unit.Factor) / unit.Factor;
        if (sum >= ReadingLimits.NumbersBelow)
        {
            return Refuse(span, ProblemRules.BadNumber, $"`{span.In(line)}` is too long to be right");
        }

        slot = new Amount(amounts.Count == 1 ? amounts[0].Number : sum, unit, Bound: bound);
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
        // a second amount in a line with a remark is part of the remark: "300mg with food 50 mg a kilo"
        if (slot is not null && TakesNote())
        {
            return false;
        }

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

    private Bound BoundOf(NumberPart part) => part.BoundSpan.Length == 0 ? Bound.Exact : line[part.BoundSpan.Start] switch
    {
        '<' or '≤' => Bound.Below,
        '>' or '≥' => Bound.Above,
        _ => Bound.About,
    };

    private decimal? Digits(TextSpan digits)
    {
        bool read = NumberText.TryRead(digits.In(line), out decimal number, out numberRefusal);
        return read ? number : null;
    }
}
