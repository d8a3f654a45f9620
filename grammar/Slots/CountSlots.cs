using System.Collections.Immutable;
using System.Globalization;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Scanning;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Text;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Grammar.Slots;

/// <summary>How often, and how many of how many.</summary>
internal static class CountSlots
{
    private const int MostTimes = 999;

    public static SlotReader Times { get; } = new TimesSlot();

    public static ImmutableArray<SlotReader> Others { get; } = [new CountSlot()];

    /// <summary>A number in words at <paramref name="index"/>: <c>half</c>, <c>one</c>, <c>a</c>, <c>two</c>; null where none stands.</summary>
    public static (decimal Number, decimal Over)? NumberWord(Cursor at, int index, out int count)
    {
        count = at.Phrase(at.Vocabulary.NumberWords, index, out FixedWord? word);
        if (count == 0)
        {
            return null;
        }

        int slash = word!.Word.IndexOf('/', StringComparison.Ordinal);
        return slash < 0
            ? (decimal.Parse(word.Word, CultureInfo.InvariantCulture), 1)
            : (decimal.Parse(word.Word.AsSpan(0, slash), NumberStyles.None, CultureInfo.InvariantCulture), decimal.Parse(word.Word.AsSpan(slash + 1), NumberStyles.None, CultureInfo.InvariantCulture));
    }

    /// <summary>True for <c>3 or 4 times</c>, <c>3-4 times</c>: how often, between two numbers.</summary>
    public static bool IsRange(Cursor at) => at.Word.Has(SlotKind.Times) && at.HasPart && at.Part is NumberPart { Third.Exists: false, BoundSpan.Length: 0 } from
        && (from.Second.Exists ? from.Second.Sign(at.Line) == '-' && (from.Second.Unit.In(at.Line) is "x" || at.Is(at.At + 1, "times"))
            : from.First.Unit.Length == 0 && (at.Is(at.At + 1, "or") || at.Is(at.At + 1, "to")) && at.At + 2 < at.Parts.Count && at.Parts[at.At + 2] is NumberPart to && (to.First.Unit.In(at.Line) is "x" || at.Is(at.At + 3, "times") || at.Is(at.At + 3, "x")));

    private sealed class TimesSlot() : SlotReader(SlotKind.Times)
    {
        public override string Hint(LineWord word) => "a number of times, such as 2x";

        /// <summary><c>x3</c>, <c>twice</c>, <c>three times</c>, <c>none</c>.</summary>
        public override bool BindWord(Cursor at)
        {
            ReadOnlySpan<char> text = at.TextOf(at.Part);
            if (text.Length > 1 && Scanners.OperatorScanner.IsTimes(text[0]) && !(at.IsWord(at.At + 1) && at.Vocabulary.Units.Find(at.TextAt(at.At + 1)) is { Quantity: Quantity.Time }) && text[1..].IndexOfAnyExceptInRange('0', '9') < 0)
            {
                return text.Length <= 4
                    ? Keep(at, int.Parse(text[1..], CultureInfo.InvariantCulture), Bound.Exact, at.Part.Span)
                    : at.Refuse(at.Part.Span, ProblemRules.BadNumber, $"`{text}`: expected a whole number of times, such as 2x");
            }

            int count = at.Phrase(at.Vocabulary.TimesWords, at.At, out FixedWord? word);
            if (count > 0 && !(at.Is(at.At + count, "a") || at.Is(at.At + count, "per") || at.Is(at.At + count, "daily")))
            {
                TextSpan span = at.SpanOf(at.At, count);
                at.At += count - 1;
                return Keep(at, int.Parse(word!.Word, CultureInfo.InvariantCulture), Bound.Exact, span);
            }

            if (NumberWord(at, at.At, out count) is { Over: 1 } before && before.Number > 0 && !at.Is(0, "a") && !at.Is(0, "an") && CountsHead(at, count))
            {
                TextSpan span = at.SpanOf(0, count);
                at.At += count - 1;
                return Keep(at, (int)before.Number, Bound.Exact, span);
            }

            if (at.Word.Has(SlotKind.Count) && NumberWord(at, at.At, out count) is { Over: 1 } off && at.Phrase(at.Vocabulary.Fixed("stitch-off"), at.At + count, out _) > 0)
            {
                // "one out middle"
                TextSpan span = at.SpanOf(at.At, count);
                at.At += count - 1;
                return Keep(at, (int)off.Number, Bound.Exact, span);
            }

            if (NumberWord(at, at.At, out count) is { Over: 1 } number && at.Is(at.At + count, "times"))
            {
                TextSpan span = at.SpanOf(at.At, count + 1);
                at.At += count;
                return Keep(at, (int)number.Number, Bound.Exact, span);
            }

            return false;
        }

