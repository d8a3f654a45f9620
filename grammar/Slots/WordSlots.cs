using System.Collections.Immutable;
using HealthNotes.Grammar.Items;
using HealthNotes.Grammar.Scanning;
using HealthNotes.Grammar.Syntax;
using HealthNotes.Grammar.Text;
using HealthNotes.Grammar.Vocabulary;

namespace HealthNotes.Grammar.Slots;

/// <summary>What was seen, in words: signs, ok, parts of a meal.</summary>
internal static class WordSlots
{
    /// <summary>Signs of two words or more: <c>toe touching</c> is looked for before the site <c>toe</c>.</summary>
    public static SlotReader Phrases { get; } = new PhraseSlot();

    /// <summary>Signs of one word, as words, with slashes between them, or as a trade abbreviation.</summary>
    public static SlotReader Words { get; } = new WordSlot();

    /// <summary>The word ok.</summary>
    public static SlotReader Ok { get; } = new OkSlot();

    /// <summary>A part of a meal in words.</summary>
    public static SlotReader Portion { get; } = new PortionSlot();

    /// <summary>True where a sign starts, in its plain words or as an abbreviation.</summary>
    public static bool StartsSign(Cursor at, int index) => SignLength(at, index) > 0;

    /// <summary>How many parts make up the sign at <paramref name="index"/>; 0 where none starts.</summary>
    public static int SignLength(Cursor at, int index) => !at.IsWord(index) || at.Word?.Has(SlotKind.Words) != true ? 0
        : at.Phrase(at.Vocabulary.Describing(at.Subject), index, out _) is > 0 and var count ? count
        : Abbreviated(at, at.TextAt(index)) is null ? 0 : 1;

    /// <summary>True where a sign starts that is worth watching or more.</summary>
    public static bool StartsWorry(Cursor at, int index) => at.IsWord(index)
        && at.Phrase(at.Vocabulary.Describing(at.Subject), index, out DescribingWord? word) > 0
        && word!.Meanings.Any(meaning => meaning.Level > Level.Expected);

    /// <summary>Adds a sign that a phrase or abbreviation stands for, as if it stood at <paramref name="span"/>.</summary>
    public static bool AddImplied(Cursor at, string word, TextSpan span, Sense sense)
    {
        if (at.Vocabulary.Describing(at.Subject).Find(word) is not { } sign)
        {
            return false;
        }

        string written = at.WithSingleBlanks(span);
        bool own = at.Vocabulary.Describing(at.Subject).Find(written) == sign;
        at.Add(SlotKind.Words, new Described(sign, span, own ? written : sign.Word, sense));
        return true;
    }

    /// <summary>The part of a meal that a word stands for.</summary>
    public static Portion PortionOf(FixedWord part, TextSpan span)
    {
        (decimal eaten, decimal whole) = part.Word switch { "all" => (1m, 1m), "most" => (3m, 4m), "half" => (1m, 2m), "little" => (1m, 4m), _ => (0m, 1m) };
        return new Portion(span, part.Word is "all" or "none" ? Bound.Exact : Bound.About, eaten, whole) { Text = part.Word };
    }

    private static string? Abbreviated(Cursor at, ReadOnlySpan<char> text) =>
        (at.Vocabulary.Short(at.Word).Find(text) ?? at.Vocabulary.AnyShort.Find(text))?.StandsFor;

    /// <summary>True where the next word that is not small means nothing here, and so is what the words before it tell of.</summary>
    private static bool OfNoun(Cursor at, int index)
    {
        while (index < at.Parts.Count && !at.StartsSegment(index) && (at.Phrase(at.Vocabulary.Small, index, out _) is > 0 and var count || at.Phrase(at.Vocabulary.Describing(at.Subject), index, out DescribingWord? word) is > 0 and var signs && word!.Word == "new" && (count = signs) > 0))
        {
            index += count;
        }

        return at.IsWord(index) && !at.StartsSegment(index) && !StartsSign(at, index) && at.Phrase(at.Vocabulary.Ok, index, out _) == 0 && at.Phrase(at.Vocabulary.Regions, index, out _) == 0 && at.Phrase(at.Vocabulary.Sides, index, out _) == 0
            && at.Phrase(at.Vocabulary.Objects, index, out _) == 0 && Modifiers.At(at, index) is null && Head.At(at, index, out _) is null;
    }

