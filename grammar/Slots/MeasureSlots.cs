using System.Collections.Immutable;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Scanning;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Text;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Grammar.Slots;

/// <summary>Measured values: rates, temperatures, weights, sizes, scores, volumes, amounts, limits.</summary>
internal static class MeasureSlots
{
    public static ImmutableArray<SlotReader> All { get; } =
    [
        new Rate(), new Temperature(), new Mass(), new Seconds(), new Score(), new Glucose(), new Pressure(), new Length(),
        .. AmountSlots.All, new Volume(), new Range(), new Limit(), .. LabSlots.All, new Extent(SlotKind.Duration), new Extent(SlotKind.Distance),
        new Percent(),
    ];

    public static Measure MeasureOf(Cursor at, NumberForm form)
    {
        ImmutableArray<Items.Amount> amounts = Numbers.Amounts(at, form, out TextSpan span);
        return new Measure(span, form.Bound, amounts);
    }

    /// <summary>A number without its unit, where only one unit gives a living animal such a value; else null.</summary>
    private static Measure? OnlyUnit(Cursor at, NumberForm form) =>
        at.Vocabulary.Units.Terms.FirstOrDefault(unit => unit.BareFrom <= form.First && form.First <= unit.BareTo && Numbers.FitsAny(at, unit)) is { } unit
            ? new Measure(form.Span, form.Bound, [new Items.Amount(form.First, unit)])
            : null;

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

            { Shape: NumberShape.Bare } => OnlyUnit(at, form),
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
                ? new Difference(form.Span, form.Bound, new Items.Amount(form.First, first), new Items.Amount(form.Second, unit))
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
            { Shape: NumberShape.Bare } => new Measure(form.Span, form.Bound, [new Items.Amount(form.First, at.Vocabulary.Units.Find("s")!)]),
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
            if (at.Word.Word != "mcs" || at.Phrase(at.Vocabulary.Fixed("mcs"), at.At, out FixedWord? grade) is not (> 0 and var count))
            {
                return false;
            }

            TextSpan span = at.SpanOf(at.At, count);
            at.At += count - 1;

            if (at.First<NoteValue>() is { } before)
            {
                at.SaidTwice(span, before.Span.In(at.Line).ToString());
                at.At++;
                return true;
            }

