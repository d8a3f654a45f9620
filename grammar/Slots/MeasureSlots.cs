using System.Collections.Immutable;
using HealthNotes.Grammar.Notes;
using HealthNotes.Grammar.Parsing;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Text;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Grammar.Slots;

/// <summary>Measured values: rates, temperatures, weights, sizes, scores, volumes, amounts, limits.</summary>
internal static class MeasureSlots
{
    public static ImmutableArray<SlotReader> All { get; } =
    [
        new Rate(), new Temperature(), new Mass(), new Seconds(), new Score(), new Glucose(), new Pressure(), new Length(), new Size(), new Strength(),
        new Amount(), new Volume(), new Range(), new Limit(), new Reference(), new Lab(), new Extent(SlotKind.Duration), new Extent(SlotKind.Distance),
        new Percent(),
    ];

    private static Measure MeasureOf(Cursor at, NumberForm form)
    {
        ImmutableArray<Notes.Amount> amounts = Numbers.Amounts(at, form, out TextSpan span);
        return new Measure(span, form.Bound, amounts);
    }

    private sealed class Rate() : SlotReader(SlotKind.Rate)
    {
        /// <summary>The seconds a clinic counts for when it multiplies: 18 x 4 is 18 in 15 s.</summary>
        private static readonly ImmutableArray<int> Multipliers = [2, 3, 4, 5, 6, 10, 12];

        public override string Hint(LineWord word) => "a count such as 18/15s, or a rate such as 72";

        public override bool Fits(Unit unit, LineWord word) => unit.Quantity == Quantity.Rate;

        public override object? Value(Cursor at, NumberForm form) => form switch
        {
            { Shape: NumberShape.Bare } => new PerMinute(form.Span, form.Bound, form.First),
            { Shape: NumberShape.WithUnit, Unit.Quantity: Quantity.Rate } => new PerMinute(form.Span, form.Bound, form.First),
            { Shape: NumberShape.Ratio, Unit.Word: "s" or "min", Second: > 0 } => new CountOverTime(form.Span, form.Bound, form.First, form.Second, form.Unit),
            { Shape: NumberShape.Times, NoUnit: true, Part.Third.Exists: false } when Multipliers.Contains((int)form.Second) && form.Second == (int)form.Second =>
                new CountOverTime(form.Span, form.Bound, form.First, 60 / form.Second, at.Vocabulary.Units.Find("s")!),
            _ => null,
        };
    }

    private sealed class Temperature() : SlotReader(SlotKind.Temperature)
    {
        public override string Hint(LineWord word) => "a temperature such as 38.6C or 101.5F";

        public override ImmutableArray<string> Units(LineWord word) => ["C", "F"];

        public override bool Fits(Unit unit, LineWord word) => unit.Quantity == Quantity.Temperature;

        public override object? Value(Cursor at, NumberForm form) => form switch
        {
            { Shape: NumberShape.WithUnit, Unit.Quantity: Quantity.Temperature } => MeasureOf(at, form),

            // only one scale gives a living animal this temperature
            { Shape: NumberShape.Bare } when at.Vocabulary.Units.Terms.FirstOrDefault(unit => unit.BareFrom <= form.First && form.First <= unit.BareTo) is { } unit =>
                new Measure(form.Span, form.Bound, [new Notes.Amount(form.First, unit)]),
            _ => null,
        };
    }

    private sealed class Mass() : SlotReader(SlotKind.Mass)
    {
        public override string Hint(LineWord word) => "a weight such as 21.4kg, 47lb 3oz or 83.2-55.9kg";

        public override ImmutableArray<string> Units(LineWord word) => ["kg", "lb", "g"];

        public override bool Fits(Unit unit, LineWord word) => unit.Quantity == Quantity.Mass && unit.Word is not ("mg" or "ug");

