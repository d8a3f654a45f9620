using System.Collections.Immutable;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Scanning;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Text;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Grammar.Slots;

/// <summary>Sizes, and amounts of medicine and food.</summary>
internal static class AmountSlots
{
    public static ImmutableArray<SlotReader> All { get; } = [new Size(), new Strength(), new Amount()];

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

            int near = at.Phrase(at.Vocabulary.Bounds, at.At, out FixedWord? bound) is > 0 and var words && bound!.Word == "about" ? words : 0;
            if (CountSlots.NumberWord(at, at.At + near, out int number) is { } length && (number += at.Is(at.At + near + number, "an") || at.Is(at.At + near + number, "a") ? 1 : 0) > 0 && at.IsWord(at.At + near + number) && at.Vocabulary.Units.Find(at.TextAt(at.At + near + number)) is { } unit && Fits(unit, at.Word))
            {
                // "about an inch"
                TextSpan span = at.SpanOf(at.At, near + number + 1);
                at.At += near + number;
                return Numbers.Keep(at, SlotKind.Size, new Diameters(span, near > 0 ? Bound.About : Bound.Exact, [new Items.Amount(length.Number / length.Over, unit)]), span, at.At);
            }

            int index = at.At;
            bool joined = false;
            foreach (string word in (ReadOnlySpan<string>)["about", "as", "large", "the", "size", "of", "like", "as", "big", "as", "a", "an"])
            {
                bool here = at.Is(index, word);
                index += here ? 1 : 0;
                joined |= here && word is "like" or "of";
            }

            int count = at.Phrase(at.Vocabulary.Objects, index, out ComparisonObject? thing);
            if (count == 0)
            {
                return joined && at.Is(at.At, "like") && !(at.Word.Kind == WordKind.Exam && at.SaysSomething) && Unknown(at, index);
            }

