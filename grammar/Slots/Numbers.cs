using System.Collections.Immutable;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Scanning;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Text;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Grammar.Slots;

/// <summary>Reads a number with what belongs to it, gives it to the slot it fits, and says what is wrong with one that fits none.</summary>
internal static class Numbers
{
    private const int MostBehindUnit = 2;
    private static readonly string[] Over = ["in", "over", "of", "per"];
    private static readonly string[] CountedFor = ["for", "every", "each"];

    /// <summary>Takes the number at the cursor; false, with the cursor where it was, when it may belong to a remark.</summary>
    public static bool Bind(Cursor at, ImmutableArray<SlotReader> slots)
    {
        var part = (NumberPart)at.Part;
        if (at.InRemark)
        {
            return TimeOfDay(at);
        }

        foreach (SlotReader slot in slots)
        {
            if (slot.BindNumber(at, part))
            {
                return true;
            }
        }

        if (at.Word.Has(SlotKind.Note) && !at.Word.Has(SlotKind.Mass) && !at.Word.Has(SlotKind.Amount) && IsOrdinal(at, part) && at.IsWord(at.At + 1) && at.Phrase(at.Vocabulary.Regions, at.At + 1, out _) == 0)
        {
            // "3rd time since July": words, and no number of the observation
            at.Remark.Add(part.Span);
            at.InRemark = true;
            return at.Taken(TokenKind.Text, part.Span);
        }

        int start = at.At;
        if (TimeOfDay(at))
        {
            return true;
        }

        if (Form(at, part) is not { } form)
        {
            at.At = start;
            if (part.Second.Sign(at.Line) == ':' && part.Second.Digits.Length == 2)
            {
                return at.Refuse(part.Span, ProblemRules.BadTime, $"`{at.TextOf(part)}` is not a time of day. Write hours and minutes, such as 07:30 or 6:05pm.");
            }

            return (at.NumberRefusal is not null || !MayBeRemark(at)) && at.Refuse(part.Span, ProblemRules.BadNumber, $"`{at.TextOf(part)}`: {at.NumberRefusal ?? "this is not a size or count that can be"}");
        }

        foreach (SlotReader slot in slots)
        {
            if (slot.Value(at, form) is { } value)
            {
                return Keep(at, slot.Kind, value, form.Span, start);
            }
        }

        bool grade = form is { Shape: NumberShape.Ratio, NoUnit: true, Second: 3 or 4 or 5 or 6 or 10 } && form.First <= form.Second && at.Word.Kind == WordKind.Exam && !at.Word.Has(SlotKind.Score) && at.PresentSign() is not null;
        grade |= form is { Shape: NumberShape.Ratio, NoUnit: true, Second: > 0 } && form.First <= form.Second && at.Word.Word == "wound" && at.Filled.Any(slot => slot.Value is Described { Word.Word: "stitched" or "stitches-out" });
        bool weather = form.Unit is { Quantity: Quantity.Temperature } && at.Word.Word == "walk";
        if ((grade || weather) && at.Word.Has(SlotKind.Note))
        {
            // "tartar 2/4", "walk 20min, 71f out": kept as written
            at.Remark.Add(form.Span);
            return at.Taken(TokenKind.Text, form.Span);
        }

        if (form.Unit is { Quantity: Quantity.Portion } && at.Word.Has(SlotKind.Note) && at.At + 1 < at.Parts.Count && WordSlots.StartsSign(at, at.At + 1))
        {
            // "swelling 50% better": how much belongs to the word behind it, and is kept as written
            at.Remark.Add(form.Span);
            return at.Taken(TokenKind.Text, form.Span);
        }

        bool time = form.Unit is { Quantity: Quantity.Time } || (form.Shape == NumberShape.Bare && at.Word.Kind == WordKind.Care && (at.Filled.Count > 0 || at.Pending is not null) && at.IsWord(at.At + 1) && at.Vocabulary.Units.Find(at.TextAt(at.At + 1)) is { Quantity: Quantity.Time });
        if ((time || (form.Unit is { Quantity: Quantity.Length } && at.Word.Kind == WordKind.Exam && at.PresentSign() is not null)) && at.Word.Has(SlotKind.Note) ? at.Word.Kind != WordKind.Vital : MayBeRemark(at) && !LooksMeant(at, form))
        {
            at.At = start;
            return false;
        }

        Problem problem = Refusals.Of(at, form);
        at.Report(problem);
        return at.Taken(TokenKind.Unknown, form.Span);
    }