        public override object? Value(Cursor at, NumberForm form)
        {
            if (form is { Shape: NumberShape.WithUnit, Unit: { } single } && Fits(single, at.Word))
            {
                return MeasureOf(at, form);
            }

            Unit? first = form.Part.First.Unit.Length == 0 ? form.Unit : at.Vocabulary.Units.Find(form.Part.First.Unit.In(at.Line));
            return form is { Shape: NumberShape.Spread, Unit: { } unit } && first is not null && Fits(unit, at.Word) && Fits(first, at.Word)
                && form.First * first.Factor > form.Second * unit.Factor
                ? new Difference(form.Span, form.Bound, new Notes.Amount(form.First, first), new Notes.Amount(form.Second, unit))
                : null;
        }
    }

    private sealed class Seconds() : SlotReader(SlotKind.Seconds)
    {
        public override string Hint(LineWord word) => "seconds, such as 1.5s";

        public override ImmutableArray<string> Units(LineWord word) => ["s"];

        public override bool Fits(Unit unit, LineWord word) => unit.Word == "s";

        public override object? Value(Cursor at, NumberForm form) => form switch
        {
            { Shape: NumberShape.WithUnit, Unit.Word: "s" } => MeasureOf(at, form),
            { Shape: NumberShape.Bare } => new Measure(form.Span, form.Bound, [new Notes.Amount(form.First, at.Vocabulary.Units.Find("s")!)]),
            _ => null,
        };
    }

    /// <summary>A value on a scale. A bare number is none: which scale it is on must be written.</summary>
    private sealed class Score() : SlotReader(SlotKind.Score)
    {
        public override string Hint(LineWord word) => word.Word == "mcs" ? "normal, mild, moderate or severe, or a score such as 3/3"
            : word.Scales.IsEmpty ? "a score such as 5/9" : $"a score such as {word.Scales[0] / 2}/{word.Scales[0]}";

        public override ImmutableArray<string> Units(LineWord word) => [.. word.Scales.Select(scale => $"/{scale}")];

        public override IEnumerable<string> Spellings(NoteVocabulary vocabulary, LineWord word) => word.Word == "mcs" ? vocabulary.Fixed("mcs").Spellings : [];

        public override bool BindWord(Cursor at)
        {
            if (at.Word.Word != "mcs" || at.Vocabulary.Fixed("mcs").Find(at.TextOf(at.Part)) is not { } grade)
            {
                return false;
            }

            if (at.First<NoteValue>() is { } before)
            {
                at.SaidTwice(at.Part.Span, before.Span.In(at.Line).ToString());
                at.At++;
                return true;
            }

            at.Add(SlotKind.Score, new Notes.Score(at.Part.Span, Bound.Exact, grade.Word switch { "normal" => 3, "mild" => 2, "moderate" => 1, _ => 0 }, at.Word.Scales[0]));
            return at.Taken(TokenKind.Value);
        }

        public override object? Value(Cursor at, NumberForm form) => form is { Shape: NumberShape.Ratio, NoUnit: true, Second: > 0 }
            ? new Notes.Score(form.Span, form.Bound, form.First, form.Second)
            : null;
    }

    private sealed class Glucose() : SlotReader(SlotKind.Glucose)
    {
        public override string Hint(LineWord word) => "glucose such as 8.2mmol/L or 148mg/dL";

        public override ImmutableArray<string> Units(LineWord word) => ["mmol/L", "mg/dL"];

        public override bool Fits(Unit unit, LineWord word) => unit.Quantity == Quantity.Glucose;

        public override object? Value(Cursor at, NumberForm form) =>
            form is { Shape: NumberShape.WithUnit, Unit.Quantity: Quantity.Glucose } ? MeasureOf(at, form) : null;
    }

    private sealed class Pressure() : SlotReader(SlotKind.Pressure)
    {
        public override string Hint(LineWord word) => "a pressure such as 150/90";

        public override bool Fits(Unit unit, LineWord word) => unit.Quantity == Quantity.Pressure;