    private static bool Add(Cursor at, DescribingWord word, int count)
    {
        TextSpan span = at.SpanOf(at.At, count);
        if (word is { Part: "any", Word: "new" or "unsure" } && at.Pending is null && span.In(at.Line) is not "?" && OfNoun(at, at.At + count))
        {
            // "maybe the new kibble": not the sign is new
            return false;
        }

        if (word.IsDegree && at.Word.Kind != WordKind.Fact && at.Pending is null && at.At > 0 && at.StartsSegment(at.At) && at.IsWord(at.At + count) && !at.StartsSegment(at.At + count)
            && !Enumerable.Range(at.At + count, at.Parts.Count - at.At - count).TakeWhile(index => !at.StartsSegment(index)).Any(index => StartsSign(at, index)))
        {
            // "ate 3/4, bit of chicken on top": a degree of nothing
            return false;
        }

        if (span.In(at.Line) is "?" && at.IsWord(at.At + 1) && at.Parts[at.At + 1].Span.Start == span.End && !StartsSign(at, at.At + 1))
        {
            // "?abscess": the doubt belongs to a word that means nothing here
            return false;
        }

        at.Mark(TokenKind.Describing, span);
        at.At += count;
        Pending? pending = at.Pending;
        if (pending is not null && word.Part == "any" && word.IsDegree)
        {
            // "not very red" says that it is red, "no severe pain" does not say that there is none
            at.Report(new Problem(ProblemRules.OpenNegation, TextSpan.Between(pending.Span.Start, span.End),
                $"`{pending.Span.In(at.Line)} {span.In(at.Line)}` can be read two ways. Write what you saw: `slightly red`, or `not red`."));
            at.Pending = null;
            return true;
        }

        bool deniedBefore = pending is { OfHead: true } ? at.At == count || at.StartsSegment(at.At - count) is false : at.BehindSign == at.At - count && at.Filled.Count > 0 && at.Filled[^1].Value is Described { Sense: Sense.Absent } absent && !TextSpan.Between(absent.Span.End, span.Start).In(at.Line).ContainsAny(',', ';');
        if (deniedBefore && !at.StartsSegment(at.At - count) && word.Part == "any" && (word.IsDegree || word.Word is "constant" or "on-off"))
        {
            // "not limping badly" says that it limps
            at.Report(new Problem(ProblemRules.OpenNegation, span, $"`{span.In(at.Line)}` behind a negation can be read two ways. Write what you saw: `slightly red`, or `not red`."));
        }

        if (pending is { OfHead: true } && at.Word.Kind is not WordKind.Exam && Enumerable.Range(0, Math.Min(at.At - count + 1, at.Parts.Count)).Any(at.StartsSegment))
        {
            // "no vomiting, now vomiting blood"
            Modifiers.Open(at, pending, span);
        }

        if (at.At > count && at.Is(at.At - count - 1, "less") && word.Part != "any" && word.Meanings.All(meaning => meaning.Level == Level.Expected))
        {
            at.Report(new Problem(ProblemRules.OpenNegation, span, $"`less {span.In(at.Line)}` can be read two ways. Write what you saw, such as pale."));
        }

        TextSpan whole = pending is null ? span : TextSpan.Between(pending.Span.Start, span.End);
        Sense sense = pending?.Sense ?? Sense.Present;
        if (!at.HasSign(word, sense))
        {
            at.Add(SlotKind.Words, new Described(word, whole, at.Written(span, word.Word), sense));
        }
        else if (sense == Sense.Present && word.Part != "any" && at.Word.Has(SlotKind.Note) && !at.Filled.Any(slot => slot.Value is Described before
            && ((before.Word == word && before.Span.Start < at.HeadSpan.End) || span.In(at.Line).Equals(before.Span.In(at.Line), StringComparison.OrdinalIgnoreCase))))
        {
            // "clear and pale": the same by the table, another word of the owner's
            at.Remark.Add(span);
        }

        at.BehindSign = at.At;
        if (pending is { OfHead: true } && at.Word.Kind is not WordKind.Exam)
        {
            // "no cough at night": what is negated is the cough
        }
        else if (pending is not null && !(word.Part == "any" && at.HasPart && !at.StartsSegment(at.At) && StartsSign(at, at.At)))
        {
            // "no new lumps" would reach through to the sign
            Modifiers.AfterSign(at, pending);
        }

        return true;
    }

    internal sealed class PhraseSlot() : SlotReader(SlotKind.Words)
    {
        public override bool BindWord(Cursor at) =>
            at.Phrase(at.Vocabulary.Describing(at.Subject), at.At, out DescribingWord? word) is > 1 and var count && Add(at, word!, count);
    }

    private sealed class WordSlot() : SlotReader(SlotKind.Words)
    {
        public override string Hint(LineWord word) => "ok, or a word for what you saw";

        public override IEnumerable<string> Spellings(NoteVocabulary vocabulary, LineWord word) =>
            vocabulary.Describing(word).Spellings.Concat(vocabulary.Ok.Spellings);

        public override bool IsFilled(Cursor at) => at.Holds(SlotKind.Words) || at.Holds(SlotKind.Ok) || at.First<NoteValue>() is not null;

        public override bool BindWord(Cursor at) =>
            (at.Phrase(at.Vocabulary.Describing(at.Subject), at.At, out DescribingWord? word) is > 0 and var count && Add(at, word!, count))
            || Short(at);