        /// <summary>True for the number of <c>one poop</c>, <c>two short walks</c>: nothing but signs of it stand between.</summary>
        private static bool CountsHead(Cursor at, int count) => at.At == 0 && at.HeadSpan.Length > 0 && at.Part.Span.End < at.HeadSpan.Start
            && Enumerable.Range(count, at.Parts.Count - count).TakeWhile(index => at.Parts[index].Span.End <= at.HeadSpan.Start).All(index => at.IsWord(index) && !at.StartsSegment(index) && at.Vocabulary.Describing(at.Subject).Find(at.TextAt(index)) is not null);

        public override object? Value(Cursor at, NumberForm form)
        {
            bool ofHead = form is { Shape: NumberShape.Bare } && !at.Word.Has(SlotKind.Count) && CountsHead(at, 1);
            bool marked = ofHead || form is { Shape: NumberShape.Bare or NumberShape.WithUnit } && form.UnitSpan.In(at.Line) is "x" or "X" or "×" or "times" or "time";
            bool stitches = CountSlot.CountsMissing(at, form);
            bool counts = marked || stitches || (form.Shape == NumberShape.Bare && at.BoundInWords == Bound.Exact && at.Times.Count == 0 && !at.HeadSpan.In(at.Line).EndsWith("score", StringComparison.OrdinalIgnoreCase) && at.Word.Takes.First(slot => slot.Kind is not (SlotKind.Words or SlotKind.Site or SlotKind.Ok)).Kind == SlotKind.Times);
            return counts && form.First == Math.Truncate(form.First) && form.First <= MostTimes && !HasOther(at, form, marked)
                ? new EventCount((int)form.First, form.Bound)
                : null;
        }

        /// <summary>A bare number is not a count where something behind it says what it counts.</summary>
        private static bool HasOther(Cursor at, NumberForm form, bool marked) =>
            !marked && at.IsWord(at.At + 1) && at.OnlyBlanks(at.At, 2) && !WordSlots.StartsSign(at, at.At + 1) && Modifiers.At(at, at.At + 1) is null
            && at.Phrase(at.Vocabulary.Ok, at.At + 1, out _) == 0 && at.Phrase(at.Vocabulary.Small, at.At + 1, out _) == 0;

        private static bool Keep(Cursor at, int number, Bound bound, TextSpan span)
        {
            if (at.Get<EventCount>(SlotKind.Times) is { } before)
            {
                at.SaidTwice(span, $"{before.Number}x");
                at.At++;
                return true;
            }

            at.Add(SlotKind.Times, new EventCount(number, bound));
            return at.Taken(TokenKind.Value, span);
        }
    }

    /// <summary><c>13/14</c>, <c>14</c>: how many of how many, as with stitches.</summary>
    private sealed class CountSlot() : SlotReader(SlotKind.Count)
    {
        /// <summary>True for the 1 of <c>1 staple missing</c> and <c>stitches pulled 2</c>: so many are off, and not in place.</summary>
        public static bool CountsMissing(Cursor at, NumberForm form) => at.Word.Has(SlotKind.Count) && form.Shape == NumberShape.Bare
            && ((at.IsWord(at.At + 1) && TextSpan.Between(form.Span.End, at.Parts[at.At + 1].Span.Start).In(at.Line).IndexOfAny(",;.") < 0 && at.Phrase(at.Vocabulary.Fixed("stitch-off"), at.At + 1, out _) > 0)
                || (at.IsWord(at.At - 1) && !at.StartsSegment(at.At) && at.Phrase(at.Vocabulary.Fixed("stitch-off"), at.At - 1, out _) > 0));

        public override string Hint(LineWord word) => "how many, such as 13/14";

        public override object? Value(Cursor at, NumberForm form) => CountsMissing(at, form) ? null : form switch
        {
            { Shape: NumberShape.Ratio, NoUnit: true, Second: > 0 } when form.First <= form.Second => new Items.Score(form.Span, form.Bound, form.First, form.Second),
            { Shape: NumberShape.Bare, First: > 0 } => new Items.Score(form.Span, form.Bound, form.First, form.First),
            { Shape: NumberShape.WithUnit, First: > 0 } when form.UnitSpan.In(at.Line) is "x" => new Items.Score(form.Span, form.Bound, form.First, form.First),
            _ => null,
        };
    }
}