        public override object? Value(Cursor at, NumberForm form) => form switch
        {
            { Unit: { } unit } when unit.Quantity != Quantity.Pressure => null,
            { UnitSpan.Length: > 0, Unit: null } => null,
            { Shape: NumberShape.Ratio } when form.Second < form.First => new Notes.Pressure(form.Span, form.Bound, form.First, form.Second),
            { Shape: NumberShape.Bare or NumberShape.WithUnit } => new Notes.Pressure(form.Span, form.Bound, form.First, null),
            _ => null,
        };
    }

    private sealed class Length() : SlotReader(SlotKind.Length)
    {
        public override string Hint(LineWord word) => "a length such as 52cm or 20in";

        public override ImmutableArray<string> Units(LineWord word) => ["cm", "in", "mm"];

        public override bool Fits(Unit unit, LineWord word) => unit.Word is "mm" or "cm" or "in";

        public override object? Value(Cursor at, NumberForm form) =>
            form is { Shape: NumberShape.WithUnit, Unit: { } unit } && Fits(unit, at.Word) ? MeasureOf(at, form) : null;
    }

    /// <summary>Diameters, or a thing of a known size.</summary>
    private sealed class Size() : SlotReader(SlotKind.Size)
    {
        public override string Hint(LineWord word) => "a size such as 12mm or like pea";

        public override ImmutableArray<string> Units(LineWord word) => ["mm", "in", "cm"];

        public override IEnumerable<string> Spellings(NoteVocabulary vocabulary, LineWord word) => vocabulary.Objects.Spellings;

        public override bool Fits(Unit unit, LineWord word) => unit.Word is "mm" or "cm" or "in";

        /// <summary><c>like a pea</c>, <c>size of a pea</c>, <c>pea-sized</c>, <c>pea size</c>, <c>pea</c>.</summary>
        public override bool BindWord(Cursor at)
        {
            if (Sized(at) is { } sized)
            {
                return Take(at, sized, 1);
            }

            int index = at.At;
            bool joined = false;
            foreach (string word in (ReadOnlySpan<string>)["about", "the", "size", "of", "like", "as", "big", "a", "an"])
            {
                bool here = at.Is(index, word);
                index += here ? 1 : 0;
                joined |= here && word is "like" or "of";
            }

            int count = at.Phrase(at.Vocabulary.Objects, index, out ComparisonObject? thing);
            if (count == 0)
            {
                return joined && at.Is(at.At, "like") && Unknown(at, index);
            }

            count += index - at.At;
            count += at.Is(at.At + count, "size") || at.Is(at.At + count, "sized") ? 1 : 0;
            return Take(at, thing!, count);
        }

        public override object? Value(Cursor at, NumberForm form)
        {
            if (form is { Shape: NumberShape.WithUnit, Unit: { } single } && Fits(single, at.Word) && form.First > 0)
            {
                return Apart(at, form, single);
            }

            if (form is { Shape: NumberShape.Ratio, Unit: { } half, Second: > 0 } && Fits(half, at.Word) && form.First > 0)
            {
                return new Diameters(form.Span, form.Bound, [new Notes.Amount(form.First / form.Second, half)]);
            }

            return form is { Shape: NumberShape.Times, UnitSpan.Length: > 0 } ? Joined(at, form) : null;
        }

        private static ComparisonObject? Sized(Cursor at)
        {
            ReadOnlySpan<char> text = at.TextOf(at.Part);
            int hyphen = text.LastIndexOf('-');
            return hyphen > 0 && text[(hyphen + 1)..] is "sized" or "size" ? at.Vocabulary.Objects.Find(text[..hyphen]) : null;
        }

        private static bool Take(Cursor at, ComparisonObject thing, int count)
        {
            TextSpan span = at.SpanOf(at.At, count);
            at.At += count;
            if (at.First<NoteValue>() is { } before)
            {
                at.SaidTwice(span, before.Span.In(at.Line).ToString());
                return true;
            }

            at.Add(SlotKind.Size, new LikeObject(span, thing));
            at.Mark(TokenKind.Value, span);
            return true;
        }