            at.Add(SlotKind.Score, new Items.Score(span, Bound.Exact, grade!.Word switch { "normal" => 3, "mild" => 2, "moderate" => 1, _ => 0 }, at.Word.Scales[0]));
            return at.Taken(TokenKind.Value, span);
        }

        public override object? Value(Cursor at, NumberForm form) => form is { Shape: NumberShape.Ratio, NoUnit: true, Second: > 0 }
            ? new Items.Score(form.Span, form.Bound, form.First, form.Second)
            : null;
    }

    private sealed class Glucose() : SlotReader(SlotKind.Glucose)
    {
        public override string Hint(LineWord word) => "glucose such as 8.2mmol/L or 148mg/dL";

        public override ImmutableArray<string> Units(LineWord word) => ["mmol/L", "mg/dL"];

        public override bool Fits(Unit unit, LineWord word) => unit.Quantity == Quantity.Glucose;

        public override object? Value(Cursor at, NumberForm form) =>
            form is { Shape: NumberShape.WithUnit, Unit.Quantity: Quantity.Glucose } ? MeasureOf(at, form) : form.Shape == NumberShape.Bare ? OnlyUnit(at, form) : null;
    }

    private sealed class Pressure() : SlotReader(SlotKind.Pressure)
    {
        public override string Hint(LineWord word) => "a pressure such as 150/90";

        public override bool Fits(Unit unit, LineWord word) => unit.Quantity == Quantity.Pressure;

        public override object? Value(Cursor at, NumberForm form) => form switch
        {
            { Unit: { } unit } when unit.Quantity != Quantity.Pressure => null,
            { UnitSpan.Length: > 0, Unit: null } => null,
            { Shape: NumberShape.Ratio } when form.Second < form.First => new Items.Pressure(form.Span, form.Bound, form.First, form.Second),
            { Shape: NumberShape.Bare or NumberShape.WithUnit } => new Items.Pressure(form.Span, form.Bound, form.First, null),
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

    private sealed class Volume() : SlotReader(SlotKind.Volume)
    {
        private const int HoursADay = 24;

        public override string Hint(LineWord word) => "a volume such as 900ml";

        public override ImmutableArray<string> Units(LineWord word) => ["ml", "cup", "l"];

        public override bool Fits(Unit unit, LineWord word) => unit.Quantity == Quantity.Volume;

        public override object? Value(Cursor at, NumberForm form) => form switch
        {
            { Shape: NumberShape.WithUnit, Unit.Quantity: Quantity.Volume } => MeasureOf(at, form),
            { Shape: NumberShape.Ratio, Unit.Word: "h", Second: HoursADay } when at.Vocabulary.Units.Find(form.Part.First.Unit.In(at.Line)) is { Quantity: Quantity.Volume } aDay =>
                new Measure(form.Span, form.Bound, [new Items.Amount(form.First, aDay)]),
            { Shape: NumberShape.Ratio, Unit.Quantity: Quantity.Volume, Second: > 0 } => new Measure(form.Span, form.Bound, [new Items.Amount(form.First, form.Unit, form.Second)]),
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
        public override string Hint(LineWord word) => OfDoses(word) ? "a range of single doses with its unit, such as 0.5-2mg/kg" : "a range such as 16-24, or 5.1-5.3kg";

        public override bool Fits(Unit unit, LineWord word) => OfDoses(word) ? SlotTable.Fits(SlotKind.Amount, unit, word) : GoesWithAny(unit, word);

        private static bool OfDoses(LineWord word) => word.Has(SlotKind.Medicine);

        public override object? Value(Cursor at, NumberForm form) => form is { Shape: NumberShape.Spread, Part.BoundSpan.Length: 0 } && form.First <= form.Second
            && (form.NoUnit || form.Unit is not null)
            && (form.Part.First.Unit.Length == 0 || at.Vocabulary.Units.Find(form.Part.First.Unit.In(at.Line)) == form.Unit)
            && (at.About is not { } about || GoesWith(about, form.Unit)) && (!OfDoses(at.Word) || (form.Unit is { } unit && Fits(unit, at.Word)))
            ? new ValueRange(form.Span, form.First, form.Second, form.Unit)
            : null;
    }

    private sealed class Limit() : SlotReader(SlotKind.Limit)
    {
        public override string Hint(LineWord word) => "a limit, such as >32";

        public override bool Fits(Unit unit, LineWord word) => GoesWithAny(unit, word);

        public override object? Value(Cursor at, NumberForm form) => form is { Shape: NumberShape.Bare or NumberShape.WithUnit, Bound: Bound.Below or Bound.Above }
            && (form.NoUnit || form.Unit is not null) && (at.About is not { } about || GoesWith(about, UnitOf(at, form)))
            ? new Items.Limit(form.Span, form.Bound, form.First, UnitOf(at, form))
            : null;

        private static Unit? UnitOf(Cursor at, NumberForm form) => form.Unit ?? (form.NoUnit && at.About is { } about
            ? at.Vocabulary.Units.Terms.FirstOrDefault(unit => unit.BareFrom <= form.First && form.First <= unit.BareTo && about.Takes.Any(slot => SlotTable.Row(slot.Kind).Fits(unit, about)))
            : null);
    }

    /// <summary>Checks that the unit of a range or limit goes with its vital, now that both are known whatever their order.</summary>
    public static bool SubjectFits(Cursor at) => (at.First<NoteValue>(), at.About) switch
    {
        (ValueRange range, { } about) => GoesWith(about, range.Unit),
        (Items.Limit limit, { } about) => GoesWith(about, limit.Unit),
        _ => true,
    };

    /// <summary>How long or how far.</summary>
    private sealed class Extent(SlotKind kind) : SlotReader(kind)
    {
        private const decimal SecondsADay = 86_400;

        public override string Hint(LineWord word) => Kind == SlotKind.Duration ? "how long, such as 3min" : "how far, such as 2km";

        public override ImmutableArray<string> Units(LineWord word) => Kind == SlotKind.Duration ? ["min", "s", "h"] : ["km", "mi"];

        public override bool Fits(Unit unit, LineWord word) => Kind == SlotKind.Duration ? unit.Quantity == Quantity.Time : unit.Word is "km" or "mi";

        /// <summary><c>for ten minutes</c>.</summary>
        public override bool BindWord(Cursor at)
        {
            int start = at.At + (at.Is(at.At, "for") ? 1 : 0);
            if (CountSlots.NumberWord(at, start, out int count) is not { } number || !at.IsWord(start + count) || at.Holds(Kind)
                || at.Vocabulary.Units.Find(at.TextAt(start + count)) is not { } unit || !Fits(unit, at.Word) || unit.Quantity == Quantity.Time && unit.Factor > SecondsADay)
            {
                return false;
            }

            TextSpan span = at.SpanOf(start, count + 1);
            at.Add(Kind, new Items.Extent(new Items.Amount(number.Number, unit, number.Over)));
            at.At = start + count;
            return at.Taken(TokenKind.Value, span);
        }

        public override object? Value(Cursor at, NumberForm form)
        {
            if (form is { Shape: NumberShape.Times, NoUnit: true, Part.Third.Exists: false } && at.Word.Has(SlotKind.Times) && !at.Holds(SlotKind.Times) && form.Second == Math.Truncate(form.Second) && form.Second is > 0 and < 100
                && at.Vocabulary.Units.Find(form.Part.First.Unit.In(at.Line)) is { } each && Fits(each, at.Word))
            {
                // 5min x3: how long each, and how often
                at.Add(SlotKind.Times, new EventCount((int)form.Second, Bound.Exact));
                return new Items.Extent(new Items.Amount(form.First, each, Bound: form.Bound));
            }

            if (form is not { Shape: NumberShape.WithUnit, Unit: { } unit } || !Fits(unit, at.Word))
            {
                return null;
            }

            ImmutableArray<Items.Amount> amounts = Numbers.Amounts(at, form, out _);
            Unit last = amounts[^1].Unit;
            decimal sum = amounts.Length == 1 ? amounts[0].Number : amounts.Sum(amount => amount.Value * amount.Unit.Factor) / last.Factor;
            return sum < ReadingLimits.NumbersBelow ? new Items.Extent(new Items.Amount(sum, last, Bound: form.Bound)) : null;
        }
    }
}