    /// <summary>True for <c>2nd</c>: a number in form, a word in meaning. <c>57st</c> is a weight in stones.</summary>
    public static bool IsOrdinal(Cursor at, Part part) =>
        part is NumberPart { BoundSpan.Length: 0, First: { Unit.Length: 2, Digits.Length: <= 2 }, Second.Exists: false } number
        && number.First.Unit.In(at.Line) is { } ending && (ending is "th" || ending.SequenceEqual(at.Line[number.First.Digits.End - 1] switch { '1' => "st", '2' => "nd", '3' => "rd", _ => "th" }));

    /// <summary>A number whose amounts go on behind it: <c>47lb 3oz</c>, <c>2min 30s</c>. The cursor ends on the last part.</summary>
    public static ImmutableArray<Amount> Amounts(Cursor at, NumberForm form, out TextSpan span)
    {
        span = form.Span;
        var first = new Amount(form.First, form.Unit!);
        if (form.Unit!.Quantity is not (Quantity.Mass or Quantity.Time) || !Continues(at, at.At + 1, form.Unit, out Amount more, out int last))
        {
            return [first];
        }

        List<Amount> amounts = [first];
        do
        {
            at.At = last;
            amounts.Add(more);
        }
        while (Continues(at, at.At + 1, more.Unit, out more, out last));
        span = TextSpan.Between(span.Start, at.Part.Span.End);
        return [.. amounts];
    }

    /// <summary>True for <c>2000 mg</c>: an amount, whatever else the digits look like.</summary>
    public static bool UnitFollows(Cursor at, NumberPart part, int index) =>
        !part.Second.Exists && at.IsWord(index + 1) && at.Vocabulary.Units.Find(at.TextAt(index + 1)) is { } unit && FitsAny(at, unit);

    /// <summary>The unit that is meant: a fluid ounce by <c>oz</c> where only a volume fits.</summary>
    public static Unit Meant(Cursor at, Unit unit) =>
        unit.Word == "oz" && at.Word.Has(SlotKind.Volume) ? at.Vocabulary.Units.Find("floz")! : unit;