        private static bool Unknown(Cursor at, int index)
        {
            bool missing = !at.IsWord(index);
            TextSpan meant = missing ? at.Part.Span : at.Parts[index].Span;
            string typed = meant.In(at.Line).ToString();
            string? nearest = missing ? null : NearestWord.Find(typed, at.Vocabulary.Objects.Spellings);
            at.Report(new Problem(missing ? ProblemRules.Missing : ProblemRules.UnknownWord, meant,
                (missing ? "`like` needs a thing behind it" : $"`{typed}` is not a thing of a known size")
                + (nearest is null ? ": like pea, like golf-ball" : $". Did you mean `{nearest}`?"), nearest));
            at.Mark(TokenKind.Unknown, TextSpan.Between(at.Part.Span.Start, meant.End));
            at.At = missing ? index : index + 1;
            return true;
        }

        /// <summary><c>12x9mm</c>, <c>12mm x 9mm</c>.</summary>
        private Diameters? Joined(Cursor at, NumberForm form)
        {
            var lengths = new List<Notes.Amount>(3);
            bool fraction = form.Part.Third.Exists && form.Part.Third.Sign(at.Line) == '/';
            foreach (Operand operand in (ReadOnlySpan<Operand>)[form.Part.First, form.Part.Second, form.Part.Third])
            {
                if (!operand.Exists || (fraction && operand == form.Part.Third))
                {
                    continue;
                }

                TextSpan unitSpan = operand.Unit.Length > 0 ? operand.Unit : form.UnitSpan;
                if (at.Vocabulary.Units.Find(unitSpan.In(at.Line)) is not { } unit || !Fits(unit, at.Word) || at.Digits(operand.Digits) is not { } number || number == 0)
                {
                    return null;
                }

                lengths.Add(new Notes.Amount(number, unit));
            }

            if (fraction)
            {
                // 1 x 3/4 inch
                if (at.Digits(form.Part.Third.Digits) is not (> 0 and var under))
                {
                    return null;
                }

                lengths[^1] = new Notes.Amount(lengths[^1].Number / under, lengths[^1].Unit);
            }

            return form.Part.Third.Exists && !fraction && form.Part.Third.Sign(at.Line) != 'x' ? null : new Diameters(form.Span, form.Bound, [.. lengths]);
        }

        /// <summary>The <c>x 9 mm</c> of <c>12 mm x 9 mm</c>, where blanks cut the size into parts of its own.</summary>
        private Diameters Apart(Cursor at, NumberForm form, Unit first)
        {
            List<Notes.Amount> amounts = [new(form.First, first)];
            TextSpan span = form.Span;
            while (amounts.Count < 3 && at.At + 2 < at.Parts.Count && at.TextAt(at.At + 1) is "x" or "X" or "×" or "*" or "by"
                && at.Parts[at.At + 2] is NumberPart { BoundSpan.Length: 0, Second.Exists: false } part)
            {
                bool apart = part.First.Unit.Length == 0;
                TextSpan unitSpan = !apart ? part.First.Unit : at.IsWord(at.At + 3) ? at.Parts[at.At + 3].Span : default;
                if (at.Vocabulary.Units.Find(unitSpan.In(at.Line)) is not { } unit || !Fits(unit, at.Word) || at.Digits(part.First.Digits) is not { } number)
                {
                    break;
                }

                amounts.Add(new Notes.Amount(number, unit));
                at.At += apart ? 3 : 2;
                span = TextSpan.Between(span.Start, at.Part.Span.End);
            }

            return new Diameters(span, form.Bound, [.. amounts]);
        }
    }