            count += index - at.At;
            count += at.Is(at.At + count, "size") || at.Is(at.At + count, "sized") ? 1 : 0;
            return Take(at, thing!, count);
        }

        public override bool BindNumber(Cursor at, NumberPart part)
        {
            int start = at.At;
            return Lengths(at, part) is { } size && Numbers.Keep(at, SlotKind.Size, size, size.Span, start);
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

        /// <summary><c>12mm</c>, <c>12x9mm</c>, <c>2 1/4 in x 1/2 in</c>: up to three lengths; one without a unit has that of the last. The cursor ends on the last part.</summary>
        private Diameters? Lengths(Cursor at, NumberPart part)
        {
            List<(decimal Number, Unit? Unit)> lengths = [];
            int end = part.First.Digits.Start;
            int place = end;
            while (place >= 0 && lengths.Count < 3 && Number(at, ref place) is { } number)
            {
                lengths.Add((number, UnitAt(at, ref place)));
                end = place;
                place = BehindSign(at.Line, place);
            }

            if (lengths is [] || lengths[^1].Unit is not { } last || lengths.Exists(length => length.Number == 0))
            {
                return null;
            }

            int index = at.At;
            while (index < at.Parts.Count && at.Parts[index].Span.End < end)
            {
                index++;
            }

            if (index == at.Parts.Count || at.Parts[index].Span.End != end)
            {
                return null;
            }

            at.At = index;
            return new Diameters(TextSpan.Between(part.Span.Start, end), at.BoundOf(part), [.. lengths.Select(length => new Items.Amount(length.Number, length.Unit ?? last))]);
        }

        /// <summary>A number, a fraction or both: <c>2</c>, <c>1/2</c>, <c>2 1/4</c>.</summary>
        private static decimal? Number(Cursor at, ref int place)
        {
            if (Digits(at, ref place) is not { } whole)
            {
                return null;
            }

            int behind = place;
            if (Over(at, whole, ref behind) is { } fraction)
            {
                place = behind;
                return fraction;
            }

            behind = Blanks(at.Line, place);
            if (behind > place && Digits(at, ref behind) is { } over && Over(at, over, ref behind) is < 1 and var rest)
            {
                place = behind;
                return whole + rest;
            }

            return whole;
        }

        private static decimal? Over(Cursor at, decimal over, ref int place) =>
            place < at.Line.Length && at.Line[place++] == '/' && Digits(at, ref place) is > 0 and var under ? over / under : null;

        private static decimal? Digits(Cursor at, ref int place)
        {
            int length = Scanners.NumberScanner.Length(at.Line.AsSpan(place));
            var digits = new TextSpan(place, length);
            place += length;
            return length > 0 ? at.Digits(digits) : null;
        }

        /// <summary>The unit of length behind a number, with or without a blank; null, with the place where it was, where none is there.</summary>
        private Unit? UnitAt(Cursor at, ref int place)
        {
            int start = Blanks(at.Line, place);
            int end = start;
            while (end < at.Line.Length && (char.IsLetter(at.Line[end]) || at.Line[end] == '"'))
            {
                end++;
            }

            if (at.Vocabulary.Units.Find(at.Line.AsSpan(start, end - start)) is not { } unit || !Fits(unit, at.Word))
            {
                return null;
            }

            place = end;
            return unit;
        }

        /// <summary>Where the next length starts behind <c>x</c>, <c>*</c> or <c>by</c>; -1 where none of them stands.</summary>
        private static int BehindSign(string line, int place)
        {
            int sign = Blanks(line, place);
            ReadOnlySpan<char> rest = line.AsSpan(sign);
            int length = rest is ['x' or 'X' or '×' or '*', ..] ? 1 : rest is ['b' or 'B', 'y' or 'Y', ' ', ..] ? 2 : 0;
            return length == 0 ? -1 : Blanks(line, sign + length);
        }

        private static int Blanks(string line, int place)
        {
            while (place < line.Length && Scanners.IsBlank(line[place]))
            {
                place++;
            }

            return place;
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

            if (PerVolume(at, part) is { Length: > 0 } holds)
            {
                // 75mg/ml 2ml, 100 U/mL 7 units: what one millilitre holds, then how much
                int parts = part.First.Unit.Length > 0 ? 1 : 2;
                at.Add(SlotKind.Strength, new FreeWords(holds, at.WithSingleBlanks(holds)));
                at.Mark(TokenKind.Name, holds);
                at.At += parts;
                return true;
            }

            int index = at.At + (part.First.Unit.Length == 0 ? 2 : 1);
            TextSpan unitSpan = part.First.Unit.Length > 0 ? part.First.Unit : at.IsWord(at.At + 1) ? at.Parts[at.At + 1].Span : default;
            if (at.Vocabulary.Units.Find(unitSpan.In(at.Line)) is not { Quantity: Quantity.Mass or Quantity.Volume } unit)
            {
                return false;
            }

            // a plan names the strength first: "40mg 1/2 tablet", "75 mg tablets, one every 8 hours"
            bool plural = TabletAt(at, index) && index + 1 < at.Parts.Count && Counted(at, index + 1);
            bool one = !plural && at.Word.Kind == WordKind.Fact && One(at, index);
            bool counted = plural || ((at.Word.Kind == WordKind.Fact || CountsOne(at, index)) && (Counted(at, index) || one) && at.Line[at.Parts[index].Span.Start - 1] != '(');
            if (!counted)
            {
                return false;
            }

            index -= plural || one ? 0 : 1;
            TextSpan span = TextSpan.Between(part.Span.Start, at.Parts[index].Span.End);
            if (one)
            {
                at.Add(SlotKind.Amount, new Measure(span, Bound.Exact, [new Items.Amount(number, unit)]));
                at.Mark(TokenKind.Value, span);
                at.At = index + 1;
                return true;
            }

            at.Add(SlotKind.Strength, new FreeWords(span, at.WithSingleBlanks(span)));
            at.Add(SlotKind.StrengthOfOne, new Measure(span, Bound.Exact, [new Items.Amount(number, unit)]));
            at.Mark(TokenKind.Name, span);
            at.At = index + 1;
            return true;
        }

        /// <summary>The <c>75mg/ml</c> before an amount, or <c>0.3%</c>; empty where none stands.</summary>
        private static TextSpan PerVolume(Cursor at, NumberPart part)
        {
            bool apart = part.First.Unit.Length == 0;
            TextSpan unitSpan = !apart ? part.First.Unit : at.IsWord(at.At + 1) && at.OnlyBlanks(at.At, 2) ? at.Parts[at.At + 1].Span : default;
            ReadOnlySpan<char> unit = unitSpan.In(at.Line);
            int amount = at.At + (apart ? 2 : 1);
            if (unit is "%")
            {
                return TextSpan.Between(part.Span.Start, unitSpan.End);
            }

            return unit.IndexOf('/') is > 0 and var slash && at.Vocabulary.Units.Find(unit) is null
                && at.Vocabulary.Units.Find(unit[..slash]) is { Quantity: Quantity.Mass or Quantity.Dose } && at.Vocabulary.Units.Find(unit[(slash + 1)..]) is { Quantity: Quantity.Volume }
                && amount < at.Parts.Count && at.Parts[amount].Kind == PartKind.Number
                    ? TextSpan.Between(part.Span.Start, unitSpan.End) : default;
        }

        /// <summary>True where a count of tablets follows: only then is the first amount the strength.</summary>
        private static bool Counted(Cursor at, int index) =>
            index < at.Parts.Count && at.Parts[index] is NumberPart number
                ? (number is { Third.Exists: false, First.Unit.Length: 0, Second.Unit.Length: 0 } && TabletAt(at, index - 1) && EndsCount(at, index + 1)) || (!number.Second.Exists || number.Second.Sign(at.Line) == '/') && (IsTablet(at, (number.Second.Exists ? number.Second : number.First).Unit) || TabletAt(at, index + 1)
                    || (index + 1 < at.Parts.Count && at.Parts[index + 1] is NumberPart half && (IsTablet(at, half.Second.Unit) || TabletAt(at, index + 2))))
                : CountSlots.NumberWord(at, index, out int count) is not null
                    && (TabletAt(at, index + count + (at.Is(index + count, "of") || at.Is(index + count, "a") ? 1 : 0)) || (TabletAt(at, index - 1) && EndsCount(at, index + count)));

        /// <summary>True for <c>5 mg, one in the morning</c> and <c>5mg tab SID</c>: one is meant.</summary>
        private static bool One(Cursor at, int index) => index + 1 < at.Parts.Count && EndsCount(at, index + 1)
            && (at.Is(index, "one") || (TabletAt(at, index) && !at.TextAt(index).EndsWith("s", StringComparison.OrdinalIgnoreCase)));

        /// <summary>True for the <c>1 tablet</c> of <c>gave carprofen 75mg 1 tablet</c>: strength and dose are the same then.</summary>
        private static bool CountsOne(Cursor at, int index) => index + 1 < at.Parts.Count && at.TextAt(index) is "1" or "one" or "a" && at.Parts[index + 1].Kind == PartKind.Word;

        private static bool TabletAt(Cursor at, int index) => at.IsWord(index) && IsTablet(at, at.Parts[index].Span);

        private static bool IsTablet(Cursor at, TextSpan unit) => unit.Length > 0 && at.Vocabulary.Units.Find(unit.In(at.Line)) is { Word: "tablet" or "capsule" or "puff" or "spray" or "chew" };
    }

    /// <summary>True behind the <c>one</c> of <c>75mg tablets, one every 12h</c>: a count of what was named before.</summary>
    private static bool EndsCount(Cursor at, int index) => index >= at.Parts.Count || ScheduleSlots.Starts(at, index) || at.Phrase(at.Vocabulary.Fixed("day-part"), index, out _) > 0 || at.Vocabulary.RouteShort.Find(at.TextAt(index)) is not null || at.Phrase(at.Vocabulary.States(StateSlots.ScopeOf(at)), index, out _) > 0;

    /// <summary>An amount of medicine or food: <c>5mg</c>, <c>1/2 tablet</c>, <c>1 1/2 tablets</c>, <c>half a tablet</c>.</summary>
    private sealed class Amount() : SlotReader(SlotKind.Amount)
    {
        // dividing by it takes the zeros from the end of a number: 150.0
        private const decimal OneWithZeros = 1.000000000000000000000000000000m;

        public override string Hint(LineWord word) => word.Word == "food" ? "an amount such as 60g" : "an amount such as 5mg or 1/2 tablet";

        public override ImmutableArray<string> Units(LineWord word) => word.Word == "food" ? ["g", "oz", " can"] : ["mg", "ml", " tablet"];

        public override bool Fits(Unit unit, LineWord word) => word.Has(SlotKind.Volume) ? unit.Word == "clump"
            : (unit.Quantity is Quantity.Mass or Quantity.Volume or Quantity.Dose or Quantity.DoseRate) && !(unit.Word == "unit" && !word.Has(SlotKind.Medicine));

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
            if (at.Get<Measure>(SlotKind.StrengthOfOne) is not null && EndsCount(at, index))
            {
                index--;
            }

            if (at.IsWord(index + 1) && at.Vocabulary.Units.Find(at.TextAt(index)) is null && at.Vocabulary.IsDescribing(at.TextAt(index).ToString()) && at.Vocabulary.Units.Find(at.TextAt(index + 1)) is { Quantity: Quantity.Dose })
            {
                // "three large clumps": how they were is kept as written
                at.Remark.Add(at.Parts[index].Span);
                at.Mark(TokenKind.Text, at.Parts[index].Span);
                index++;
            }

            if (!at.IsWord(index) || (at.Vocabulary.Units.Find(at.TextAt(index)) ?? Tablet(at, index)) is not { } unit || !Fits(unit, at.Word))
            {
                return false;
            }

            TextSpan span = at.SpanOf(at.At, index + 1 - at.At);
            Items.Amount amount = number.Over == 1 ? new(number.Number, unit) : new(number.Number, unit, number.Over);
            at.Add(SlotKind.Amount, Whole(at, new Measure(span, Bound.Exact, [amount])));
            at.Mark(TokenKind.Value, span);
            at.At = index + 1;
            return true;
        }

        public override object? Value(Cursor at, NumberForm form)
        {
            if (form is { Shape: NumberShape.Ratio, Unit: { } part, Second: > 0 } && Fits(part, at.Word))
            {
                return Whole(at, new Measure(form.Span, form.Bound, [new Items.Amount(form.First, part, form.Second)]));
            }

            if (form is { Shape: NumberShape.Bare or NumberShape.Ratio, NoUnit: true } && Tablet(at, at.At) is { } tablet)
            {
                // "50mg capsules, 1 every 12h"
                return Whole(at, new Measure(form.Span, form.Bound, [form.Shape == NumberShape.Bare ? new(form.First, tablet) : new(form.First, tablet, form.Second)]));
            }

            if (form is { Shape: NumberShape.Bare } && Mixed(at, form.First, out TextSpan span) is { } mixed)
            {
                return Whole(at, new Measure(TextSpan.Between(form.Span.Start, span.End), form.Bound, [mixed]));
            }

            return form is { Shape: NumberShape.WithUnit, Unit: { } unit } && Fits(unit, at.Word) ? Whole(at, MeasureSlots.MeasureOf(at, form)) : null;
        }

        private static Unit? Tablet(Cursor at, int index) => at.Get<Measure>(SlotKind.StrengthOfOne) is not null && EndsCount(at, index + 1) ? at.Vocabulary.Units.Find("tablet") : null;

        private static Items.Amount In(Items.Amount one, Items.Amount many)
        {
            decimal whole = one.Number * many.Number;
            bool divides = decimal.Round(whole / many.Over, 4) * many.Over == whole;
            return new Items.Amount((divides ? whole / many.Over : whole) / OneWithZeros, one.Unit, divides ? 1 : many.Over);
        }

        /// <summary>The amount in the unit of one tablet's strength, where that is written.</summary>
        private static Measure Whole(Cursor at, Measure count) =>
            at.Get<Measure>(SlotKind.StrengthOfOne) is { Amounts: [var one] } && count.Amounts is [{ Unit.Word: "tablet" or "capsule" } many]
                ? count with { Amounts = [In(one, many)] }
                : count;

        /// <summary>The <c>1/2 tablets</c> behind the whole number of <c>1 1/2 tablets</c>.</summary>
        private Items.Amount? Mixed(Cursor at, decimal whole, out TextSpan span)
        {
            span = default;
            if (at.At + 1 >= at.Parts.Count || at.Parts[at.At + 1] is not NumberPart { BoundSpan.Length: 0, First.Unit.Length: 0, Third.Exists: false } part
                || part.Second.Sign(at.Line) != '/' || at.Digits(part.First.Digits) is not { } over || at.Digits(part.Second.Digits) is not { } under
                || over >= under || whole * under >= ReadingLimits.NumbersBelow / 2)
            {
                return null;
            }

            int apart = part.Second.Unit.Length > 0 ? 0 : at.Phrase(at.Vocabulary.Units, at.At + 2, out _);
            TextSpan unitSpan = apart > 0 ? at.SpanOf(at.At + 2, apart) : part.Second.Unit;
            if (Numbers.LongUnit(at, unitSpan, at.At + 2, out int more) is { } longer)
            {
                (unitSpan, apart) = (longer, more);
            }

            if (at.Vocabulary.Units.Find(at.WithSingleBlanks(unitSpan)) is not { } unit || !Fits(unit, at.Word))
            {
                return null;
            }

            at.At += 1 + apart;
            span = at.Part.Span;
            return new Items.Amount((whole * under) + over, unit, under);
        }
    }
}