        /// <summary>BAR behind alert, WNL behind anything.</summary>
        private static bool Short(Cursor at)
        {
            if (Abbreviated(at, at.TextOf(at.Part)) is not { } standsFor)
            {
                return false;
            }

            TextSpan span = at.Part.Span;
            Sense sense = at.Pending?.Sense ?? Sense.Present;
            if (at.Vocabulary.Describing(at.Subject).Find(standsFor) is { } whole)
            {
                at.Add(SlotKind.Words, new Described(whole, span, whole.Word, sense));
            }
            else
            {
                foreach (string word in standsFor.Split(' '))
                {
                    if (at.Vocabulary.Ok.Find(word) is { } ok)
                    {
                        at.Set(SlotKind.Ok, ok);
                    }
                    else if (at.Vocabulary.Describing(at.Subject).Find(word) is { } sign)
                    {
                        at.Add(SlotKind.Words, new Described(sign, span, sign.Word, sense));
                    }
                }
            }

            at.Pending = null;
            at.Mark(TokenKind.Describing, span);
            at.At++;
            at.BehindSign = at.At;
            return true;
        }
    }

    /// <summary>The word ok. Where signs are taken too, a sign of that spelling comes first.</summary>
    private sealed class OkSlot() : SlotReader(SlotKind.Ok)
    {
        public override string Hint(LineWord word) => "ok";

        public override IEnumerable<string> Spellings(NoteVocabulary vocabulary, LineWord word) => vocabulary.Ok.Spellings;

        public override bool BindWord(Cursor at)
        {
            bool startsName = at.Word.Has(SlotKind.FoodName) && at.First<FreeWords>() is null && at.At + 1 < at.Parts.Count;
            int count = at.Phrase(at.Vocabulary.Ok, at.At, out FixedWord? ok);
            if (count == 0 && !at.Word.Has(SlotKind.Words) && Abbreviated(at, at.TextOf(at.Part)) is { } plain)
            {
                (ok, count) = (at.Vocabulary.Ok.Find(plain), 1);
            }

            bool before = at.PresentSign() is { Word.Part: not "any" } sign && sign.Word.Meanings.Any(meaning => meaning.Level > Level.Expected);
            if (startsName || before || count == 0 || ok is null || at.Pending is not null || (at.Word.Has(SlotKind.Words) && at.Phrase(at.Vocabulary.Describing(at.Subject), at.At, out _) >= count))
            {
                return false;
            }

            at.Set(SlotKind.Ok, ok!);
            at.Mark(TokenKind.Describing, at.SpanOf(at.At, count));
            at.At += count;
            return true;
        }
    }

    private sealed class PortionSlot() : SlotReader(SlotKind.Portion)
    {
        /// <summary>From here on what is more than whole is a day: <c>11/9</c>.</summary>
        private const int FewestDays = 5;

        public override string Hint(LineWord word) => "a part of a meal, such as 3/4, half or all";

        public override ImmutableArray<string> Units(LineWord word) => ["%"];

        public override IEnumerable<string> Spellings(NoteVocabulary vocabulary, LineWord word) => vocabulary.Portions.Spellings;

        public override bool Fits(Unit unit, LineWord word) => unit.Quantity == Quantity.Portion;

        public override bool IsFilled(Cursor at) => at.First<NoteValue>() is not null || at.Holds(SlotKind.Words) || at.Holds(SlotKind.Ok);

        public override bool BindWord(Cursor at)
        {
            int count = at.Phrase(at.Vocabulary.Portions, at.At, out FixedWord? part);
            (decimal Number, decimal Over)? fraction = count == 0 && CountSlots.NumberWord(at, at.At, out count) is { Over: > 1 } third ? third : null;
            if ((part is null && fraction is null) || at.First<NoteValue>() is not null || at.InRemark || at.Blocked || SignLength(at, at.At) > count)
            {
                return false;
            }

            TextSpan span = at.SpanOf(at.At, count);
            at.Add(SlotKind.Portion, fraction is { } written ? new Portion(span, Bound.Exact, written.Number, written.Over) : PortionOf(part!, span) with { Text = at.Written(span, part!.Word) });
            at.Mark(TokenKind.State, span);
            at.At += count;
            return true;
        }

        public override object? Value(Cursor at, NumberForm form) => form switch
        {
            { Shape: NumberShape.Ratio, NoUnit: true, Second: > 0 } when form.First <= form.Second || form.Second < FewestDays => new Portion(form.Span, form.Bound, form.First, form.Second),
            { Shape: NumberShape.Bare, First: < 1 } when NumberText.IsFraction(at.Line[form.Span.End - 1]) => new Portion(form.Span, form.Bound, decimal.Round(form.First * 100), 100),
            { Shape: NumberShape.WithUnit, Unit.Quantity: Quantity.Portion } => new Portion(form.Span, form.Bound, form.First, 100),
            _ => null,
        };
    }
}