    /// <summary>What one tablet holds: <c>75 mg tablets</c>. The amount behind it is then worked out in the same unit.</summary>
    private sealed class Strength() : SlotReader(SlotKind.Strength)
    {
        public override bool BindNumber(Cursor at, NumberPart part)
        {
            if (at.Get<Measure>(SlotKind.Strength) is not null || part.Second.Exists || part.BoundSpan.Length > 0 || at.Digits(part.First.Digits) is not { } number)
            {
                return false;
            }

            if (part.First.Unit.In(at.Line) is { } perUnit && perUnit.IndexOf('/') is > 0 and var slash && at.Vocabulary.Units.Find(perUnit[..slash]) is { Quantity: Quantity.Mass }
                && at.Vocabulary.Units.Find(perUnit) is null && at.At + 1 < at.Parts.Count && at.Parts[at.At + 1].Kind == PartKind.Number)
            {
                // 75mg/ml 2ml: what one millilitre holds, then how much
                at.Add(SlotKind.Strength, new FreeWords(part.Span, at.TextOf(part).ToString()));
                return at.Taken(TokenKind.Name);
            }

            int index = at.At + (part.First.Unit.Length == 0 ? 2 : 1);
            TextSpan unitSpan = part.First.Unit.Length > 0 ? part.First.Unit : at.IsWord(at.At + 1) ? at.Parts[at.At + 1].Span : default;
            bool plural = at.IsWord(index) && at.Vocabulary.Units.Find(at.TextAt(index)) is { Word: "tablet" or "capsule" } && index + 1 < at.Parts.Count;
            if (!plural || at.Vocabulary.Units.Find(unitSpan.In(at.Line)) is not { Quantity: Quantity.Mass or Quantity.Volume } unit || !Counted(at, index + 1))
            {
                return false;
            }

            TextSpan span = TextSpan.Between(part.Span.Start, at.Parts[index].Span.End);
            at.Add(SlotKind.Strength, new FreeWords(span, at.WithSingleBlanks(span)));
            at.Add(SlotKind.StrengthOfOne, new Measure(span, Bound.Exact, [new Notes.Amount(number, unit)]));
            at.Mark(TokenKind.Name, span);
            at.At = index + 1;
            return true;
        }

        /// <summary>True where a count of tablets follows: only then is the first amount the strength.</summary>
        private static bool Counted(Cursor at, int index) =>
            index + 1 < at.Parts.Count && at.Parts[index].Kind == PartKind.Number
                ? TabletAt(at, index + 1) || (at.Parts[index + 1].Kind == PartKind.Number && TabletAt(at, index + 2))
                : CountSlots.NumberWord(at, index, out int count) is not null
                    && TabletAt(at, index + count + (at.Is(index + count, "of") || at.Is(index + count, "a") ? 1 : 0));

        private static bool TabletAt(Cursor at, int index) => at.IsWord(index) && at.Vocabulary.Units.Find(at.TextAt(index)) is { Word: "tablet" or "capsule" };
    }

    /// <summary>An amount of medicine or food: <c>5mg</c>, <c>1/2 tablet</c>, <c>1 1/2 tablets</c>, <c>half a tablet</c>.</summary>
    private sealed class Amount() : SlotReader(SlotKind.Amount)
    {
        public override string Hint(LineWord word) => word.Word == "food" ? "an amount such as 60g" : "an amount such as 5mg or 1/2 tablet";

        public override ImmutableArray<string> Units(LineWord word) => word.Word == "food" ? ["g", "oz", " can"] : ["mg", "ml", " tablet"];

        public override bool Fits(Unit unit, LineWord word) => word.Has(SlotKind.Volume) ? unit.Word == "clump"
            : unit.Quantity is Quantity.Mass or Quantity.Volume or Quantity.Dose or Quantity.DoseRate;