    public static bool FitsAny(Cursor at, Unit written)
    {
        Unit unit = Meant(at, written);
        foreach (Slot slot in at.Word.Takes)
        {
            if (SlotTable.Row(slot.Kind).Fits(unit, at.Subject))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>
    /// True where words that mean nothing here are kept as a remark, and a number with them. Not so in a vital, whose number is
    /// the point of the line, nor where a slot that needs a number is still empty.
    /// </summary>
    public static bool MayBeRemark(Cursor at) => at.Word.Has(SlotKind.Note) && at.Word.Kind is not (WordKind.Vital or WordKind.Exam or WordKind.Scan)
        && (at.Word.Kind is not (WordKind.Fact or WordKind.Act) || at.First<FreeWords>() is not null);

    /// <summary>A time of day behind the word: <c>8am</c>, <c>6 pm</c>, <c>at 3:15pm</c>, <c>07:30</c>.</summary>
    public static bool TimeOfDay(Cursor at)
    {
        // "given at 11:10 instead of 07:30": when it was not
        bool allowed = !(at.InRemark && at.Is(at.At - 1, "of") && at.Is(at.At - 2, "instead")) && at.Word.Kind is WordKind.Care or WordKind.Vital or WordKind.Exam or WordKind.Scan or WordKind.Act && !at.Word.Has(SlotKind.Topic);
        if (!allowed || TimeReader.Within(at, at.At, out int count) is not { } time)
        {
            return false;
        }

        at.Times.Add(time);
        at.Mark(TokenKind.Time, at.SpanOf(at.At, count));
        at.At += count;
        return true;
    }

    /// <summary>
    /// True for a number that was meant as a value: the first one of a word that takes values, or one with a slip in its unit. It must
    /// not vanish in a remark.
    /// </summary>
    private static bool LooksMeant(Cursor at, NumberForm form) =>
        (at.First<NoteValue>() is null && at.Word.Takes.Any(slot => SlotTable.Units(slot.Kind, at.Word).Length > 0))
        || (form.UnitSpan.Length > 0 && form.Unit is null && Refusals.NearestUnit(at, form.UnitSpan.In(at.Line).ToString()) is not null);

    /// <summary>Puts a value into its slot, or says what stands against it; the cursor is on the value's last part.</summary>
    public static bool Keep(Cursor at, SlotKind kind, object value, TextSpan written, int start)
    {
        object? held = value is NoteValue && kind != SlotKind.Reference ? at.First<NoteValue>() : at.Get<object>(kind);
        if (held is CountOverTime or PerMinute && value is CountOverTime or PerMinute && SameRate(held, value, out NoteValue? counted))
        {
            // 16 (8 in 30s): the count says more than what follows from it
            at.Set(kind, counted!);
            return at.Taken(TokenKind.Value, TextSpan.Between(at.Parts[start].Span.Start, at.Part.Span.End));
        }

        if (held is not null && at.Word.Kind == WordKind.Fact && at.Word.Has(SlotKind.Note))
        {
            // a plan in steps is kept as it is written
            at.At = start;
            return false;
        }

        if (held is not null && at.Word.Kind == WordKind.Care && at.Word.Has(SlotKind.Note) && !at.Word.Has(SlotKind.Medicine) && kind == SlotKind.Times && at.IsWord(at.At + 1))
        {
            // "soft poop 3x, 1 worm": what is counted is something else
            at.At = start;
            return false;
        }

        if (held is Portion portion && value is Measure amount && at.Word.Has(SlotKind.Portion) && portion.Span.End <= written.Start && portion.Span.Start >= at.HeadSpan.End)
        {
            // "ate 3/4 of wet, 60g": how much the part was, as written
            written = TextSpan.Between(written.Start, Math.Max(written.End, amount.Span.End));
            at.Remark.Add(written);
            return at.Taken(TokenKind.Text, written);
        }

        TextSpan span = value is NoteValue { Span: var own } && own.Length > 0 ? own : written;
        if (held is not null)
        {
            at.SaidTwice(span, held is NoteValue { Span: var before } ? before.In(at.Line).ToString() : null);
            at.At++;
            return true;
        }

        at.Add(kind, value);
        return at.Taken(TokenKind.Value, span);
    }

    private static bool SameRate(object held, object value, out NoteValue? counted)
    {
        counted = held as CountOverTime ?? value as NoteValue;
        return PerMinuteOf(held) is { } one && PerMinuteOf(value) is { } other && Math.Abs(one - other) < 1;
    }

    private static decimal? PerMinuteOf(object value) => value switch
    {
        PerMinute rate => rate.Number,
        CountOverTime { Time: > 0 } count => count.Count * 60 / (count.Time * count.Unit.Factor),
        _ => null,
    };

    /// <summary>The number at the cursor with its unit; the cursor ends on its last part. Null where it can be no number.</summary>
    private static NumberForm? Form(Cursor at, NumberPart part)
    {
        NumberShape shape = part.Second.Sign(at.Line) switch
        {
            '/' when !part.Third.Exists => NumberShape.Ratio,
            'x' => NumberShape.Times,
            '-' when !part.Third.Exists => NumberShape.Spread,
            '\0' => NumberShape.Bare,
            _ => (NumberShape)(-1),
        };
        if (shape < 0 || at.Digits(part.First.Digits) is not { } first)
        {
            return null;
        }

        decimal second = 0;
        if (part.Second.Exists)
        {
            if (at.Digits(part.Second.Digits) is not { } read)
            {
                return null;
            }

            second = read;
        }

        if (shape == NumberShape.Bare && RatioInWords(at, part, first) is { } ratio)
        {
            return ratio;
        }

        TextSpan span;
        TextSpan unitSpan;
        if (shape == NumberShape.Bare && Half(at, part) is { } half)
        {
            // "12 1/2 lb"
            at.At++;
            first += half.Part;
            span = WithUnitWord(at, NumberShape.Ratio, half.Of, out unitSpan);
            span = TextSpan.Between(part.Span.Start, span.End);
        }
        else
        {
            span = WithUnitWord(at, shape, part, out unitSpan);
        }

        if (shape == NumberShape.Bare && unitSpan.Length > 0)
        {
            shape = NumberShape.WithUnit;
        }

        if (unitSpan.In(at.Line) is "°")
        {
            (shape, unitSpan) = (NumberShape.Bare, default);
        }

        Unit? unit = unitSpan.Length == 0 ? null : at.Vocabulary.Units.Find(at.WithSingleBlanks(unitSpan));
        return new NumberForm(part, shape, span, first, second, unit is null ? null : Meant(at, unit), unitSpan, at.BoundOf(part));
    }

    /// <summary>The <c>1/2 lb</c> behind the whole number of <c>12 1/2 lb</c>, where a unit makes it one; amounts of medicine keep theirs exact.</summary>
    private static (decimal Part, NumberPart Of)? Half(Cursor at, NumberPart part) =>
        !at.Word.Has(SlotKind.Amount) && part.First.Unit.Length == 0 && at.At + 1 < at.Parts.Count && at.OnlyBlanks(at.At, 2)
        && at.Parts[at.At + 1] is NumberPart { BoundSpan.Length: 0, First.Unit.Length: 0, Third.Exists: false } half && half.Second.Sign(at.Line) == '/'
        && at.Digits(half.First.Digits) is { } over && at.Digits(half.Second.Digits) is { } under && over < under
        && at.Vocabulary.Units.Find(half.Second.Unit.Length > 0 ? half.Second.Unit.In(at.Line) : at.IsWord(at.At + 2) ? at.TextAt(at.At + 2) : default) is { } unit && FitsAny(at, unit)
            ? (over / under, half) : null;

    /// <summary><c>24 in 15 seconds</c>, <c>9 breaths in 30s</c>, <c>5 out of 9</c>.</summary>
    private static NumberForm? RatioInWords(Cursor at, NumberPart part, decimal first)
    {
        int index = at.At + 1;
        index += at.Word.Has(SlotKind.Rate) && at.IsWord(index) && at.Vocabulary.Fixed("counted").Find(at.TextAt(index)) is not null ? 1 : 0;
        if (!at.IsWord(index))
        {
            return null;
        }

        int joining = at.Is(index, "out") && at.Is(index + 1, "of") ? 2
            : Array.Exists(Over, word => at.Is(index, word)) || (at.Word.Has(SlotKind.Rate) && Array.Exists(CountedFor, word => at.Is(index, word))) ? 1 : 0;
        if (part.First.Unit.Length > 0 || joining == 0 || !(at.Word.Has(SlotKind.Rate) || at.Word.Has(SlotKind.Score) || at.Word.Has(SlotKind.Portion) || at.Word.Has(SlotKind.Count) || at.Word.Has(SlotKind.Pressure))
            || index + joining >= at.Parts.Count || at.Parts[index + joining] is not NumberPart { BoundSpan.Length: 0, Second.Exists: false } under
            || at.Digits(under.First.Digits) is not { } second)
        {
            return null;
        }

        at.At = index + joining;
        TextSpan end = WithUnitWord(at, NumberShape.Ratio, under, out TextSpan unitSpan);
        Unit? unit = unitSpan.Length == 0 ? null : at.Vocabulary.Units.Find(at.WithSingleBlanks(unitSpan));
        return new NumberForm(part, NumberShape.Ratio, TextSpan.Between(part.Span.Start, end.End), first, second, unit, unitSpan, at.BoundOf(part));
    }

    /// <summary>The unit of the part's last number; where it has none, the next word when that is a unit that fits.</summary>
    private static TextSpan WithUnitWord(Cursor at, NumberShape shape, NumberPart part, out TextSpan unitSpan)
    {
        Operand last = part.Third.Exists ? part.Third : part.Second.Exists ? part.Second : part.First;
        unitSpan = last.Unit;
        if (LongUnit(at, unitSpan, at.At + 1, out int more) is { } whole)
        {
            at.At += more;
            unitSpan = whole;
            return TextSpan.Between(part.Span.Start, unitSpan.End);
        }

        if (unitSpan.Length > 0 || !at.IsWord(at.At + 1) || !at.OnlyBlanks(at.At, 2))
        {
            return part.Span;
        }

        if (at.IsWord(at.At + 2) && at.Vocabulary.IsDescribing(at.TextAt(at.At + 1).ToString()) && at.Vocabulary.Units.Find(at.TextAt(at.At + 1)) is null
            && at.Vocabulary.Units.Find(at.TextAt(at.At + 2)) is { Quantity: Quantity.Dose } counted && FitsAny(at, counted))
        {
            // "4 large clumps", "2 small tablets": how they were is kept as written
            at.Remark.Add(at.Parts[at.At + 1].Span);
            at.Mark(TokenKind.Text, at.Parts[at.At + 1].Span);
            unitSpan = at.Parts[at.At + 2].Span;
            at.Mark(TokenKind.Value, unitSpan);
            at.At += 2;
            return part.Span;
        }

        int count = at.Phrase(at.Vocabulary.Units, at.At + 1, out Unit? unit);
        bool times = at.Word.Has(SlotKind.Times) && (at.Is(at.At + 1, "x") || at.Is(at.At + 1, "times"));
        bool seconds = shape == NumberShape.Ratio && at.Word.Has(SlotKind.Rate) && unit?.Quantity == Quantity.Time;
        bool aside = unit?.Quantity is Quantity.Time or Quantity.Length && (at.Word.Kind == WordKind.Exam || FactSlots.IsSignalment(at.Word));
        bool next = at.At + 2 < at.Parts.Count && at.Parts[at.At + 2].Kind == PartKind.Number && at.Vocabulary.Starting(at.TextAt(at.At + 1)) is { Kind: WordKind.Vital };
        bool wrong = unit is not null && at.Word.Kind == WordKind.Vital && shape == NumberShape.Bare && !next && !at.TextAt(at.At + 1).Equals("in", StringComparison.OrdinalIgnoreCase) && !(at.IsWord(at.At + 2) && Head.At(at, at.At + 1, out _, first: true) is { Lead: not null });
        if (!times && (unit is null || !(seconds || wrong || aside || FitsAny(at, unit))))
        {
            return part.Span;
        }

        count = Math.Max(1, count);
        unitSpan = at.SpanOf(at.At + 1, count);
        at.At += count;
        return TextSpan.Between(part.Span.Start, unitSpan.End);
    }

    /// <summary>A unit of several words whose first stands right behind the number: <c>12fluid ounces</c>, <c>90beats a minute</c>; null where there is none.</summary>
    public static TextSpan? LongUnit(Cursor at, TextSpan attached, int index, out int more)
    {
        for (more = 1; more <= MostBehindUnit && attached.Length > 0 && at.IsWord(index + more - 1) && at.Vocabulary.Units.Find(attached.In(at.Line)) is null; more++)
        {
            var whole = TextSpan.Between(attached.Start, at.Parts[index + more - 1].Span.End);
            if (at.Vocabulary.Units.Find(at.WithSingleBlanks(whole)) is not null)
            {
                return whole;
            }
        }

        more = 0;
        return null;
    }

    /// <summary>True for the <c>3oz</c> of <c>47lb 3oz</c>: the same quantity in a smaller unit that goes into the larger a whole number of times.</summary>
    private static bool Continues(Cursor at, int index, Unit before, out Amount more, out int last)
    {
        more = default;
        last = index;
        if (index >= at.Parts.Count || at.Parts[index] is not NumberPart { BoundSpan.Length: 0, Second.Exists: false } part)
        {
            return false;
        }

        TextSpan unitSpan = part.First.Unit;
        if (unitSpan.Length == 0 && at.IsWord(index + 1))
        {
            last = index + 1;
            unitSpan = at.Parts[last].Span;
        }

        if (at.Vocabulary.Units.Find(at.WithSingleBlanks(unitSpan)) is not { } unit || unit.Quantity != before.Quantity || unit.Factor >= before.Factor
            || before.Factor % unit.Factor != 0 || at.Digits(part.First.Digits) is not { } number)
        {
            return false;
        }

        more = new Amount(number, unit);
        return true;
    }
}