        /// <summary><c>half a tablet</c>, <c>one tablet</c>, <c>two 5mg tablets</c>.</summary>
        public override bool BindWord(Cursor at)
        {
            if (CountSlots.NumberWord(at, at.At, out int count) is not { } number || at.First<NoteValue>() is not null)
            {
                return false;
            }

            int index = at.At + count;
            index += at.Is(index, "of") ? 1 : 0;
            index += at.Is(index, "a") || at.Is(index, "an") ? 1 : 0;
            if (!at.IsWord(index) || at.Vocabulary.Units.Find(at.TextAt(index)) is not { } unit || !Fits(unit, at.Word))
            {
                return false;
            }

            TextSpan span = at.SpanOf(at.At, index + 1 - at.At);
            Notes.Amount amount = number.Over == 1 ? new(number.Number, unit) : new(number.Number, unit, number.Over);
            at.Add(SlotKind.Amount, Whole(at, new Measure(span, Bound.Exact, [amount])));
            at.Mark(TokenKind.Value, span);
            at.At = index + 1;
            return true;
        }

        public override object? Value(Cursor at, NumberForm form)
        {
            if (form is { Shape: NumberShape.Ratio, Unit: { } part, Second: > 0 } && Fits(part, at.Word))
            {
                return Whole(at, new Measure(form.Span, form.Bound, [new Notes.Amount(form.First, part, form.Second)]));
            }

            if (form is { Shape: NumberShape.Bare } && Mixed(at, form.First, out TextSpan span) is { } mixed)
            {
                return Whole(at, new Measure(TextSpan.Between(form.Span.Start, span.End), form.Bound, [mixed]));
            }

            return form is { Shape: NumberShape.WithUnit, Unit: { } unit } && Fits(unit, at.Word) ? Whole(at, MeasureOf(at, form)) : null;
        }

        /// <summary>The amount in the unit of one tablet's strength, where that is written.</summary>
        private static Measure Whole(Cursor at, Measure count) =>
            at.Get<Measure>(SlotKind.StrengthOfOne) is { Amounts: [var one] } && count.Amounts is [{ Unit.Word: "tablet" or "capsule" } many]
                ? count with { Amounts = [decimal.Round(one.Number * many.Number / many.Over, 4) * many.Over == one.Number * many.Number ? new Notes.Amount(one.Number * many.Number / many.Over, one.Unit) : new Notes.Amount(one.Number * many.Number, one.Unit, many.Over)] }
                : count;

        /// <summary>The <c>1/2 tablets</c> behind the whole number of <c>1 1/2 tablets</c>.</summary>
        private Notes.Amount? Mixed(Cursor at, decimal whole, out TextSpan span)
        {
            span = default;
            if (at.At + 1 >= at.Parts.Count || at.Parts[at.At + 1] is not NumberPart { BoundSpan.Length: 0, First.Unit.Length: 0, Third.Exists: false } part
                || part.Second.Sign(at.Line) != '/' || at.Digits(part.First.Digits) is not { } over || at.Digits(part.Second.Digits) is not { } under
                || over >= under || whole * under >= ReadingLimits.NumbersBelow / 2)
            {
                return null;
            }

            bool apart = part.Second.Unit.Length == 0;
            TextSpan unitSpan = !apart ? part.Second.Unit : at.IsWord(at.At + 2) ? at.Parts[at.At + 2].Span : default;
            if (at.Vocabulary.Units.Find(unitSpan.In(at.Line)) is not { } unit || !Fits(unit, at.Word))
            {
                return null;
            }

            at.At += apart ? 2 : 1;
            span = at.Part.Span;
            return new Notes.Amount((whole * under) + over, unit, under);
        }
    }

    private sealed class Volume() : SlotReader(SlotKind.Volume)
    {
        public override string Hint(LineWord word) => "a volume such as 900ml";

        public override ImmutableArray<string> Units(LineWord word) => ["ml", "cup", "l"];

        public override bool Fits(Unit unit, LineWord word) => unit.Quantity == Quantity.Volume;

        public override object? Value(Cursor at, NumberForm form) => form switch
        {
            { Shape: NumberShape.WithUnit, Unit.Quantity: Quantity.Volume } => MeasureOf(at, form),
            { Shape: NumberShape.Ratio, Unit.Quantity: Quantity.Volume, Second: > 0 } => new Measure(form.Span, form.Bound, [new Notes.Amount(form.First, form.Unit, form.Second)]),
            _ => null,
        };
    }

    private sealed class Percent() : SlotReader(SlotKind.Percent)
    {
        public override string Hint(LineWord word) => "a percentage such as 5%";

        public override bool Fits(Unit unit, LineWord word) => unit.Quantity == Quantity.Portion;

        public override object? Value(Cursor at, NumberForm form) =>
            form is { Shape: NumberShape.WithUnit, Unit.Quantity: Quantity.Portion } ? new Portion(form.Span, form.Bound, form.First, 100) : null;
    }

    /// <summary>True when the unit goes with the vital that a <c>usual</c> or <c>call-if</c> line is about; rates and scores have none.</summary>
    private static bool GoesWith(LineWord about, Unit? unit) => unit is null
        ? about.Has(SlotKind.Rate) || about.Has(SlotKind.Score) || about.Has(SlotKind.Seconds) || about.Has(SlotKind.Pressure)
        : about.Takes.Any(slot => SlotTable.Row(slot.Kind).Fits(unit, about));

    private static bool GoesWithAny(Unit unit, LineWord word) =>
        word.Kind == WordKind.Fact || word.Takes.Any(slot => slot.Kind is not (SlotKind.Range or SlotKind.Limit) && SlotTable.Row(slot.Kind).Fits(unit, word));

    /// <summary>A range or a limit; whether its unit goes with its vital is checked at the end, since the vital may come last.</summary>
    private sealed class Range() : SlotReader(SlotKind.Range)
    {
        public override string Hint(LineWord word) => "a range such as 16-24";

        public override bool Fits(Unit unit, LineWord word) => GoesWithAny(unit, word);

        public override object? Value(Cursor at, NumberForm form) => form is { Shape: NumberShape.Spread, Part.BoundSpan.Length: 0 } && form.First <= form.Second
            && (form.NoUnit || form.Unit is not null)
            && (form.Part.First.Unit.Length == 0 || at.Vocabulary.Units.Find(form.Part.First.Unit.In(at.Line)) == form.Unit)
            && (at.About is not { } about || GoesWith(about, form.Unit))
            ? new ValueRange(form.Span, form.First, form.Second, form.Unit)
            : null;
    }

    private sealed class Limit() : SlotReader(SlotKind.Limit)
    {
        public override string Hint(LineWord word) => "a limit, such as >32";

        public override bool Fits(Unit unit, LineWord word) => GoesWithAny(unit, word);

        public override object? Value(Cursor at, NumberForm form) => form is { Shape: NumberShape.Bare or NumberShape.WithUnit, Bound: Bound.Below or Bound.Above }
            && (form.NoUnit || form.Unit is not null) && (at.About is not { } about || GoesWith(about, form.Unit))
            ? new Notes.Limit(form.Span, form.Bound, form.First, form.Unit)
            : null;
    }

    /// <summary>Checks that the unit of a range or limit goes with its vital, now that both are known whatever their order.</summary>
    public static bool SubjectFits(Cursor at) => (at.First<NoteValue>(), at.About) switch
    {
        (ValueRange range, { } about) => GoesWith(about, range.Unit),
        (Notes.Limit limit, { } about) => GoesWith(about, limit.Unit),
        _ => true,
    };

    /// <summary>A laboratory's own range: <c>ref 44-159</c>.</summary>
    private sealed class Reference() : SlotReader(SlotKind.Reference)
    {
        /// <summary><c>(0.8-2.4)</c> behind the value.</summary>
        public override object? Value(Cursor at, NumberForm form) => form is { Shape: NumberShape.Spread, Part.BoundSpan.Length: 0 } && form.First <= form.Second && at.First<LabValue>() is not null
            ? new ValueRange(form.Span, form.First, form.Second, null)
            : null;

        public override bool BindWord(Cursor at)
        {
            bool named = at.Is(at.At, "ref") || at.Is(at.At, "reference") || at.Is(at.At, "range") || at.Is(at.At, "normal");
            if (!named || at.At + 1 >= at.Parts.Count || at.Parts[at.At + 1] is not NumberPart { BoundSpan.Length: 0, Third.Exists: false } part
                || part.Second.Sign(at.Line) != '-' || at.Digits(part.First.Digits) is not { } low || at.Digits(part.Second.Digits) is not { } high || high < low)
            {
                return false;
            }

            TextSpan span = at.SpanOf(at.At, 2);
            at.Add(SlotKind.Reference, new ValueRange(span, low, high, null));
            at.At++;
            return at.Taken(TokenKind.Value, span);
        }
    }

    /// <summary>A laboratory's number with whatever unit, or its result in words.</summary>
    private sealed class Lab() : SlotReader(SlotKind.LabValue)
    {
        private static readonly string[] Results = ["positive", "pos", "negative", "neg", "normal", "high", "low"];

        public override string Hint(LineWord word) => "a value such as 110umol/L, or negative";

        public override IEnumerable<string> Spellings(NoteVocabulary vocabulary, LineWord word) => Results;

        public override bool BindWord(Cursor at)
        {
            string? result = Results.FirstOrDefault(word => at.Is(at.At, word));
            if (result is null || at.First<FreeWords>() is null || at.First<NoteValue>() is not null)
            {
                return false;
            }

            at.Add(SlotKind.LabValue, new LabValue(at.Part.Span, Bound.Exact, null, result switch { "pos" => "positive", "neg" => "negative", _ => result }));
            return at.Taken(TokenKind.Value);
        }

        public override bool BindNumber(Cursor at, NumberPart part)
        {
            if (part.Second.Exists || at.First<FreeWords>() is null || at.First<NoteValue>() is not null || at.Digits(part.First.Digits) is not { } number)
            {
                return false;
            }

            TextSpan unit = part.First.Unit;
            bool apart = unit.Length == 0 && at.IsWord(at.At + 1) && at.OnlyBlanks(at.At, 2) && LooksLikeUnit(at.TextAt(at.At + 1));
            unit = apart ? at.Parts[at.At + 1].Span : unit;
            var span = TextSpan.Between(part.Span.Start, Math.Max(part.Span.End, unit.End));
            at.Add(SlotKind.LabValue, new LabValue(span, at.BoundOf(part), number, unit.In(at.Line).ToString()));
            at.At += apart ? 1 : 0;
            return at.Taken(TokenKind.Value, span);
        }

        private static bool LooksLikeUnit(ReadOnlySpan<char> text) => text.Contains('/') || text is "%" or "mmHg" || (text.Length <= 2 && text is not ("in" or "at" or "or" or "on" or "by"));
    }

    /// <summary>How long or how far.</summary>
    private sealed class Extent(SlotKind kind) : SlotReader(kind)
    {
        public override string Hint(LineWord word) => Kind == SlotKind.Duration ? "how long, such as 3min" : "how far, such as 2km";

        public override ImmutableArray<string> Units(LineWord word) => Kind == SlotKind.Duration ? ["min", "s", "h"] : ["km", "mi"];

        public override bool Fits(Unit unit, LineWord word) => Kind == SlotKind.Duration ? unit.Quantity == Quantity.Time : unit.Word is "km" or "mi";

        public override object? Value(Cursor at, NumberForm form)
        {
            if (form is not { Shape: NumberShape.WithUnit, Unit: { } unit } || !Fits(unit, at.Word))
            {
                return null;
            }

            ImmutableArray<Notes.Amount> amounts = Numbers.Amounts(at, form, out _);
            Unit last = amounts[^1].Unit;
            decimal sum = amounts.Length == 1 ? amounts[0].Number : amounts.Sum(amount => amount.Value * amount.Unit.Factor) / last.Factor;
            return sum < ReadingLimits.NumbersBelow ? new Notes.Extent(new Notes.Amount(sum, last, Bound: form.Bound)) : null;
        }
    }
}
